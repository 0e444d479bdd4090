// A button that opens one file of the learner's and gives its bytes to Python.
const LARGEST = 8e6; // bytes; a list of a hundred thousand lines

export default {
  render({ model, el }) {
    const label = document.createElement('label');
    const input = document.createElement('input');
    const words = document.createElement('span');
    words.textContent = model.get('label');
    input.type = 'file';
    input.accept = model.get('kinds');
    input.addEventListener('change', async () => {
      const [file] = input.files;
      if (!file) return;
      if (file.size > LARGEST) {
        words.textContent = `${model.get('label')}: ${file.name} is too large`;
        return;
      }
      const bytes = await file.arrayBuffer();
      model.send({ name: file.name }, undefined, [new DataView(bytes)]);
      words.textContent = `${model.get('label')}: ${file.name}`;
      input.value = ''; // the same file can be opened again when it has changed
    });
    label.className = 'rl-map-button';
    label.append(words, input);
    el.classList.add('rl-map');
    el.append(label);
  },
};

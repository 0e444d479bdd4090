// A button that opens a file of the learner's and gives its bytes to Python, in pieces: a server
// drops the connection when one message is larger than 10 MiB.
const PIECE = 4 << 20;

export default {
  render({ model, el }) {
    const label = document.createElement('label');
    const input = document.createElement('input');
    const words = document.createElement('span');
    const say = (what) => { words.textContent = [model.get('label'), what].filter(Boolean).join(': '); };
    say('');
    input.type = 'file';
    input.accept = model.get('kinds');
    const give = async (file) => {
      let start = 0;
      do {
        const bytes = await file.slice(start, start + PIECE).arrayBuffer();
        model.send({ name: file.name, start, size: file.size }, undefined, [new DataView(bytes)]);
        start += PIECE;
      } while (start < file.size);
    };
    input.addEventListener('change', async () => {
      const [file] = input.files;
      if (!file) return;
      if (file.size > model.get('largest')) {
        say(`${file.name} is ${model.get('too_large')}`);
        return;
      }
      input.disabled = true;
      try {
        await give(file);
        say(file.name);
      } catch {
        say(`${file.name} cannot be read`);
      }
      input.disabled = false;
      input.value = ''; // the same file can be opened again when it has changed
    });
    label.className = 'rl-map-button';
    label.append(words, input);
    el.classList.add('rl-map');
    el.append(label);
  },
};

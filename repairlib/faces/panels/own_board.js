// The map of a board, made with mouse, finger or keys: a photo or squared paper with a mark for each
// capacitor, and a table beside it that holds the same. Python keeps what is typed and judges it.

const PLUS = { up: '↑', left: '←', '': '?', right: '→', down: '↓', none: 'none' };
const SAID = {
  up: 'plus up', down: 'plus down', left: 'plus left', right: 'plus right',
  none: 'no plus', '': 'plus not known',
};
const ARROWS = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };
const COLUMNS = {
  reference: 'Name', x_mm: 'x, mm', y_mm: 'y, mm', plus: 'Plus', form: 'Form',
  lead_spacing_mm: 'Leads apart, mm', max_diameter_mm: 'Room across, mm',
  max_height_mm: 'Room high, mm', area: 'Area',
};
const CHOICES = {
  plus: [['', 'not known'], ['left', 'left'], ['right', 'right'], ['up', 'up'], ['down', 'down'],
    ['none', 'no plus']],
  form: [['', 'not known'], ['radial', 'radial'], ['axial', 'axial']],
};
const USUAL_WIDTH = 100;
const LARGEST_PHOTO = 1600; // px of the longer side
const SQUARE = 5; // mm
const TALLEST = 26; // rem of the picture, so that it stands on one screen
const PAUSE = 150; // ms until what is typed is kept

const number = (text, otherwise = 0) => {
  const read = parseFloat(String(text ?? '').replace(',', '.'));
  return Number.isFinite(read) ? read : otherwise;
};
const short = (length) => String(Math.round(length * 10) / 10);
const within = (length, most) => Math.min(Math.max(length, 0), most);

// The picture in a file, no larger than it must be; drawn anew, so that nothing else of it is kept.
const smallPicture = async (file) => {
  const bitmap = await createImageBitmap(file);
  const scale = Math.min(1, LARGEST_PHOTO / Math.max(bitmap.width, bitmap.height));
  const canvas = make('canvas');
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  canvas.getContext('2d').drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  const ratio = canvas.height / canvas.width;
  return { data: canvas.toDataURL('image/jpeg', 0.8), ratio };
};

function render({ model, el }) {
  let typed = structuredClone(model.get('typed'));
  let chosen = -1;
  let sending = 0;
  const before = []; // for Undo

  const width = () => number(typed.width_mm) || USUAL_WIDTH;
  const height = () => number(typed.height_mm) || Math.round(width() * 0.7);
  const keep = () => {
    clearTimeout(sending);
    sending = setTimeout(() => {
      model.set('typed', structuredClone(typed));
      model.save_changes();
      sending = 0;
    }, PAUSE);
  };
  const remember = () => {
    const now = JSON.stringify(typed);
    if (before.at(-1) !== now) before.push(now);
    if (before.length > 100) before.shift();
  };
  const change = (how) => {
    remember();
    how();
    keep();
    draw();
  };
  const tell = (text) => { status.textContent = text; };

  // What is done to places.
  const nextName = () => {
    const last = typed.places.at(-1)?.reference?.match(/^([A-Za-z]+)\d/);
    const letters = (last ? last[1] : 'C').toUpperCase();
    const used = typed.places.map((place) => place.reference.trim().toUpperCase())
      .filter((name) => name.startsWith(letters)).map((name) => parseInt(name.slice(letters.length), 10));
    return letters + (Math.max(0, ...used.filter(Number.isFinite)) + 1);
  };
  const add = (x, y) => {
    change(() => {
      const last = typed.places.at(-1);
      typed.places.push({
        reference: nextName(), x_mm: short(x), y_mm: short(y), plus: '', form: '', lead_spacing_mm: '',
        max_diameter_mm: '', max_height_mm: '', area: last?.area ?? '',
      });
      chosen = typed.places.length - 1;
    });
    pad.querySelector('[aria-checked=true]').focus({ preventScroll: true });
    tell(`${typed.places[chosen].reference} is on the map. Now its plus: an arrow key, or N for none.`);
  };
  const remove = (index) => {
    if (!typed.places[index]) return;
    const name = typed.places[index].reference;
    change(() => {
      typed.places.splice(index, 1);
      chosen = Math.min(index, typed.places.length - 1);
    });
    (marks.children[chosen] ?? addButton).focus();
    tell(`${name} is taken off the map. Undo brings it back.`);
  };
  const undo = () => {
    if (!before.length) return;
    typed = JSON.parse(before.pop());
    chosen = Math.min(chosen, typed.places.length - 1);
    keep();
    draw();
    tell('The last change is undone.');
  };
  const setPlus = (plus) => {
    if (!typed.places[chosen]) return;
    change(() => { typed.places[chosen].plus = plus; });
    tell(`${typed.places[chosen].reference}: ${SAID[plus]}.`);
  };
  const move = (index, x, y) => {
    typed.places[index].x_mm = short(within(x, width()));
    typed.places[index].y_mm = short(within(y, height()));
  };
  const choose = (index) => { chosen = index; draw(); };

  // The board itself: its name, the side that is looked at, a fixed edge, its width.
  const field = (key, label, attributes = {}) => {
    const input = make('input', {
      type: 'text', 'aria-label': label, ...attributes,
      oninput: () => { remember(); typed[key] = input.value; keep(); draw(); },
    });
    input.dataset.key = key;
    return make('label', {}, label, input);
  };
  const select = (key, label, options) => {
    const list = make('select', { 'aria-label': label, onchange: () => change(() => { typed[key] = list.value; }) },
      ...options.map(([value, text]) => make('option', { value }, text)));
    list.dataset.key = key;
    return make('label', {}, label, list);
  };
  const rescale = (event) => {
    // The marks stay where they are on the picture; their figures become those of the new width.
    const factor = (number(event.target.value) || USUAL_WIDTH) / width();
    change(() => {
      typed.width_mm = event.target.value.trim();
      if (factor === 1) return;
      typed.height_mm = typed.height_mm && short(number(typed.height_mm) * factor);
      for (const place of typed.places) {
        place.x_mm = short(number(place.x_mm) * factor);
        place.y_mm = short(number(place.y_mm) * factor);
      }
    });
  };
  const widthInput = make('input', { type: 'text', inputmode: 'decimal', size: 6, placeholder: 'mm',
    'aria-label': 'Board width in mm', onchange: rescale });
  widthInput.dataset.key = 'width_mm';
  const about = make('div', { class: 'rl-map-about' },
    field('board', 'Name of the board', { placeholder: 'My board', size: 16 }),
    select('side', 'Side you look at', [['', 'choose'], ['component side', 'component side'],
      ['solder side', 'solder side']]),
    field('edge', 'A fixed edge', { placeholder: 'connector edge', size: 14 }),
    select('edge_lies', 'lies where', [['', 'choose'], ['down', 'down'], ['up', 'up'], ['left', 'left'],
      ['right', 'right']]),
    make('label', {}, 'Width, mm', widthInput));

  // Photo or squared paper.
  const photoInput = make('input', { type: 'file', accept: 'image/*', 'aria-label': 'Photo of the board',
    onchange: async () => {
      const [file] = photoInput.files;
      if (!file) return;
      try {
        const { data, ratio } = await smallPicture(file);
        model.set('photo', data);
        change(() => { typed.height_mm = short(width() * ratio); });
        tell('The photo is here. Click on each capacitor.');
      } catch {
        tell('This file holds no picture that can be shown. JPEG and PNG are read.');
      }
      photoInput.value = '';
    } });
  const photoButton = make('label', { class: 'rl-map-button' }, 'Photo of my board', photoInput);
  const paperButton = make('button', { type: 'button', onclick: () => {
    model.set('photo', '');
    change(() => { typed.height_mm = ''; });
    tell('The marks now stand on squared paper.');
  } }, 'Squared paper');
  const addButton = make('button', { type: 'button',
    onclick: () => add(width() / 2, height() / 2) }, 'Add a capacitor');
  const undoButton = make('button', { type: 'button', onclick: undo }, 'Undo');
  const tools = make('div', { class: 'rl-map-tools' }, photoButton, paperButton, addButton, undoButton);

  // The picture with its marks.
  const marks = make('div', { class: 'rl-map-marks' });
  const ground = make('img', { alt: '', draggable: 'false' });
  const stage = make('div', { class: 'rl-map-stage', role: 'group', 'aria-label': 'Map of the board' },
    ground, marks);
  const at = (event) => {
    const box = stage.getBoundingClientRect();
    return [(event.clientX - box.left) / box.width * width(),
      (event.clientY - box.top) / box.height * height()];
  };
  stage.addEventListener('click', (event) => {
    if (event.target.closest('.rl-map-mark')) return;
    add(...at(event));
  });
  const markKey = (event, index) => {
    const step = ARROWS[event.key];
    const place = typed.places[index];
    if (step) {
      const far = event.shiftKey ? 5 : width() / 100;
      change(() => move(index, number(place.x_mm) + step[0] * far, number(place.y_mm) + step[1] * far));
      marks.children[index].focus();
    } else if (event.key === 'Delete' || event.key === 'Backspace') remove(index);
    else if (event.key === 'Enter' || event.key === ' ') {
      choose(index);
      pad.querySelector('[aria-checked=true]').focus({ preventScroll: true });
    } else return;
    event.preventDefault();
  };
  const drag = (event, index) => {
    chosen = index;
    const start = [event.clientX, event.clientY];
    let moved = false;
    const mark = marks.children[index];
    mark.setPointerCapture(event.pointerId);
    mark.onpointermove = (now) => {
      if (!moved && Math.hypot(now.clientX - start[0], now.clientY - start[1]) < 4) return;
      if (!moved) remember();
      moved = true;
      move(index, ...at(now));
      draw();
    };
    mark.onpointerup = () => {
      mark.onpointermove = mark.onpointerup = null;
      if (moved) keep();
      draw();
    };
  };
  const makeMark = (index) => make('button', {
    type: 'button', class: 'rl-map-mark', onpointerdown: (event) => drag(event, index),
    onkeydown: (event) => markKey(event, index), onfocus: () => { if (chosen !== index) choose(index); },
  }, make('span', { class: 'rl-map-plus' }), make('span', { class: 'rl-map-name' }));

  // The one that is chosen: its name, and where its plus is.
  const nameInput = make('input', { type: 'text', size: 6, 'aria-label': 'Name of the chosen capacitor',
    oninput: () => {
      if (!typed.places[chosen]) return;
      remember();
      typed.places[chosen].reference = nameInput.value;
      keep();
      draw();
    } });
  const padButtons = Object.entries(PLUS).map(([plus, sign]) => make('button', {
    type: 'button', role: 'radio', 'aria-label': SAID[plus], title: SAID[plus],
    class: `rl-map-${plus || 'unknown'}`, onclick: () => setPlus(plus),
  }, sign));
  const pad = make('div', { class: 'rl-map-pad', role: 'radiogroup', 'aria-label': 'Where its plus is',
    onkeydown: (event) => {
      const key = event.key.toLowerCase();
      const plus = { arrowup: 'up', arrowdown: 'down', arrowleft: 'left', arrowright: 'right', n: 'none',
        '?': '', delete: '' }[key];
      if (plus === undefined) return;
      event.preventDefault();
      setPlus(plus);
      pad.querySelector('[aria-checked=true]').focus({ preventScroll: true });
    } }, ...padButtons);
  const deleteButton = make('button', { type: 'button', onclick: () => remove(chosen) }, 'Take it off the map');
  const nothing = make('p', {}, 'Click on each capacitor in the picture, or press Add. Then say where its plus is.');
  const card = make('div', { class: 'rl-map-card' },
    make('label', {}, 'Name', nameInput),
    make('div', { class: 'rl-map-ask' }, 'Where is its plus? Click, or use the arrow keys.'), pad, deleteButton);
  const status = make('div', { class: 'rl-map-status', role: 'status' });
  const beside = make('div', { class: 'rl-map-beside' }, nothing, card, status);

  // The table of the same places.
  const body = make('tbody');
  const heads = Object.values(COLUMNS).map((title) => make('th', { scope: 'col' }, title));
  const table = make('table', { class: 'rl-map-table' },
    make('thead', {}, make('tr', {}, ...heads, make('th', { scope: 'col' }, 'Off'))), body);
  const inCell = (index, key) => {
    const name = `Row ${index + 1}, ${COLUMNS[key]}`;
    const put = (event) => {
      remember();
      typed.places[index][key] = event.target.value;
      keep();
      draw();
    };
    const onfocus = () => { if (chosen !== index) choose(index); };
    const control = CHOICES[key]
      ? make('select', { 'aria-label': name, onchange: put, onfocus },
        ...CHOICES[key].map(([value, text]) => make('option', { value }, text)))
      : make('input', { type: 'text', 'aria-label': name, oninput: put, onfocus, size: key === 'area' ? 10 : 4 });
    control.dataset.key = key;
    return make('td', { 'data-title': COLUMNS[key] }, control);
  };
  const makeRow = (index) => make('tr', {}, ...Object.keys(COLUMNS).map((key) => inCell(index, key)),
    make('td', {}, make('button', { type: 'button', 'aria-label': `Take row ${index + 1} off the map`,
      onclick: () => remove(index) }, '×')));

  const show = (control, value) => {
    if (control.value !== value && control !== document.activeElement) control.value = value;
  };
  const drawMark = (mark, place, index) => {
    const side = place.plus ?? '';
    mark.className = `rl-map-mark rl-map-at-${side || 'unknown'}`;
    mark.style.left = `${number(place.x_mm) / width() * 100}%`;
    mark.style.top = `${number(place.y_mm) / height() * 100}%`;
    mark.querySelector('.rl-map-plus').textContent = { none: 'NP', '': '?' }[side] ?? '+';
    mark.querySelector('.rl-map-name').textContent = place.reference;
    mark.setAttribute('aria-pressed', index === chosen);
    mark.setAttribute('aria-label', `${place.reference}, ${SAID[side]}, ${place.x_mm} mm from the left, ` +
      `${place.y_mm} mm from the top`);
  };
  const match = (parent, maker) => {
    while (parent.children.length > typed.places.length) parent.lastChild.remove();
    while (parent.children.length < typed.places.length) parent.append(maker(parent.children.length));
  };
  function draw() {
    const photo = model.get('photo');
    for (const control of about.querySelectorAll('[data-key]')) show(control, typed[control.dataset.key] ?? '');
    ground.hidden = !photo;
    if (photo && ground.src !== photo) ground.src = photo;
    stage.classList.toggle('rl-map-paper', !photo);
    stage.style.aspectRatio = `${width()} / ${height()}`;
    stage.style.width = `min(100%, ${TALLEST * width() / height()}rem)`;
    const square = number(typed.width_mm) ? SQUARE / width() : 1 / 20;
    stage.style.backgroundSize = `${square * 100}% ${square * width() / height() * 100}%`;
    match(marks, makeMark);
    match(body, makeRow);
    typed.places.forEach((place, index) => {
      drawMark(marks.children[index], place, index);
      const row = body.children[index];
      row.classList.toggle('rl-map-chosen', index === chosen);
      for (const control of row.querySelectorAll('[data-key]')) show(control, place[control.dataset.key] ?? '');
    });
    const place = typed.places[chosen];
    card.hidden = !place;
    nothing.hidden = Boolean(place);
    table.hidden = !typed.places.length;
    undoButton.disabled = !before.length;
    if (!place) return;
    show(nameInput, place.reference);
    padButtons.forEach((button, index) => {
      const here = Object.keys(PLUS)[index] === (place.plus ?? '');
      button.setAttribute('aria-checked', here);
      button.tabIndex = here ? 0 : -1;
    });
  }

  const open = () => { // a board file was opened, or it is another learner's turn
    if (sending || JSON.stringify(model.get('typed')) === JSON.stringify(typed)) return;
    remember();
    typed = structuredClone(model.get('typed'));
    chosen = -1;
    draw();
  };
  model.on('change:typed', open);
  model.on('change:photo', draw);
  const undoKey = (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key === 'z' && !event.target.matches('input')) {
      event.preventDefault();
      undo();
    }
  };
  el.addEventListener('keydown', undoKey);
  el.append(about, tools, make('div', { class: 'rl-map-both' }, stage, beside), table);
  draw();
  return () => {
    model.off('change:typed', open);
    model.off('change:photo', draw);
  };
}

export default { render };

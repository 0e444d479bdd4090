// The practice board: a drawn board with its parts and points to choose, instruments, typed words, a
// log. Every move goes to Python as the words in which it would be typed; Python answers.

const ARROWS = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };
const AGAIN = { same: 'Begin this board anew', another: 'Another board' };

const make = (tag, attributes = {}, ...inside) => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else if (value !== false) made.setAttribute(name, value === true ? '' : value);
  }
  made.append(...inside);
  return made;
};

function render({ model, el }) {
  let chosen = ''; // the name of the part or point that is chosen, with "point " before a point
  let typedBefore = -1; // place in the history of typed moves
  let waiting = []; // the moves that Python has not answered yet, each with its words and a mark
  const board = () => model.get('board');
  const told = () => model.get('told');
  const spots = () => [
    ...board().parts.map((part) => ({ ...part, key: part.name })),
    ...board().points.map((point) => ({ ...point, key: `point ${point.name}` })),
  ];

  const send = (words) => {
    if (!words.trim()) return;
    const mark = crypto.getRandomValues(new Uint32Array(2)).join('-');
    waiting.push({ words, mark });
    model.send({ do: words, mark });
    drawWaiting();
  };

  // What the customer says, and what is always seen.
  const says = make('p', { class: 'rl-bench-says' });
  const facts = make('dl', { class: 'rl-bench-facts', 'aria-label': 'Clock, purse and feed' });

  // The board.
  const picture = make('img', { draggable: 'false' });
  const overlay = make('div', { class: 'rl-bench-spots' });
  const stage = make('div', { class: 'rl-bench-stage', role: 'group', 'aria-label': 'The board: arrow keys go from part to part, Enter chooses' },
    picture, overlay);
  const around = make('div', { class: 'rl-bench-around' }, stage);

  // What is chosen, and what can be done there.
  const name = make('h4');
  const offers = make('div', { class: 'rl-bench-offers' });
  const menu = make('section', { class: 'rl-bench-menu', 'aria-label': 'What is chosen' }, name, offers);
  const bench = make('div', { class: 'rl-bench-offers' });
  const whole = make('section', { class: 'rl-bench-whole', 'aria-label': 'The whole set' },
    make('h4', {}, 'The whole set'), bench);

  // The words.
  const box = make('input', { type: 'text', 'aria-label': 'Type a move', autocomplete: 'off',
    spellcheck: 'false', placeholder: 'Type a move, such as: volts out 0' });
  const form = make('form', { class: 'rl-bench-type', onsubmit: (event) => {
    event.preventDefault();
    send(box.value);
    box.value = '';
    typedBefore = -1;
  } }, box, make('button', { type: 'submit' }, 'Do it'));
  const refusal = make('div', { class: 'rl-bench-refusal', role: 'alert' });
  const doing = make('div', { class: 'rl-bench-doing' });
  const note = make('div', { class: 'rl-bench-note', role: 'status' });
  const log = make('ol', { class: 'rl-bench-log', role: 'log', 'aria-live': 'polite', 'aria-label': 'What was done and told',
    tabindex: '0' });
  const again = make('div', { class: 'rl-bench-again' });
  const latency = make('span', { class: 'rl-bench-latency' });

  const sure = (button, question, action) => {
    const label = button.textContent;
    button.addEventListener('click', () => {
      if (button.dataset.sure) { action(); return; }
      button.dataset.sure = 'asked';
      button.textContent = question;
    });
    button.addEventListener('blur', () => {
      delete button.dataset.sure;
      button.textContent = label;
    });
    return button;
  };
  const offerButton = (offer) => {
    const button = make('button', { type: 'button' }, offer.label);
    const act = () => {
      if (!offer.to_box) { send(offer.words); return; }
      box.value = offer.words;
      box.focus();
      box.setSelectionRange(box.value.length, box.value.length);
    };
    if (offer.sure) return sure(button, offer.sure, act);
    button.addEventListener('click', act);
    return button;
  };
  const within = (event, row) => { // arrows go through the buttons of a menu
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    const buttons = [...row.children];
    if (event.key === 'Escape' && row === offers) {
      overlay.querySelector('[tabindex="0"]')?.focus();
      event.preventDefault();
    }
    if (!step || !buttons.length) return;
    const at = buttons.indexOf(document.activeElement);
    buttons[(at + step + buttons.length) % buttons.length].focus();
    event.preventDefault();
  };
  offers.addEventListener('keydown', (event) => within(event, offers));
  bench.addEventListener('keydown', (event) => within(event, bench));

  const choose = (key) => {
    chosen = key;
    drawChosen();
  };
  const spotButton = (key) => overlay.querySelector(`[data-key="${CSS.escape(key)}"]`);
  const middle = (spot) => [
    (spot.left + (spot.wide ?? 0) / 2) * board().size[0], (spot.top + (spot.high ?? 0) / 2) * board().size[1],
  ];
  const nearest = (key, [dx, dy]) => { // the next one in that direction
    const [x, y] = middle(spots().find((spot) => spot.key === key));
    const far = (spot) => {
      const [sx, sy] = middle(spot);
      const along = (sx - x) * dx + (sy - y) * dy;
      const aside = Math.abs((sx - x) * dy) + Math.abs((sy - y) * dx);
      return along > 0 && along >= aside / 2 ? along + 2 * aside : Infinity;
    };
    const others = spots().filter((spot) => spot.key !== key).map((spot) => [far(spot), spot.key]);
    const [distance, next] = others.reduce((best, one) => (one[0] < best[0] ? one : best), [Infinity, key]);
    return distance === Infinity ? key : next;
  };
  const makeSpot = (spot) => {
    const button = make('button', { type: 'button', class: spot.wide ? 'rl-bench-part' : 'rl-bench-point',
      'data-key': spot.key, 'aria-label': spot.wide ? `${spot.name}, ${spot.says}` : spot.says,
      title: spot.wide ? `${spot.name}, ${spot.says}` : spot.says,
      onclick: () => {
        choose(spot.key);
        if (!matchMedia('(pointer: coarse)').matches) offers.firstChild?.focus({ preventScroll: true });
      },
      onkeydown: (event) => {
        const step = ARROWS[event.key];
        if (!step) return;
        event.preventDefault();
        choose(nearest(spot.key, step));
        spotButton(chosen).focus();
      } });
    return button;
  };

  box.addEventListener('keydown', (event) => {
    const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!step) return;
    const lines = told().log.map((line) => line.move).reverse();
    typedBefore = Math.min(Math.max(typedBefore + step, -1), lines.length - 1);
    box.value = typedBefore < 0 ? '' : lines[typedBefore];
    event.preventDefault();
  });

  const drawChosen = () => {
    const spot = spots().find((one) => one.key === chosen);
    for (const button of overlay.children) {
      const here = button.dataset.key === (spot?.key ?? overlay.firstChild.dataset.key);
      button.tabIndex = here ? 0 : -1;
      button.setAttribute('aria-pressed', String(Boolean(spot) && here));
    }
    const focused = [...offers.children].indexOf(document.activeElement);
    name.textContent = !spot ? 'Choose a part or a point on the board'
      : spot.wide ? `${spot.name}: ${spot.says}` : `Red probe on ${spot.name}`;
    offers.replaceChildren(...(spot?.offers ?? []).map(offerButton));
    if (focused >= 0) offers.children[Math.min(focused, offers.children.length - 1)]?.focus();
  };

  const drawBoard = () => {
    const { svg, alt, size } = board();
    says.textContent = `${board().title}. The customer says: “${board().says}”`;
    const address = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    if (picture.src !== address) picture.src = address;
    picture.alt = alt;
    stage.style.aspectRatio = `${size[0]} / ${size[1]}`;
    const all = spots();
    if (overlay.children.length !== all.length) overlay.replaceChildren(...all.map(makeSpot));
    all.forEach((spot, index) => {
      const button = overlay.children[index];
      button.style.left = `${spot.left}%`;
      button.style.top = `${spot.top}%`;
      if (spot.wide) {
        button.style.width = `${spot.wide}%`;
        button.style.height = `${spot.high}%`;
      }
    });
    const held = bench.contains(document.activeElement) ? [...bench.children].indexOf(document.activeElement) : -1;
    bench.replaceChildren(...board().bench.map(offerButton));
    if (held >= 0) bench.children[held]?.focus();
    drawChosen();
  };

  const line = ({ move, told: words, alarm, took }) => make('li', { class: alarm ? 'rl-bench-alarm' : '' },
    make('code', {}, move), ' ', make('span', {}, alarm ? `⚠ ${words}` : words), ' ',
    make('small', {}, took));
  const drawWaiting = () => {
    doing.textContent = waiting.length ? `Being done: ${waiting.map((one) => one.words).join('; ')}` : '';
  };
  const drawTold = () => {
    const { facts: pairs, log: lines, refused, note: noted, ended, again: ways, milliseconds } = told();
    facts.replaceChildren(...pairs.map(([what, value]) => make('div', {}, make('dt', {}, what), make('dd', {}, value))));
    // Only what is new is added, so that it alone is read aloud.
    const same = lines.length >= log.children.length
      && [...log.children].every((item, at) => item.firstChild.textContent === lines[at].move);
    if (!same) log.replaceChildren();
    for (const one of lines.slice(log.children.length)) log.append(line(one));
    log.scrollTop = log.scrollHeight;
    refusal.textContent = refused.why ? `Not done: ${refused.why}` : '';
    note.textContent = [noted, ended && `The attempt has ended: ${ended}`].filter(Boolean).join(' ');
    latency.textContent = milliseconds ? `The last move took the computer ${milliseconds} ms.` : '';
    box.disabled = Boolean(ended);
    again.replaceChildren(...ways.map((way) => sure(make('button', { type: 'button' }, AGAIN[way]),
      lines.length && !ended ? 'Sure? This attempt is left' : `Sure? ${AGAIN[way]}`, () => model.send({ anew: way }))), latency);
    const answered = waiting.findIndex((one) => one.mark === told().heard);
    waiting = waiting.slice(answered + 1);
    if (answered >= 0 && refused.why && !box.value) box.value = refused.typed;
    drawWaiting();
  };

  model.on('change:board', drawBoard);
  model.on('change:told', drawTold);
  el.append(says, facts, make('div', { class: 'rl-bench-both' }, around,
    make('div', { class: 'rl-bench-beside' }, menu, whole)), form, doing, refusal, note, log, again);
  drawBoard();
  drawTold();
  return () => {
    model.off('change:board', drawBoard);
    model.off('change:told', drawTold);
  };
}

export default { render };

// The practice board: a drawn board with its parts and points to choose, instruments, typed words, a
// log. Every move goes to Python as the words in which it would be typed; Python answers.

const ARROWS = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };
const THROUGH = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };
const AGAIN = { same: 'Begin this board anew', another: 'Another board' };
const CHOOSE = 'Choose a part or a point on the board: click, or go there with the arrow keys.';
const SVG = 'http://www.w3.org/2000/svg';
const LEGIBLE = 0.6; // px for a unit of the drawing at least, so that its letters are 12 px
const OVERLAP = 70; // units that two pieces of the board share
const IN_PIECES = 'The board does not fit in one piece: it goes on from one picture to the next, left to right.';
const PATIENCE = 10000; // ms without an answer, after which it is said
const NO_ANSWER = 'No answer from Python yet. Is another cell still running? Where the kernel has stopped, '
  + 'nothing more is done or kept: start it anew and run the cells. What was kept before is there then.';

const NOTHING_YET = 'Nothing was done yet. What a move tells stands here, and below in the log.';
const refusedIn = ({ why, asks }) => (!why ? '' : asks ? why : `Not done: ${why}`);
const drawn = (svg) => `data:image/svg+xml,${encodeURIComponent(svg)}`;

// A button that asks before it acts: the second press counts.
const sure = (button, question, action) => {
  const label = button.textContent;
  button.ask = () => {
    button.dataset.asked = 'yes';
    button.textContent = question;
  };
  button.addEventListener('click', () => {
    if (button.dataset.asked) action();
    else button.ask();
  });
  button.addEventListener('blur', () => {
    delete button.dataset.asked;
    button.textContent = label;
  });
  return button;
};

function render({ model, el }) {
  let chosen = ''; // the part that is chosen, or "point " and a point
  let back = -1; // how far back in the typed moves
  let waiting = []; // the moves that Python has not answered yet, each with its words and a mark
  const board = () => model.get('board');
  const told = () => model.get('told');
  const spots = () => [
    ...board().parts.map((part) => ({ ...part, key: part.name })),
    ...board().points.map((point) => ({ ...point, key: `point ${point.name}` })),
  ];

  const send = (words, sure = false) => {
    if (!words.trim()) return;
    const mark = crypto.getRandomValues(new Uint32Array(2)).join('-');
    waiting.push({ words, mark, since: Date.now() });
    drawWaiting();
    model.send({ do: words, mark, sure });
    setTimeout(drawWaiting, PATIENCE + 100);
  };

  // What the customer says, and what is always seen.
  const says = make('p', { class: 'rl-bench-says' });
  const sheet = make('div', { class: 'rl-bench-sheet' });
  // The last answer where the eyes are: by the board, and on a phone above the box too. The log reads it aloud.
  const [last, nearBox] = ['', ' rl-bench-near-box'].map((more) => make('div',
    { class: `rl-bench-last${more}`, 'aria-hidden': 'true' }));
  const facts = make('dl', { class: 'rl-bench-facts', 'aria-label': 'Clock, purse and feed' });

  // The board, in one piece, or in several below each other where there is no room for its letters.
  const stage = make('div', { class: 'rl-bench-stage', role: 'group',
    'aria-label': 'The board: arrow keys go from part to part, Enter opens what can be done there' });
  const buttons = new Map(); // of parts and points, by their keys
  let pieces = [];

  // What is chosen, and what can be done there; the whole set; the instruments.
  const name = make('h4');
  const offers = make('div', { class: 'rl-bench-groups' });
  const menu = make('section', { class: 'rl-bench-menu', 'aria-label': 'What can be done there' }, name, offers);
  const bench = make('div', { class: 'rl-bench-groups' });
  const whole = make('section', { class: 'rl-bench-whole', 'aria-label': 'The whole set' }, bench);
  const instruments = make('div', { class: 'rl-bench-instruments' });

  // The words.
  const box = make('input', { type: 'text', 'aria-label': 'Type a move', autocomplete: 'off',
    spellcheck: 'false', placeholder: `Type a move, such as: ${board().example}` });
  const form = make('form', { class: 'rl-bench-type', onsubmit: (event) => {
    event.preventDefault();
    send(box.value);
    box.value = '';
    back = -1;
  } }, box, make('button', { type: 'submit' }, 'Do it'));
  const refusal = make('div', { class: 'rl-bench-refusal', role: 'alert' });
  const doing = make('div', { class: 'rl-bench-doing' });
  const note = make('div', { class: 'rl-bench-note', role: 'status' });
  const log = make('ol', { class: 'rl-bench-log', role: 'log', 'aria-live': 'polite', tabindex: '0',
    'aria-label': 'What was done and told' });
  const again = make('div', { class: 'rl-bench-again' });
  const lines = make('div', { class: 'rl-bench-lines' });
  const listed = make('details', {}, make('summary', {}, 'What can be typed'), lines);
  const latency = make('span', { class: 'rl-bench-latency' });

  const offerButton = (offer) => {
    const button = make('button', { type: 'button', title: offer.words }, offer.label);
    const act = () => {
      if (!offer.to_box) { send(offer.words, Boolean(offer.sure)); return; }
      box.value = offer.words;
      box.focus();
      box.setSelectionRange(box.value.length, box.value.length);
    };
    if (offer.sure) return sure(button, offer.sure, act);
    button.addEventListener('click', act);
    return button;
  };
  // The groups anew; who was on a button stays on it, and what one asks it still asks.
  const drawGroups = (place, groups) => {
    const before = [...place.querySelectorAll('button')].indexOf(document.activeElement);
    const asked = place.querySelector('button[data-asked]')?.title;
    place.replaceChildren(...groups.map(([title, those]) => make('div',
      { class: 'rl-bench-offers', role: 'group', 'aria-label': title },
      make('span', { class: 'rl-bench-group', 'aria-hidden': 'true' }, title), ...those.map(offerButton))));
    const now = place.querySelectorAll('button');
    if (before >= 0 && now.length) now[Math.min(before, now.length - 1)].focus({ preventScroll: true });
    if (asked) [...now].find((button) => button.title === asked)?.ask();
  };
  const goThrough = (event) => { // arrows go through the buttons of a menu
    if (event.key === 'Escape' && event.currentTarget === offers) {
      buttons.get(chosen)?.focus();
      event.preventDefault();
    }
    const those = [...event.currentTarget.querySelectorAll('button')];
    const at = those.indexOf(document.activeElement);
    if (!THROUGH[event.key] || at < 0) return;
    those[(at + THROUGH[event.key] + those.length) % those.length].focus();
    event.preventDefault();
  };
  offers.addEventListener('keydown', goThrough);
  bench.addEventListener('keydown', goThrough);

  const choose = (key) => {
    chosen = key;
    drawChosen();
  };
  const middle = (spot) => [spot.left + (spot.wide ?? 0) / 2, spot.top + (spot.high ?? 0) / 2];
  const nextTo = (key, [dx, dy]) => { // the nearest one in that direction, or the same
    const [x, y] = middle(spots().find((spot) => spot.key === key));
    const far = (spot) => {
      const [sx, sy] = middle(spot);
      const along = (sx - x) * dx + (sy - y) * dy;
      const aside = Math.abs((sx - x) * dy) + Math.abs((sy - y) * dx);
      return along > 0 && along >= aside / 2 ? along + 2 * aside : Infinity;
    };
    let [best, least] = [key, Infinity];
    for (const spot of spots()) {
      if (spot.key !== key && far(spot) < least) [best, least] = [spot.key, far(spot)];
    }
    return best;
  };
  const makeSpot = ({ key, wide }) => make('button', {
    type: 'button', class: wide ? 'rl-bench-part' : 'rl-bench-point', 'data-key': key,
    onclick: () => {
      choose(key);
      const coarse = matchMedia('(pointer: coarse)').matches;
      if (coarse) menu.scrollIntoView({ block: 'nearest' });
      else offers.querySelector('button')?.focus({ preventScroll: true });
    },
    onfocus: () => { if (chosen !== key) choose(key); },
    onkeydown: (event) => {
      if (ARROWS[event.key]) {
        event.preventDefault();
        const next = nextTo(key, ARROWS[event.key]);
        choose(next);
        buttons.get(next).focus();
      } else if (/^[a-z0-9]$/i.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) {
        box.focus(); // a letter begins a typed move
      }
    },
  });
  box.addEventListener('keydown', (event) => {
    const step = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!step) return;
    const typed = told().log.map((one) => one.move).reverse();
    back = Math.min(Math.max(back + step, -1), typed.length - 1);
    box.value = back < 0 ? '' : typed[back];
    event.preventDefault();
  });

  const makePiece = (from, span) => {
    const picture = make('img', { draggable: 'false' });
    const lines = document.createElementNS(SVG, 'svg');
    lines.setAttribute('aria-hidden', 'true');
    lines.setAttribute('viewBox', `${from} 0 ${span} ${board().size[1]}`);
    const overlay = make('div');
    const frame = make('div', { class: 'rl-bench-piece' }, picture, lines, overlay);
    frame.style.aspectRatio = `${span} / ${board().size[1]}`;
    return { from, span, picture, lines, overlay, frame };
  };
  const cut = () => { // into as many pieces as the room asks for
    const [wide] = board().size;
    const most = stage.clientWidth ? Math.max(stage.clientWidth / LEGIBLE, 2 * OVERLAP) : wide;
    const many = most >= wide ? 1 : Math.ceil((wide - OVERLAP) / (most - OVERLAP));
    const span = (wide + (many - 1) * OVERLAP) / many;
    const keys = spots().map((spot) => spot.key).join('\n');
    if (pieces.length === many && [...buttons.keys()].join('\n') === keys) return;
    pieces = Array.from({ length: many }, (_, at) => makePiece(at * (span - OVERLAP), span));
    buttons.clear();
    for (const spot of spots()) {
      const [x] = middle(spot);
      const piece = pieces.find(({ from }) => x <= from + span - OVERLAP / 2) ?? pieces.at(-1);
      buttons.set(spot.key, makeSpot(spot));
      piece.overlay.append(buttons.get(spot.key));
    }
    const said = many > 1 ? [make('p', { class: 'rl-bench-pieces' }, IN_PIECES)] : [];
    stage.replaceChildren(...said, ...pieces.map(({ frame }) => frame));
    if (!buttons.has(chosen)) chosen = '';
  };
  const placeSpot = (spot) => {
    const button = buttons.get(spot.key);
    const { from, span } = pieces.find(({ overlay }) => button.parentElement === overlay);
    const label = spot.wide ? `${spot.name}, ${spot.says}` : `Point ${spot.name}, ${spot.says}`;
    const high = board().size[1];
    const left = Math.max(spot.left, from);
    button.setAttribute('aria-label', label);
    button.title = label;
    button.style.left = `${100 * (left - from) / span}%`;
    button.style.top = `${100 * spot.top / high}%`;
    if (!spot.wide) return;
    button.style.width = `${100 * (Math.min(spot.left + spot.wide, from + span) - left) / span}%`;
    button.style.height = `${100 * spot.high / high}%`;
  };
  const drawPieces = () => {
    const { svg, alt, size } = board();
    cut();
    pieces.forEach(({ picture, from, span }, at) => {
      const part = svg.replace(/width="[\d.]+" height="[\d.]+" viewBox="[\d. ]+"/,
        `width="${span}" height="${size[1]}" viewBox="${from} 0 ${span} ${size[1]}"`);
      if (picture.src !== drawn(part)) picture.src = drawn(part);
      picture.alt = at ? '' : alt;
    });
    spots().forEach(placeSpot);
  };

  // From the pads of what is chosen to the points that they join.
  const drawLines = (spot) => {
    const points = Object.fromEntries(board().points.map((point) => [point.name, middle(point)]));
    const pairs = board().parts.flatMap((part) => part.nodes.map((node, at) => [part.name, node, part.ends[at]]))
      .filter(([part, node]) => spot && (spot.wide ? part : node) === spot.name);
    for (const { lines } of pieces) {
      lines.replaceChildren(...pairs.flatMap(([, node, [x, y]]) => ['under', 'over'].map((kind) => {
        const line = document.createElementNS(SVG, 'line');
        const ends = { x1: x, y1: y, x2: points[node][0], y2: points[node][1], class: `rl-bench-${kind}` };
        for (const [what, value] of Object.entries(ends)) line.setAttribute(what, value);
        return line;
      })));
    }
  };
  const drawChosen = () => {
    const spot = spots().find((one) => one.key === chosen);
    for (const [key, button] of buttons) {
      button.tabIndex = key === (spot ?? spots()[0]).key ? 0 : -1;
      button.setAttribute('aria-pressed', String(key === chosen));
    }
    name.textContent = !spot ? CHOOSE : spot.wide ? `${spot.name}: ${spot.says}` : `Point ${spot.name}, ${spot.says}`;
    drawGroups(offers, spot?.offers ?? []);
    drawLines(spot);
  };

  const drawSheet = ({ headings, rows, when }) => {
    const cells = (kind, texts) => make('tr', {}, ...texts.map((text) => make(kind, {}, text)));
    sheet.replaceChildren(make('table', {}, make('caption', {}, 'Service sheet: what is right when it is well'),
      make('thead', {}, cells('th', headings)), make('tbody', {}, ...rows.map((row) => cells('td', row)))),
    make('p', {}, `Each read from its point to 0. ${when}`));
  };
  const drawBoard = () => {
    const { title, says: sentence, works, bench: groups, example } = board();
    box.placeholder = `Type a move, such as: ${example}`;
    drawSheet(board().sheet);
    lines.replaceChildren(...board().lines.map(([what, those]) => make('p', {}, make('strong', {}, `${what}: `),
      ...those.flatMap((one, at) => [at ? ' · ' : '', make('code', {}, one)]))));
    says.replaceChildren(make('strong', {}, title), ` The customer says: “${sentence}” When it is well: ${works}`);
    drawPieces();
    drawGroups(bench, groups);
    drawChosen();
  };
  const resized = new ResizeObserver(() => {
    drawPieces();
    drawChosen();
  });

  const line = ({ move, told: words, alarm, took }) => make('li', { class: alarm ? 'rl-bench-alarm' : '' },
    make('code', {}, move), ' ', make('span', alarm ? { role: 'alert' } : {}, alarm ? `⚠ ${words}` : words),
    ' ', make('small', {}, took));
  const drawLog = (all) => { // only what is new is added, so that it alone is read aloud
    const same = all.length >= log.children.length
      && [...log.children].every((item, at) => item.firstChild.textContent === all[at].move);
    if (!same) log.replaceChildren();
    for (const one of all.slice(log.children.length)) log.append(line(one));
    log.hidden = !all.length;
    log.scrollTop = log.scrollHeight;
  };
  const drawWaiting = () => {
    const late = waiting.some((one) => Date.now() - one.since > PATIENCE);
    const words = waiting.map((one) => one.words).join('; ');
    doing.textContent = waiting.length ? `${late ? `${NO_ANSWER} Not` : 'Being'} done: ${words}` : '';
    doing.classList.toggle('rl-bench-late', late);
  };
  const drawLast = ({ log: all, refused, note: noted, ended }) => { // where the eyes are
    const one = all.at(-1);
    const said = refused.why ? [make('code', {}, refused.typed), ` ${refusedIn(refused)}`]
      : one ? [make('code', {}, one.move), ` ${one.alarm ? '⚠ ' : ''}${one.told}`] : [noted || NOTHING_YET];
    if (ended && !refused.why) said.push(' ', make('strong', {}, 'The attempt has ended.'));
    for (const place of [last, nearBox]) {
      place.replaceChildren(...said.map((piece) => piece.cloneNode?.(true) ?? piece));
      place.classList.toggle('rl-bench-alarm', Boolean(!refused.why && one?.alarm));
      place.classList.toggle('rl-bench-asked', Boolean(refused.why));
    }
  };
  const drawTold = () => {
    const { facts: pairs, log: all, refused, note: noted, ended, report, again: ways, milliseconds } = told();
    facts.replaceChildren(...pairs.map(([what, value]) => make('div', {}, make('dt', {}, what), make('dd', {}, value))));
    drawLog(all);
    instruments.replaceChildren(...told().instruments.map(({ svg, alt }) => make('img', { src: drawn(svg), alt })));
    refusal.textContent = refusedIn(refused);
    drawLast(told());
    note.textContent = [noted, ended && `The attempt has ended: ${ended}.`].filter(Boolean).join(' ');
    latency.textContent = milliseconds ? `The last move was worked out in ${milliseconds} ms.` : '';
    const anew = ways.map((way) => sure(make('button', { type: 'button' }, AGAIN[way]),
      all.length && !ended ? 'Sure? This attempt is left' : `Sure? ${AGAIN[way]}`,
      () => model.send({ anew: way })));
    const reporting = make('button', { type: 'button', onclick: () => model.send({ report: true }) }, 'Show the report');
    again.replaceChildren(...(report ? [reporting] : []), ...anew, latency);
    for (const one of [form, menu, whole]) one.hidden = Boolean(ended);
    const answered = waiting.findIndex((one) => one.mark === told().heard);
    waiting = waiting.slice(answered + 1);
    if (answered >= 0 && refused.why && !box.value) box.value = refused.typed;
    drawWaiting();
  };

  model.on('change:board', drawBoard);
  model.on('change:told', drawTold);
  el.append(says, sheet, facts, make('div', { class: 'rl-bench-both' },
    make('div', { class: 'rl-bench-main' }, stage, whole, nearBox, form, doing, refusal, note, listed, log, again),
    make('div', { class: 'rl-bench-beside' }, last, instruments, menu)));
  drawBoard();
  drawTold();
  resized.observe(stage);
  return () => {
    resized.disconnect();
    model.off('change:board', drawBoard);
    model.off('change:told', drawTold);
  };
}

export default { render };

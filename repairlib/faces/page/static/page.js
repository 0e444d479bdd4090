// The page: starts the reader, and shows one tool at a time.

import { folded, speak } from './answer.js';
import * as colours from './colours.js';
import * as hand from './hand.js';
import * as last from './last.js';
import * as marking from './marking.js';
import { keepForOffline } from './offline.js';
import * as polarity from './polarity.js';
import { start } from './reader.js';
import * as sharing from './sharing.js';
import * as values from './values.js';
import { byId, say } from './words.js';

const buttons = [...document.querySelectorAll('[data-tool]')];
const reading = { show: marking.askReading };
const tools = { marking: reading, colours: reading, polarity, values, last };

const choose = (tool) => {
  const reads = tools[tool] === reading;
  document.documentElement.dataset.tool = tool;
  byId('asked').hidden = !reads;
  byId('reading').hidden = !reads;
  for (const name of ['colours', 'polarity', 'values', 'last']) byId(name).hidden = name !== tool;
  buttons.forEach((one) => {
    if (one.dataset.tool === tool) one.setAttribute('aria-current', 'true');
    else one.removeAttribute('aria-current');
  });
  scrollTo(0, 0);
  tools[tool].show();
};

const goToMarking = () => {
  choose('marking');
  byId('marking').focus();
};

const progress = (part, what) => {
  byId('progress').value = part;
  const percent = Math.min(100, Math.round(part * 100));
  byId('state').textContent = `${say(what, { percent })} ${say('waits')}`;
};

const trouble = (kind, detail) => {
  const sorry = document.createElement('p');
  sorry.textContent = say(kind);
  byId('start').hidden = true;
  byId('trouble').hidden = false;
  byId('trouble').replaceChildren(sorry, ...(detail ? [folded(say('detail'), detail)] : []));
  document.documentElement.dataset.trouble = kind;
  speak(say(kind));
};

const newVersion = (load) => {
  byId('newer').hidden = false;
  byId('use-newer').addEventListener('click', load);
};

for (const one of [hand, sharing, colours, polarity, values]) one.begin();
last.begin(goToMarking);
buttons.forEach((one) => one.addEventListener('click', () => {
  if (one.dataset.tool === 'marking') goToMarking();
  else choose(one.dataset.tool);
}));
byId('parts').open = matchMedia('(min-width: 64em)').matches;
document.documentElement.dataset.tool = 'marking';
progress(0, 'loading');
marking.begin(); // before the start, whose trouble it would hush
addEventListener('hashchange', goToMarking); // who opens an address wants its reading
// The files are kept when all have come, from what the browser has just loaded.
const keep = () => keepForOffline({ newVersion });
start({
  progress,
  ready: () => { byId('start').hidden = true; keep(); },
  trouble: (...told) => { trouble(...told); keep(); },
});
byId('marking').focus();

// The last readings, newest first. A marking is kept once it was looked at for a moment.

import { fill, follow, now } from './marking.js';
import { isRefused, load, save } from './store.js';
import { byId, say } from './words.js';

const NAME = 'last readings';
const MOST = 30;
const LOOKED_AT_MS = 1500;
let timer;
let waiting = null; // the reading that is looked at
let growing = null; // the one kept last, if what is typed now goes on from it
let goToReading;

const isReading = (one) =>
  ['marking', 'part', 'spoken'].every((name) => typeof one?.[name] === 'string');

const kept = () => {
  const all = load(NAME);
  return Array.isArray(all) ? all.filter(isReading).slice(0, MOST) : [];
};

const isSame = (asked) => (one) => one.marking === asked.marking && one.part === asked.part;

// A reading that was typed on from the last takes its place.
const keep = (reading) => {
  const goesOn = (one) => one.marking === growing && reading.marking.startsWith(growing);
  const isOld = (one, place) => isSame(reading)(one) || (place === 0 && goesOn(one));
  save(NAME, [reading, ...kept().filter((one, place) => !isOld(one, place))].slice(0, MOST));
  growing = reading.marking;
};

/** Keep what stands in the field, read or not. */
export const keepTyped = () => {
  keepWaiting();
  const typed = now();
  if (typed.marking.trim() && !kept().some(isSame(typed))) keep({ ...typed, spoken: '' });
};

const keepWaiting = () => {
  clearTimeout(timer);
  if (waiting) keep(waiting);
  waiting = null;
};

const followMarking = (asked, found) => {
  clearTimeout(timer);
  waiting = null;
  if (growing !== null && !asked.marking.startsWith(growing)) growing = null;
  if (!found?.read) return;
  waiting = { ...asked, spoken: found.spoken };
  timer = setTimeout(keepWaiting, LOOKED_AT_MS);
};

const entry = (one) => {
  const [item, button, marking, spoken] =
    ['li', 'button', 'strong', 'span'].map((it) => document.createElement(it));
  marking.textContent = one.marking;
  spoken.textContent = one.spoken;
  button.type = 'button';
  button.append(marking, ' ', spoken);
  button.addEventListener('click', () => {
    keepTyped();
    fill(one.marking, one.part);
    goToReading();
  });
  item.append(button);
  return item;
};

const paint = (told = '') => {
  const all = kept();
  byId('kept').replaceChildren(...all.map(entry));
  byId('wipe').hidden = !all.length;
  byId('wipe-asked').hidden = true;
  const where = isRefused() ? say('not kept') : say('kept', { most: MOST });
  byId('where-kept').textContent = [told || (all.length ? '' : say('none')), where].join(' ').trim();
};

const askToWipe = () => {
  byId('wipe').hidden = true;
  byId('wipe-asked').hidden = false;
  byId('wipe-question').textContent = say('wipe all', { count: kept().length });
  byId('wipe-no').focus();
};

const wipe = () => {
  clearTimeout(timer);
  waiting = null;
  save(NAME, []);
  paint(say('wiped'));
  byId('where-kept').focus();
};

export const begin = (again) => {
  goToReading = again;
  byId('where-kept').tabIndex = -1;
  byId('wipe').addEventListener('click', askToWipe);
  byId('wipe-yes').addEventListener('click', wipe);
  byId('wipe-no').addEventListener('click', () => {
    paint();
    byId('wipe').focus();
  });
  addEventListener('pagehide', keepWaiting);
  follow(followMarking);
  paint();
};

export const show = () => {
  keepWaiting();
  paint();
};

// Bands by tapping: each colour is a word in the field of the marking.

import { fill, follow, now } from './marking.js';
import { keepTyped } from './last.js';
import { byId, named, say } from './words.js';

const pads = [...document.querySelectorAll('[data-colour]')];
const inks = new Map(pads.map((pad) => [pad.dataset.colour, pad.querySelector('.swatch').style.background]));
const banded = [...document.querySelectorAll('input[name=banded]')];
let setHere = false; // whether "read it as" was set here, and not by the reader's own choice

const bandsIn = (marking) => {
  const words = marking.trim().toLowerCase().split(/[\s,;/-]+/).filter(Boolean);
  return words.every((word) => inks.has(word)) ? words : [];
};

const kind = () => banded.find((one) => one.checked).value;

const paint = (bands) => {
  const items = bands.map((band, place) => {
    const [item, swatch] = ['li', 'span'].map((it) => document.createElement(it));
    swatch.className = 'swatch';
    swatch.style.background = inks.get(band);
    item.append(swatch, say('band', { place: place + 1, colour: named(band) }));
    return item;
  });
  if (!items.length) {
    items.push(document.createElement('li'));
    items[0].textContent = say('no bands');
  }
  byId('bands').replaceChildren(...items);
  byId('undo').disabled = !bands.length;
  byId('clear-bands').disabled = !bands.length;
};

const write = (bands) => {
  setHere = true;
  fill(bands.join(' '), kind());
};

const tap = (colour) => {
  const { marking } = now();
  const bands = bandsIn(marking);
  if (!bands.length) keepTyped(); // it is not lost: the last readings have it
  write([...bands, colour]);
};

/** Other text than bands is no longer read as the part that the bands were on. */
const followMarking = ({ marking, part }, found) => {
  if (found) return;
  const bands = bandsIn(marking);
  paint(bands);
  const twin = banded.find((one) => one.value === part);
  if (twin) twin.checked = true;
  if (setHere && !bands.length) {
    setHere = false;
    fill(marking, '');
  }
};

export const begin = () => {
  banded[0].checked = true;
  pads.forEach((pad) => pad.addEventListener('click', () => tap(pad.dataset.colour)));
  byId('undo').addEventListener('click', () => write(bandsIn(now().marking).slice(0, -1)));
  byId('clear-bands').addEventListener('click', () => write([]));
  banded.forEach((one) => one.addEventListener('change', () => {
    const bands = bandsIn(now().marking);
    if (bands.length) write(bands);
  }));
  follow(followMarking);
};

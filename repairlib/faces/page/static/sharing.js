// What is done with a reading: its address copied or as a square code, as JSON, on paper.

import { addressOf } from './address.js';
import { folded, put, speak } from './answer.js';
import { follow, now } from './marking.js';
import { ask } from './reader.js';
import { byId, say } from './words.js';

const copy = async () => {
  const address = addressOf(now());
  const place = byId('address');
  place.hidden = false;
  try {
    await navigator.clipboard.writeText(address);
    place.textContent = say('copied');
    speak(say('copied'));
  } catch {
    const text = document.createElement('code');
    text.textContent = address;
    place.replaceChildren(say('not copied'), ' ', text);
    getSelection().selectAllChildren(text);
  }
};

const isStill = (asked) => addressOf(asked) === addressOf(now());

const showSquare = async () => {
  const asked = now();
  try {
    const { html } = await ask({ tool: 'square', text: addressOf(asked) });
    if (isStill(asked)) put(byId('code'), html);
  } catch (error) {
    if (isStill(asked)) byId('code').replaceChildren(say('no answer'), folded(say('detail'), error.message));
  }
};

const showDocument = async () => {
  const asked = now();
  const place = byId('document').querySelector('pre');
  if (!byId('document').open) return;
  try {
    const { document: found } = await ask({ tool: 'document', ...asked });
    if (isStill(asked)) place.textContent = found;
  } catch (error) {
    if (isStill(asked)) place.textContent = `${say('no answer')}\n${error.message}`;
  }
};

/** Nothing of an earlier reading stays beside a new one. */
const followMarking = (asked, found) => {
  if (found) {
    showDocument();
    return;
  }
  byId('address').hidden = true;
  byId('code').replaceChildren();
  byId('document').querySelector('pre').textContent = '';
};

const opened = [];

const openForPaper = () => {
  const shut = document.querySelectorAll('.answer details:not([open])');
  shut.forEach((one) => { one.open = true; opened.push(one); });
};

export const begin = () => {
  byId('copy').addEventListener('click', copy);
  byId('square').addEventListener('click', showSquare);
  byId('document').addEventListener('toggle', showDocument);
  byId('print').addEventListener('click', () => print());
  addEventListener('beforeprint', openForPaper);
  addEventListener('afterprint', () => opened.splice(0).forEach((one) => { one.open = false; }));
  follow(followMarking);
};

// Answers on the page. They come as HTML that the library has made and escaped.

import { askNewest } from './reader.js';
import { byId, say } from './words.js';

const QUIET_MS = 700;
let timer;

/** Speak a line once nothing has been typed for a moment; only the last one is spoken. */
export const speak = (line) => {
  clearTimeout(timer);
  timer = setTimeout(() => { byId('speaks').textContent = line; }, QUIET_MS);
};

/** Say nothing more of what was asked before; the same line is then heard again. */
export const hush = () => {
  clearTimeout(timer);
  byId('speaks').textContent = '';
};

/** Put HTML in its place. One region speaks, so nothing in here may speak as well. */
export const put = (place, html) => {
  const made = document.createElement('template');
  made.innerHTML = html;
  const speaking = made.content.querySelectorAll('[role=status], [role=alert], [aria-live]');
  speaking.forEach((one) => { one.removeAttribute('role'); one.removeAttribute('aria-live'); });
  place.replaceChildren(made.content);
};

/** Text that is folded under a title. */
export const folded = (title, inside) => {
  const [fold, head, text] = ['details', 'summary', 'pre'].map((it) => document.createElement(it));
  head.textContent = title;
  text.textContent = inside;
  text.tabIndex = 0;
  fold.append(head, text);
  return fold;
};

/** Ask, and show what comes, unless something newer was asked. What waits is pale meanwhile. */
export const answerIn = async (section, question, show) => {
  section.dataset.waits = '';
  try {
    const found = await askNewest(question);
    if (found === null) return;
    show(found);
  } catch (error) {
    const sorry = document.createElement('p');
    sorry.textContent = say('no answer');
    section.querySelector('.answer').replaceChildren(sorry, folded(say('detail'), error.message));
    section.querySelector('.drawn')?.replaceChildren();
    speak(say('no answer'));
  }
  delete section.dataset.waits;
};

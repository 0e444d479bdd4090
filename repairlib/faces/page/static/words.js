// The page's words and choices, from the blocks of data in its HTML.

export const byId = (id) => document.getElementById(id);
const data = (id) => JSON.parse(byId(id).textContent);

const WORDS = data('words');
const { marks, names } = data('choices');

/** One of the page's sentences; `{count}` in it becomes `filled.count`. */
export const say = (key, filled = {}) =>
  WORDS[key].replace(/\{(\w+)\}/g, (_, name) => filled[name]);

/** A name of the library, in the language of the page. */
export const named = (name) => names[name] ?? name;

/** What may be seen on a part of this family. */
export const marksOf = (family) => marks[family];

// The reader: Python in a worker, asked from the page. Nobody waits for it while typing.

import { BUNDLE, LATER, LOCK, PYTHON, SIZES } from './build.js';

const here = (path) => new URL(path, import.meta.url).href;

let worker;
let last = 0;
const waiting = new Map(); // by the number of the question: what to do with its answer
let isReady;
const readiness = new Promise((resolve) => { isReady = resolve; });

// A worker made of a blob stands under the page's own security policy; one from a file would not.
const made = () => {
  const text = `import ${JSON.stringify(here('./worker.js'))};`;
  const address = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
  return new Worker(address, { type: 'module' });
};

/** Start Python. `progress(part, what)`, `ready()` and `trouble(kind, detail)` are told. */
export const start = ({ progress, ready, trouble }) => {
  if (!globalThis.WebAssembly || !globalThis.DecompressionStream) return trouble('no-wasm', '');
  try {
    worker = made();
  } catch (error) {
    return trouble('no-worker', String(error));
  }
  let begun = false;
  worker.onerror = (event) => {
    event.preventDefault();
    trouble(begun ? 'failed' : 'no-worker', event.message ?? '');
  };
  worker.onmessage = ({ data }) => {
    begun = true;
    if (data.come !== undefined) progress(data.come, data.come < 1 ? 'loading' : 'starting');
    else if (data.trouble !== undefined) trouble('no-files', data.trouble);
    else if (data.ready) {
      performance.mark('reader-ready');
      isReady();
      ready();
    } else answered(data);
  };
  const later = Object.fromEntries(Object.entries(LATER).map(([tool, path]) => [tool, here(path)]));
  const begin = { python: here(PYTHON), bundle: here(BUNDLE), later, lock: LOCK, sizes: SIZES };
  worker.postMessage({ begin });
};

const answered = ({ number, found, failed }) => {
  const { resolve, reject } = waiting.get(number);
  waiting.delete(number);
  if (failed === undefined) resolve(JSON.parse(found));
  else reject(new Error(failed));
};

/** The answer to one question. It waits until Python is up. */
export const ask = async (question) => {
  await readiness;
  const number = last += 1;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve, reject });
    worker.postMessage({ number, question: JSON.stringify(question) });
  });
};

let asked = 0;
let before = Promise.resolve();

/** The answer to what was typed last; null for what was typed over meanwhile. */
export const askNewest = (question) => {
  const mine = asked += 1;
  const mineIsNewest = () => mine === asked;
  const found = before.then(async () => {
    await readiness;
    if (!mineIsNewest()) return null;
    const answer = await ask(question);
    return mineIsNewest() ? answer : null;
  });
  before = found.catch(() => {});
  return found;
};

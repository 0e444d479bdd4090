// What the page keeps on the device. Where that is refused it is kept as long as the page is open.

const PREFIX = 'read a marking: ';
const memory = new Map();
let refused = false;

const text = (name) => {
  try {
    return localStorage.getItem(PREFIX + name);
  } catch {
    refused = true;
    return null;
  }
};

/** What was kept under a name, or null. */
export const load = (name) => {
  if (!refused) {
    try {
      const kept = JSON.parse(text(name));
      if (!refused) return kept;
    } catch {
      return null; // not written by this page
    }
  }
  return memory.get(name) ?? null;
};

/** Keep something under a name. */
export const save = (name, what) => {
  memory.set(name, what);
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(what));
  } catch {
    refused = true;
  }
};

/** Whether this browser keeps nothing. */
export const isRefused = () => refused;

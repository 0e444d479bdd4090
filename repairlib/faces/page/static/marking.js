// The marking in its field, the part it is read as, and the reading.

import { addressOf, fromAddress, intoAddress } from './address.js';
import { answerIn, hush, put, speak } from './answer.js';
import { askNewest } from './reader.js';
import { byId, say } from './words.js';

const field = byId('marking');
const parts = [...document.querySelectorAll('input[name=as]')];
const followers = [];

const chosen = () => parts.find((one) => one.checked) ?? parts[0];

/** What stands in the field, and the part it is read as. */
export const now = () => ({ marking: field.value, part: chosen().value });

/** Be told of every change, with the reading once it is there. */
export const follow = (follower) => followers.push(follower);

/** Put a marking in, as if it was typed. A part that does not exist is any part. */
export const fill = (marking, part = now().part) => {
  field.value = marking;
  (parts.find((one) => one.value === part) ?? parts[0]).checked = true;
  changed();
};

const fit = () => {
  field.style.height = 'auto';
  field.style.height = `${field.scrollHeight + field.offsetHeight - field.clientHeight}px`;
};

// The words come first, the drawing after them; a key in between is answered before it is drawn.
// An older drawing is pale meanwhile.
const draw = async (marking, body) => {
  const place = byId('picture');
  place.dataset.waits = '';
  try {
    const found = await askNewest({ tool: 'drawing', marking, body });
    if (!found) return;
    put(place, found.html);
  } catch {
    place.replaceChildren();
  }
  delete place.dataset.waits;
};

const show = (asked, found) => {
  put(byId('answer'), found.html);
  draw(asked.marking, found.body);
  byId('more').hidden = !asked.marking.trim();
  if (asked.marking.trim()) speak(`${found.spoken} ${found.beware}`.trim());
  followers.forEach((follower) => follower(asked, found));
};

/** Ask for the reading of what stands in the field. */
export const askReading = () => {
  const asked = now();
  const question = { tool: 'marking', ...asked };
  return answerIn(byId('reading'), question, (found) => show(asked, found));
};

const changed = () => {
  const asked = now();
  const name = chosen().closest('label').textContent.trim();
  hush();
  fit();
  byId('part').textContent = name;
  byId('parts').toggleAttribute('data-chosen', asked.part !== '');
  byId('printed').textContent =
    `${say('read', { marking: asked.marking, part: name })}\n${addressOf(asked)}`;
  intoAddress(asked);
  followers.forEach((follower) => follower(asked));
  askReading();
};

/** Read what was typed before this script came, or what stands in the address. */
export const begin = () => {
  const { marking, part } = fromAddress();
  if (field.value) changed();
  else fill(marking, part);
  field.addEventListener('input', changed);
  new ResizeObserver(fit).observe(field);
  addEventListener('hashchange', () => {
    const there = fromAddress();
    const here = now();
    if (there.marking !== here.marking || there.part !== here.part) fill(there.marking, there.part);
  });
  parts.forEach((one) => one.addEventListener('change', changed));
  byId('clear').addEventListener('click', () => {
    fill('');
    field.focus();
  });
};

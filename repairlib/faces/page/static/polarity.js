// Which way round: each choice changes the answer.

import { answerIn, hush, put, speak } from './answer.js';
import { byId, marksOf, named } from './words.js';

const section = byId('polarity');
const selects = [...section.querySelectorAll('select')];

const offer = (select, marks) => {
  const before = select.value;
  select.replaceChildren(...marks.map((mark) => new Option(named(mark), mark)));
  if (marks.includes(before)) select.value = before;
};

const offerItsMarks = () => {
  const marks = marksOf(byId('family').value);
  const nothingElse = byId('also_on_part').options[0].value;
  offer(byId('part_mark'), marks);
  offer(byId('also_on_part'), [nothingElse, ...marks]);
};

const ask = () => {
  hush();
  const seen = Object.fromEntries(selects.map((one) => [one.id, one.value]));
  return answerIn(section, { tool: 'polarity', ...seen }, (found) => {
    put(section.querySelector('.answer'), found.html);
    put(section.querySelector('.drawn'), found.picture);
    speak(section.querySelector('.answer strong').textContent);
  });
};

export const begin = () => {
  offerItsMarks(); // a browser may have put back the family of an earlier visit
  byId('family').addEventListener('change', offerItsMarks);
  selects.forEach((one) => one.addEventListener('change', ask));
};

export const show = ask;

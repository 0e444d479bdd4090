// A value that is made: the nearest one, and two for one.

import { answerIn, hush, put, speak } from './answer.js';
import { byId } from './words.js';

const section = byId('values');

const ask = () => {
  hush();
  const question = { tool: 'values', value: byId('value').value, series: byId('series').value };
  return answerIn(section, question, (found) => {
    const place = section.querySelector('.answer');
    put(place, found.html);
    const first = place.querySelector('strong') ?? place.querySelector('tr');
    speak([...(first?.children ?? [])].map((cell) => cell.textContent).join(' ') || first?.textContent);
  });
};

export const begin = () => {
  byId('value').addEventListener('input', ask);
  byId('series').addEventListener('change', ask);
};

export const show = ask;

// Which hand holds the phone: the small buttons lie on the side of its thumb.

import { load, save } from './store.js';

const NAME = 'hand';

export const begin = () => {
  const hands = [...document.querySelectorAll('input[name=hand]')];
  const use = (hand) => {
    hand.checked = true;
    document.documentElement.dataset.hand = hand.value;
  };
  const before = load(NAME);
  use(hands.find((one) => one.value === before) ?? hands.find((one) => one.value === 'right'));
  hands.forEach((one) => one.addEventListener('change', () => {
    use(one);
    save(NAME, one.value);
  }));
};

// The address carries the reading: #104K, or #104K&as=tantalum.

const WAIT_MS = 200; // a browser refuses a page that changes its address at every key
let timer;

const decoded = (text) => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // a % that begins no code is a %
  }
};

const encoded = (text) => encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));

/** The marking and the part that stand in the address. */
export const fromAddress = () => {
  const [marking, ...others] = location.hash.slice(1).split('&');
  const as = others.find((one) => one.startsWith('as='));
  return { marking: decoded(marking), part: as ? decoded(as.slice(3)) : '' };
};

/** The address of this reading, in full. */
export const addressOf = ({ marking, part }) => {
  const address = new URL(location.href);
  const as = part ? `&as=${encoded(part)}` : '';
  address.hash = '';
  const bare = address.href.replace(/#$/, '');
  return marking || part ? `${bare}#${encoded(marking)}${as}` : bare;
};

/** Put the reading into the address, once the typing pauses. */
export const intoAddress = (reading) => {
  clearTimeout(timer);
  timer = setTimeout(() => {
    try {
      history.replaceState(null, '', addressOf(reading));
    } catch {
      // Too long for an address, or too often: the field still holds what was typed.
    }
  }, WAIT_MS);
};

// An element with its attributes, what is done on an event, and what stands inside. Stands before
// the script of a panel that builds its elements itself.
const make = (tag, attributes = {}, ...inside) => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else if (value !== false) made.setAttribute(name, value === true ? '' : value);
  }
  made.append(...inside);
  return made;
};

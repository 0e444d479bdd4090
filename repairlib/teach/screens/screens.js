// Lays the ideas out so that each screen is filled and nothing has to be scrolled, then shows them.
const LETTERS = 20; // px, the smallest letters of a drawing where there is a choice
const main = document.querySelector("main");
// What is folded in a lesson is not for the wall, but a caution is shown whole.
main.querySelectorAll("details").forEach((one) => {
  if (one.closest("[role=note]")) one.open = true;
  else one.remove();
});
main.querySelectorAll("[role=table]").forEach((one) => one.replaceWith(tableOf(one)));
const ideas = [...main.children].map((one) => one.cloneNode(true));
const PARTED = { UL: "li", OL: "li", TABLE: "tbody > tr", DIV: ":scope[role=note] > div" };
let at = 0;

// A table that a lesson makes of other elements, so that it folds on a phone, as a table.
function tableOf(one) {
  const table = document.createElement("table");
  const title = one.querySelector(":scope > :not([role])");
  if (title) table.createCaption().innerHTML = title.innerHTML;
  for (const row of one.querySelectorAll("[role=row]")) {
    const head = row.querySelector("[role=columnheader]") && !row.querySelector("[role=cell]");
    const made = (head ? table.createTHead() : table.tBodies[0] || table.createTBody()).insertRow();
    for (const cell of row.querySelectorAll("[role=columnheader], [role=rowheader], [role=cell]")) {
      made.append(document.createElement(cell.getAttribute("role") === "cell" ? "td" : "th"));
      made.lastChild.innerHTML = cell.innerHTML;
    }
  }
  return table;
}

// The pieces of an idea that stay whole: paragraphs, lines of lists and tables, rows of drawings.
function pieces(idea) {
  return [...idea.children].filter((one) => one.tagName !== "H1").flatMap(taken);
}

function taken(one) {
  const drawings = [...one.querySelectorAll("figure")];
  if (one.tagName === "FIGURE") return [{ drawings: [one] }];
  if (drawings.length && drawings.length === drawn(one)) return [{ drawings }];
  const inside = one.tagName === "DIV" && one.querySelector("table, [role=note], div div > p");
  if (drawings.length > 1 || inside) {
    return [...one.children].flatMap(taken);
  }
  if (drawings.length) return [{ drawings, says: without(one) }];
  const lines = PARTED[one.tagName] && one.querySelectorAll(PARTED[one.tagName]);
  return lines && lines.length > 1 ? [...lines].map((line) => ({ line, of: one })) : [{ one }];
}

// How many drawings there are, when there is nothing else.
const drawn = (one) => (one.textContent.trim() ? 0 : one.querySelectorAll("figure").length);

// The words that go with a drawing.
function without(one) {
  const words = one.cloneNode(true);
  words.querySelectorAll("figure").forEach((drawing) => drawing.remove());
  words.removeAttribute("style");
  return words;
}

function screen(idea, goesOn) {
  const made = document.createElement("section");
  made.className = "on";
  made.append(idea.querySelector("h1").cloneNode(true));
  if (goesOn) made.firstChild.append(" …");
  main.append(made);
  return made;
}

const tooHigh = (made) => made.scrollHeight > made.clientHeight + 1;

// A line goes on in the list or table that stands last, or in a new one with the same head.
function put(made, piece) {
  if (piece.one) {
    const node = piece.one.cloneNode(true);
    made.append(node);
    return () => node.remove();
  }
  const last = made.lastElementChild;
  let list = last.of === piece.of ? last : null;
  const fresh = !list;
  if (fresh) {
    list = piece.of.cloneNode(true);
    list.querySelectorAll(PARTED[piece.of.tagName]).forEach((line) => line.remove());
    list.of = piece.of;
    if (list.tagName === "OL") list.start = [...piece.of.children].indexOf(piece.line) + 1;
    made.append(list);
  }
  const line = piece.line.cloneNode(true);
  (list.tBodies ? list.tBodies[0] : list).append(line);
  return () => (fresh ? list : line).remove();
}

// As wide as there is room for; gives how large the smallest letters become, or 0 for no room.
function putDrawings(made, drawings) {
  const row = document.createElement("div");
  row.className = "row";
  made.append(row);
  const room = made.clientHeight - (row.offsetTop - made.offsetTop) - 24;
  const width = (made.clientWidth - 48 - 32 * (drawings.length - 1)) / drawings.length;
  const letters = drawings.map((drawing) => {
    const { wide, high, letters: small } = drawing.dataset;
    const scale = Math.min(width / wide, room / high);
    const shown = drawing.cloneNode(true);
    shown.style.width = `${wide * scale}px`;
    row.append(shown);
    if (small) return scale * small;
    const large = scale * high > made.clientHeight * 0.35 || scale * wide > made.clientWidth * 0.45;
    return large ? LETTERS : 0;
  });
  return { smallest: Math.min(...letters), away: () => row.remove() };
}

function layOut(idea) {
  let made = screen(idea, false);
  const empty = () => made.children.length === 1;
  const next = () => { if (!empty()) made = screen(idea, true); };
  const draw = (drawings, says) => {
    const words = says ? put(made, { one: says }) : () => {};
    const first = putDrawings(made, drawings);
    if (first.smallest >= LETTERS && !tooHigh(made)) return;
    first.away();
    words();
    if (!empty()) { next(); draw(drawings, says); return; }
    if (drawings.length > 1) {
      const half = Math.ceil(drawings.length / 2);
      draw(drawings.slice(0, half));
      draw(drawings.slice(half));
      return;
    }
    if (says) put(made, { one: says });
    putDrawings(made, drawings);
  };
  for (const piece of pieces(idea)) {
    if (piece.drawings) { draw(piece.drawings, piece.says); continue; }
    const away = put(made, piece);
    if (tooHigh(made) && !empty()) {
      away();
      next();
      put(made, piece);
    }
    if (tooHigh(made)) made.style.zoom = made.clientHeight / made.scrollHeight;
  }
}

function show(place) {
  at = Math.max(0, Math.min(place, main.children.length - 1));
  [...main.children].forEach((one, number) => one.classList.toggle("on", number === at));
  document.getElementById("place").textContent = `${at + 1} of ${main.children.length}`;
}

function layAll() {
  const part = main.children.length ? at / main.children.length : 0;
  main.replaceChildren();
  for (const idea of ideas) layOut(idea);
  show(Math.round(part * main.children.length));
}

const KEYS = {
  ArrowRight: () => show(at + 1), ArrowDown: () => show(at + 1), PageDown: () => show(at + 1),
  " ": () => show(at + 1), Enter: () => show(at + 1),
  ArrowLeft: () => show(at - 1), ArrowUp: () => show(at - 1), PageUp: () => show(at - 1),
  Backspace: () => show(at - 1),
  Home: () => show(0), End: () => show(main.children.length - 1),
  o: () => main.children[at].classList.toggle("open"),
  f: () => (document.fullscreenElement ? document.exitFullscreen() : document.body.requestFullscreen()),
};
addEventListener("keydown", (event) => {
  const does = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!does || event.ctrlKey || event.altKey || event.metaKey) return;
  event.preventDefault();
  does();
});
main.addEventListener("click", (event) => show(at + (event.clientX < innerWidth / 3 ? -1 : 1)));
addEventListener("resize", layAll);
Promise.all([...document.images].map((one) => one.decode().catch(() => {}))).then(layAll);

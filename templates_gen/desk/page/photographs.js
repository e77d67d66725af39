// Photographs: where one is dropped or chosen, and what the desk tells of it.
import { address, bring, changed, store } from "./api.js";
import { h } from "./dom.js";

const CARDS = ["a4", "letter", "a3"];
const told = new Map(); // by what was asked: what the desk said last
const busy = new Set();
let card = null;
let count = 0; // the picture is another one each time

export const cardOf = () => card || (store.state.raw.job?.unit === "in" ? "letter" : "a4");

// What is done with photographs of a kind; it gives what is to be said.
export const WORK = {
  wall: async ([file]) => ({ ...await bring("/photo/wall", file, { ...named([file]), card: cardOf() }), alt: "The photograph with the group drawn on it" }),
  taped: async (files) => ({ ...await bring("/photo/taped", new Blob(files), named(files)), alt: "The photograph with every join marked" }),
};

export async function take(kind, files) {
  if (!files.length || busy.has(kind)) return;
  busy.add(kind);
  changed("panel");
  try { told.set(kind, { ...await WORK[kind]([...files]), number: ++count }); } catch (error) { told.set(kind, { wrong: error.message }); }
  busy.delete(kind);
  changed("panel");
}

// A box for photographs of one kind, to drop them on or to choose them in.
export function photoBox(kind, title, help, { many = false, withCard = true } = {}) {
  return h("details", { className: "photo", "data-focus": `photo ${kind}`, open: told.has(kind) || busy.has(kind),
    ondrop: (event) => { if (!event.dataTransfer?.files.length) return; event.preventDefault(); event.stopPropagation(); take(kind, event.dataTransfer.files); } },
  h("summary", {}, title),
  h("p", { className: "help" }, help),
  withCard ? cardChoice(kind) : null,
  h("label", {}, many ? "Photographs, dropped here or chosen" : "A photograph, dropped here or chosen", h("input", { type: "file", accept: "image/jpeg,image/png", multiple: many, disabled: busy.has(kind), "data-focus": `file ${kind}`, onchange: (event) => take(kind, event.target.files) })),
  h("div", { className: "said-of-photo", role: "status" }, ...answer(kind)));
}

function cardChoice(kind) {
  return h("label", {}, "The photo card is printed on", h("select", { "data-focus": `card ${kind}`, onchange: (event) => { card = event.target.value; } },
    ...CARDS.map((name) => h("option", { value: name, selected: name === cardOf() }, name))));
}

function answer(kind) {
  if (busy.has(kind)) return [h("p", {}, "Being read…")];
  const one = told.get(kind);
  if (!one) return [];
  if (one.wrong) return [h("p", { className: "wrong" }, one.wrong)];
  const picture = one.picture ? address("/photo", { picture: one.picture, v: one.number }) : "";
  return [
    ...one.said.map(({ level, text }) => (level ? h("p", { className: `finding ${level}` }, text) : h("p", {}, text))),
    one.table?.length ? h("ul", {}, ...one.table.map((line) => h("li", {}, line))) : null,
    picture ? h("img", { src: picture, alt: one.alt }) : null,
    picture ? h("p", {}, h("a", { href: picture, download: `${one.picture}.jpg` }, "Keep this picture"), ". It is kept nowhere else.") : null,
  ].filter(Boolean);
}

// What dropped files say of themselves.
export const named = (files) => ({ names: files.map((file) => file.name).join("|"), sizes: files.map((file) => file.size).join("|") });

export function wallBox() {
  return photoBox("wall", "The group on a photograph of the wall", "Print the photo card (step Paper, Cards for photographs) and tape it to the wall, its middle where the centre line and the level line will cross. A photograph may also be dropped on the wall above.");
}

export function tapedBox() {
  if (!store.state.raw.paper?.photo) return h("p", { className: "help" }, "With photo tags on the sheets (More about the paper) a photograph checks the taped paper before nails go in.");
  return photoBox("taped", "Check the taped paper by a photograph", "Photograph the whole paper, then drop the picture here: it is told which joins to tape anew, and how far each nail is off. A second one from the side tells more.", { many: true, withCard: false });
}

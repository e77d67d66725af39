// After hanging: what was measured goes in, and what to move comes out.
import { bring, changed, job, store } from "./api.js";
import { h } from "./dom.js";
import { WORK, cardOf, named, photoBox } from "./photographs.js";
import { open, pointed, pointingPart, whole } from "./pointing.js";
import { makeButton } from "./making.js";

const COLUMNS = { left: "Floor to top left corner", right: "Floor to top right corner", tilt: "or spirit level: mm in a metre, + where the right is higher", left_edge: "Left edge from the centre line, such as 12 left" };
const key = `readings ${job}`;
const readings = JSON.parse(sessionStorage.getItem(key) || "{}");
let told = null;
let wrong = "";

export function afterPanel() {
  const work = async () => {
    try { told = await bring("/correct", { rows: readings }); wrong = ""; } catch (error) { told = null; wrong = error.message; }
    changed("panel");
  };
  return [
    h("h2", {}, "After hanging"),
    h("p", { className: "help" }, "Measure the frames that look off, and only those. Both top corners show how far a frame leans."),
    photoBox("hung", "Read it from a photograph", "Tape a photo card (step Paper, Cards for photographs) level beside the frames and photograph all of them from the front. Then point at the corners of two frames or more: their edges are looked for near there."),
    ...pointingPart(),
    pointed.picture ? h("div", { className: "row" }, h("button", { type: "button", className: "main", "data-focus": "read photo", disabled: Object.keys(whole()).length < 2 || reading, onclick: readPhoto }, reading ? "Being read…" : "Read the frames")) : null,
    ...seen.map(({ level, text }) => h("p", { className: level ? `finding ${level}` : "" }, text)),
    ...store.state.frames.map(row),
    wrong ? h("p", { className: "wrong", role: "alert" }, wrong) : null,
    h("div", { className: "row" }, h("button", { type: "button", className: "main", "data-focus": "correct", onclick: work }, "What has to move?"), makeButton("form", "A form on paper")),
    told ? h("pre", { className: "told", tabIndex: 0, "aria-label": "What to move" }, told.text) : null,
  ];
}

WORK.hung = async ([file]) => { await open(file); return { said: [] }; };
let seen = []; // what the desk said of the photograph
let reading = false;

async function readPhoto() {
  reading = true;
  changed("panel");
  try {
    const found = await bring("/photo/hung", pointed.file, { ...named([pointed.file]), card: cardOf(), corners: JSON.stringify(whole()) });
    Object.assign(readings, found.rows);
    sessionStorage.setItem(key, JSON.stringify(readings));
    seen = found.said;
    Object.assign(pointed, { file: null, picture: null, near: null });
  } catch (error) { seen = [{ level: "warn", text: error.message }]; }
  reading = false;
  changed("panel");
}

function row(one) {
  const values = readings[one.id] || {};
  const inputs = Object.entries(COLUMNS).map(([name, words]) => h("label", {}, words, h("input", {
    type: "text", value: values[name] || "", autocomplete: "off", "data-focus": `${one.id} ${name}`,
    oninput: (event) => { readings[one.id] = { ...readings[one.id], [name]: event.target.value }; sessionStorage.setItem(key, JSON.stringify(readings)); },
  })));
  const filled = Object.values(values).some(Boolean);
  return h("details", { "data-focus": `after ${one.id}`, open: filled || store.selected === `frame ${one.id}` }, h("summary", {}, `Frame ${one.id}${one.title ? `: ${one.title}` : ""}`), h("div", { className: "quick" }, ...inputs));
}

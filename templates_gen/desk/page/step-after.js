// After hanging: what was measured goes in, and what to move comes out.
import { bring, change, changed, job, store } from "./api.js";
import { capital, h, notice, wordsOf } from "./dom.js";
import { madeList, makeButton } from "./making.js";
import { WORK, cardOf, named, photoBox } from "./photographs.js";
import { open, pointed, pointingPart, whole } from "./pointing.js";
import { printerName } from "./printers.js";

const LINE = "level line";
const HEIGHTS = {
  floor: { left: "Floor to top left corner", right: "Floor to top right corner" },
  [LINE]: { left_from_level: "Level line to top left corner, such as 12 above", right_from_level: "Level line to top right corner" },
};
const OTHERS = { tilt: "or spirit level: mm in a metre, + where the right is higher", left_edge: "Left edge from the centre line, such as 12 left" };
const key = `readings ${job}`;
const readings = JSON.parse(sessionStorage.getItem(key) || "{}");
let from = sessionStorage.getItem(`${key} from`);
let told = null;
let wrong = null; // what cannot be used, and of which reading

const columns = () => ({ ...HEIGHTS[from || (store.state.arrangement === "stairs" ? LINE : "floor")], ...OTHERS });

function heightsFrom(name) {
  from = name;
  sessionStorage.setItem(`${key} from`, name);
}

// What was read of the frames that there are, in the columns that are shown; how sure it is, as long as no hand changed it.
function rows() {
  const read = ({ id }) => Object.fromEntries(Object.keys(columns()).map((name) => [name, readings[id]?.[name] || ""]));
  const filled = store.state.frames.map((one) => [one.id, read(one)]).filter(([, values]) => Object.values(values).some(Boolean));
  return Object.fromEntries(filled.map(([id, values]) => [id, { ...values, within: readings[id].within || "" }]));
}

async function work() {
  wrong = null;
  if (!Object.keys(rows()).length) wrong = { where: "", message: "Nothing is filled in yet: both top corners of one frame at least." };
  const read = rows();
  try { told = wrong ? null : { rows: read, ...(await bring("/correct", { rows: read })) }; } catch (error) { told = null; wrong = error; }
  changed("panel");
  document.querySelector("#panel .reading [aria-invalid]")?.focus();
}

export function afterPanel() {
  const kind = Object.keys(HEIGHTS).find((name) => Object.keys(HEIGHTS[name])[0] in columns());
  return [
    h("h2", {}, "After hanging"),
    h("p", { className: "help" }, "Level a frame that hangs on a wire or on teeth. Then measure the frames that look off, and only those, at both top corners."),
    photoBox("hung", "Read it from a photograph", "Tape a photo card (step Paper, Cards for photographs) level beside the frames and photograph all of them from the front. Then point at the corners of two frames or more: their edges are looked for near there."),
    ...pointingPart(),
    pointed.picture ? h("div", { className: "row" }, h("button", { type: "button", className: "main", "data-focus": "read photo", disabled: Object.keys(whole()).length < 2 || reading, onclick: readPhoto }, reading ? "Being read…" : "Read the frames")) : null,
    ...seen.map(({ level, text }) => h("p", { className: level ? `finding ${level}` : "" }, text)),
    h("div", { className: "row", role: "radiogroup", "aria-label": "Top corners are measured from" }, "Measured from the", ...Object.keys(HEIGHTS).map((name) => h("label", { className: "tick" },
      h("input", { type: "radio", name: "heights", checked: name === kind, "data-focus": `from ${name}`, onchange: () => { heightsFrom(name); changed("panel"); } }), ` ${name}`))),
    kind === LINE ? h("p", { className: "help" }, store.state.levelSaid) : null,
    ...store.state.frames.map(row),
    wrong && !readingOf(wrong) ? h("p", { className: "wrong", role: "alert" }, capital(wrong.message)) : null,
    h("div", { className: "row" }, h("button", { type: "button", className: "main", "data-focus": "correct", onclick: work }, "What has to move?"), makeButton("form", "A form on paper"),
      told?.moves ? makeButton("patches", "Papers for the new holes", { rows: told.rows, printer: printerName() }) : null),
    madeList(),
    told ? h("section", { className: "told", "aria-label": "What to move" }, h("p", {}, "From the old hole to the new one; left and right as you face the wall."),
      ...told.frames.flatMap((one) => [h("h3", {}, one.name), ...one.lines.map((line) => h("p", {}, line)), keeping(one)]), ...told.foot.map((line) => h("p", {}, line))) : null,
  ];
}

// What goes into the job of a frame that was put right; its readings are of before that, and go.
function keeping(one) {
  const keep = async ({ what, measures = {}, fixing }) => {
    const error = await change({ do: "put right", frame: one.id, measures, fixing });
    if (error) { notice(error.message); return; }
    one.keeps = one.keeps.filter((other) => (fixing ? other.measures : other.fixing));
    one.kept = [...(one.kept || []), what];
    delete readings[one.id];
    sessionStorage.setItem(key, JSON.stringify(readings));
    changed("panel");
  };
  const words = ({ when, what }) => capital(`${when ? `${when}: ` : ""}put ${what} into the job`);
  return h("div", { role: "status" }, ...(one.kept || []).map((what) => h("p", { className: "help" }, `The job says now: ${what}. Undo takes it back.`)),
    one.keeps.length ? h("label", { className: "tick" }, h("input", { type: "checkbox", checked: Boolean(one.righted), "data-focus": `righted ${one.id}`, onchange: (event) => { one.righted = event.target.checked; changed("panel"); } }), ` Done: frame ${one.id} hangs as it should now`) : null,
    h("div", { className: "row" }, ...one.keeps.map((offer) => h("button", { type: "button", disabled: !one.righted, "data-focus": `keep ${one.id} ${words(offer)}`, onclick: () => keep(offer) }, words(offer)))));
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
    heightsFrom("floor");
    sessionStorage.setItem(key, JSON.stringify(readings));
    seen = found.said;
    Object.assign(pointed, { file: null, picture: null, near: null });
  } catch (error) { seen = [{ level: "warn", text: error.message }]; }
  reading = false;
  changed("panel");
}

// The frame and the column that a message is about, as far as it is about one that is shown.
function readingOf({ where }) {
  for (const { id } of store.state.frames) {
    if (where === `(${id})`) return `${id} ${Object.keys(columns())[0]}`;
    const name = Object.keys(columns()).find((column) => where === `(${id}), ${column}`);
    if (name) return `${id} ${name}`;
  }
  return "";
}

function row(one, number) {
  const values = readings[one.id] || {};
  const place = store.state.planned[one.id] || {};
  const planned = (name) => place[name] || (name === "tilt" ? "" : place[name.endsWith("_from_level") ? LINE : "floor"]);
  const inputs = Object.entries(columns()).map(([name, words]) => {
    const bad = wrong && readingOf(wrong) === `${one.id} ${name}` ? `wrong_${number}` : null;
    return h("label", {}, words, h("input", {
      type: "text", value: values[name] || "", autocomplete: "off", placeholder: planned(name) ? `planned: ${planned(name)}` : "", "data-focus": `${one.id} ${name}`, "aria-invalid": bad && "true", "aria-describedby": bad,
      oninput: (event) => { readings[one.id] = { ...readings[one.id], [name]: event.target.value, within: "" }; sessionStorage.setItem(key, JSON.stringify(readings)); },
    }), bad ? h("span", { className: "wrong", id: bad }, capital(wordsOf({ ...wrong, where: "" }))) : null);
  });
  const filled = one.id in rows();
  return h("details", { className: "reading", "data-focus": `after ${one.id}`, open: filled || store.selected === `frame ${one.id}` }, h("summary", {}, `Frame ${one.id}${one.title ? `: ${one.title}` : ""}`), h("div", { className: "quick" }, ...inputs));
}

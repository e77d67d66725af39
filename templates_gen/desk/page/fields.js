// Fields that are saved when they are left.
import { bring, change, store } from "./api.js";
import { capital, h } from "./dom.js";
import { drafts, fieldOf, keep, takenBack, told, wait, why } from "./drafts.js";

export function wordsFor(table, name) {
  return store.fields.tables[table].find((one) => one.name === name);
}

// What the job file has at a place, frames by their ids and features by number and name.
export function valueAt(at) {
  let found = store.state.raw;
  at.forEach((part, depth) => {
    if (found === undefined || found === null) return;
    if (at[0] === "frame" && depth === 1) found = found.find((one) => one.id === part);
    else if (at[1] === "feature" && depth === 2) found = found[Number.parseInt(part, 10)];
    else found = found[part];
  });
  return found;
}

export function shownValue(value) {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map((one) => shownValue(one)).join(value.some(Array.isArray) ? "\n" : ", ");
  if (typeof value === "object") return "";
  return value === true ? "yes" : value === false ? "no" : String(value);
}

// A field's question with the names that are in it; what it means where it has none.
export function asked(words, at = []) {
  const { state } = store;
  const names = { id: at[1], number: state.frames.findIndex((one) => one.id === at[1]) + 1, line: state.arrangement.startsWith("column") ? "column" : "row" };
  return words.ask ? words.ask.replaceAll(/\{(\w+)\}/g, (_, name) => names[name]) : capital(words.means);
}

// What is said under a field: what it means where its label is a question, else what holds while it is empty.
const helpOf = (words) => (words.ask && saysMore(words) ? words.means : words.usual ? `Left empty: ${words.usual}` : "");

// False for what says hardly more than the question: "How wide is the gap between two frames?", the clear gap between two frames.
const SMALL = new Set("a an and are by for from how in is it its of on one or that the there things this to what where which with".split(" "));
const saysMore = ({ ask, means }) => means.toLowerCase().match(/\w+/g).filter((word) => !SMALL.has(word) && !ask.toLowerCase().includes(word.slice(0, 4))).length > 1;

// What there is to choose from, each by its short name.
export function choicesOf(words) {
  if (words.kind === "yes") return ["yes", "no"];
  return words.kind === "choice" ? words.choices.map((value) => ({ value, label: shortName(words, value) })) : null;
}

const shortName = (words, value) => (words.called[value] || value).split(":")[0];

// An id in the page for a key: another one for each, whatever signs a frame's name has.
const idOf = (key) => key.replaceAll(/[^a-z\d-]/giu, (sign) => (sign === "/" ? "_" : sign === "_" ? "__" : `_${sign.codePointAt(0)}-`));

const MULTI = ["rows", "points"]; // what takes a line for each

// One field with its label, its help and its message.  `commit` gives a promise of an error or of null.
export function field({ key, label, help = "", value, placeholder = "", choices, commit, empty = "not given", multi = false }) {
  const id = `f_${idOf(key)}`;
  const draft = drafts.get(key);
  const shown = draft ? draft.text : value;
  const input = choices ? select(choices, shown, empty)
    : multi ? h("textarea", { rows: Math.max(2, shown.split("\n").length), value: shown, placeholder, spellcheck: false })
      : h("input", { type: "text", value: shown, placeholder, autocomplete: "off", spellcheck: false });
  const message = h("p", { className: draft?.waits ? "help" : "wrong", id: `${id}_wrong`, hidden: !draft?.why }, draft ? draft.why : "");
  Object.assign(input, { id });
  input.dataset.key = key;
  input.dataset.saved = value;
  input.setAttribute("aria-describedby", `${help ? `${id}_help ` : ""}${id}_wrong`);
  if (draft?.why && !draft.waits) input.setAttribute("aria-invalid", "true");
  const save = () => leave(input, key, commit);
  input.addEventListener(choices ? "change" : "blur", save);
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && !choices && !multi) save();
    if (event.key !== "Escape" || (!drafts.has(key) && input.value === input.dataset.saved)) return;
    event.stopPropagation(); // it takes back what was typed, and closes nothing
    input.value = input.dataset.saved;
    takenBack(key);
  });
  return h("div", { className: "field" }, h("label", { htmlFor: id }, label), input, message,
    help ? h("p", { className: "help", id: `${id}_help` }, help) : null);
}

function select(choices, value, empty) {
  const listed = choices.map((one) => (typeof one === "string" ? { value: one, label: one } : one));
  if (value && !listed.some((one) => one.value === value)) listed.push({ value, label: value });
  const options = [empty === null ? null : h("option", { value: "" }, empty), ...listed.map((one) => h("option", { value: one.value }, one.label))];
  const made = h("select", {}, ...options);
  made.value = value;
  return made;
}

async function leave(input, key, commit) {
  const text = input.value;
  const draft = drafts.get(key);
  if (draft ? draft.text === text && !draft.again : text === input.dataset.saved) return;
  if (text === input.dataset.saved && draft) { takenBack(key); return; }
  keep(key, { text, why: "" });
  const error = await commit(text);
  const now = drafts.get(key);
  if (now && now.text !== text) return; // typed anew meanwhile
  if (error?.later) { wait(key, error.later); return; }
  if (!error) { keep(key, null); told(key, ""); return; }
  const wrong = error.field || key; // of fields that are saved together, the one that cannot be read
  if (wrong !== key) told(wrong, why(error, wrong));
  else told(key, why(error, key));
  // what could not be saved for a reason of its own is tried again when the field is left again
  keep(wrong, { text: fieldOf(wrong)?.value ?? text, why: why(error, wrong), again: !error.where });
}

// A field of the job file, in its table's words.
export function jobField(table, at, { label, placeholder, choices, help, empty, value } = {}) {
  const words = wordsFor(table, at[at.length - 1]);
  return field({
    key: at.join("/"), label: label || asked(words, at), help: help ?? helpOf(words), empty, multi: MULTI.includes(words.kind),
    value: value ?? shownValue(valueAt(at)), choices: choices || choicesOf(words), placeholder: placeholder || example(words),
    commit: (text) => change({ do: "set", sets: [{ at, value: text }] }),
  });
}

// A field at a place that has no words of its own, such as one of several named alike.
export const fieldAt = (at, label, help) => field({
  key: at.join("/"), label, help, value: shownValue(valueAt(at)), commit: (text) => change({ do: "set", sets: [{ at, value: text }] }),
});

// All fields of a table but those that have a place of their own on the page.
export function allFields(table, at, but = []) {
  return namesOf(table).filter((name) => !but.includes(name)).map((name) => jobField(table, [...at, name]));
}

export const namesOf = (table) => store.fields.tables[table].filter((words) => words.kind !== "own").map((words) => words.name);

const usualNeeds = (table) => (value) => (Object.values(value).some(Boolean) ? store.fields.tables[table].filter((words) => words.needed).map((words) => words.name) : []);

// Fields that make sense only together: all are sent as one table, whichever is left, once those that it needs are there.
// A value that is no table stands for the fields that are in it `alone`.
export function together(at, table, { names = namesOf(table), kept = {}, whole = {}, alone = [], needs = usualNeeds(table), held } = {}) {
  const there = valueAt(at) ?? {};
  const now = held || ((name) => (typeof there === "object" ? there[name] : alone.includes(name) ? there : undefined));
  const key = (name) => [...at, name].join("/");
  const typed = (name) => {
    const input = document.querySelector(`[data-key="${CSS.escape(key(name))}"]`);
    return input ? input.value : shownValue(now(name));
  };
  const send = async (left) => {
    const value = { ...kept };
    for (const name of names) value[name] = typed(name);
    const lacking = needs(value).find((name) => !value[name]);
    if (lacking) {
      try { await bring("/change", { do: "fits", at: [...at, left], value: value[left] }); } catch (error) { return error; }
      const later = `Saved together with “${asked(wordsFor(table, lacking), at)}”, which is still empty.`;
      for (const name of names) if (drafts.get(key(name))?.waits) wait(key(name), later);
      return { later };
    }
    const error = await change({ do: "set", sets: [{ at, value: { ...whole, ...value } }] });
    if (!error) for (const name of names) { keep(key(name), null); told(key(name), ""); }
    const last = error?.where?.split(", ").at(-1);
    if (names.includes(last)) error.field = key(last);
    return error;
  };
  return names.map((name) => {
    const words = wordsFor(table, name);
    return field({
      key: key(name), label: asked(words, at), help: helpOf(words), value: shownValue(now(name)),
      placeholder: example(words), choices: choicesOf(words), commit: () => send(name),
    });
  });
}

export function example(words) {
  const shown = words[{ cm: "cm", mm: "mm" }[store.state.unit] || "example"];
  return shown ? `such as ${shown}` : "";
}

// What is folded is made when it is opened: most of it never is.
export function fold(name, summary, make, open = false) {
  const made = h("details", { "data-focus": name });
  made.fill = () => { if (made.children.length === 1) made.append(...make().filter(Boolean)); };
  made.append(h("summary", { onclick: made.fill }, summary));
  if (open) made.fill();
  made.open = open;
  made.addEventListener("toggle", made.fill);
  return made;
}

// The panel is made anew from what the job file says; whoever types goes on typing.
export function madeAnew(holder, make) {
  const active = document.activeElement;
  const key = active && holder.contains(active) ? active.dataset.key || active.dataset.focus : null;
  const typed = key && "value" in active && active.dataset.saved !== undefined && active.value !== active.dataset.saved ? active.value : null;
  const range = key && active.selectionStart !== undefined ? [active.selectionStart, active.selectionEnd] : null;
  const named = () => [...holder.querySelectorAll("[data-key], [data-focus]")];
  const place = key ? named().indexOf(active) : -1;
  const count = named().length;
  // what is being typed elsewhere in it, and not saved yet
  const begun = new Map([...holder.querySelectorAll("[data-key]")].filter((one) => "value" in one && one.value !== one.dataset.saved && !drafts.has(one.dataset.key)).map((one) => [one.dataset.key, one.value]));
  const open = new Set([...holder.querySelectorAll("details[open]")].map((one) => one.dataset.focus));
  holder.replaceChildren(...make().filter((one) => one !== null && one !== undefined && one !== false));
  for (const one of holder.querySelectorAll("details")) if (open.has(one.dataset.focus)) { one.fill?.(); one.open = true; }
  for (const one of begun.size ? holder.querySelectorAll("[data-key]") : []) {
    if (begun.has(one.dataset.key) && !drafts.has(one.dataset.key)) one.value = begun.get(one.dataset.key);
  }
  if (!key) return;
  // what was renamed is at the same place under another name
  const there = holder.querySelector(`[data-key="${CSS.escape(key)}"], [data-focus="${CSS.escape(key)}"]`) || (named().length === count ? named()[place] : null);
  if (!there) return;
  if (typed !== null) there.value = typed;
  there.focus({ preventScroll: true });
  if (range && range[0] !== null && there.setSelectionRange && there.type === "text") there.setSelectionRange(...range);
}

// Fields that are saved when they are left.  What cannot be read stays as it was typed, with the reason under it, and is
// kept when the page is loaded again.
import { change, job, store } from "./api.js";
import { h } from "./dom.js";

const drafts = new Map(Object.entries(JSON.parse(sessionStorage.getItem(`drafts ${job}`) || "{}")));

function keep(key, draft) {
  if (draft) drafts.set(key, draft); else drafts.delete(key);
  sessionStorage.setItem(`drafts ${job}`, JSON.stringify(Object.fromEntries(drafts)));
}

export const draftOf = (key) => drafts.get(key);

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
  if (Array.isArray(value)) return value.join(", ");
  if (typeof value === "object") return "";
  return value === true ? "yes" : value === false ? "no" : String(value);
}

// One field with its label, its help and its message.  `commit` gives a promise of an error or of null.
export function field({ key, label, words, value, placeholder = "", choices, commit, hint = "", empty = "not given" }) {
  const id = `f ${key}`.replaceAll(/[^\w-]/g, "_");
  const draft = drafts.get(key);
  const shown = draft ? draft.text : value;
  const input = choices ? select(choices, shown, empty) : h("input", { type: "text", value: shown, placeholder, autocomplete: "off", spellcheck: false });
  const message = h("p", { className: "wrong", id: `${id}_wrong`, hidden: !draft?.why }, draft ? draft.why : "");
  const help = hint || (words ? words.means : "");
  Object.assign(input, { id });
  input.dataset.key = key;
  input.dataset.saved = value;
  input.setAttribute("aria-describedby", `${id}_help ${id}_wrong`);
  if (draft?.why) input.setAttribute("aria-invalid", "true");
  const save = () => leave(input, key, commit, message);
  input.addEventListener(choices ? "change" : "blur", save);
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && !choices) save();
    if (event.key === "Escape" && drafts.has(key)) { keep(key, null); input.value = input.dataset.saved; save(); message.hidden = true; input.removeAttribute("aria-invalid"); }
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

async function leave(input, key, commit, message) {
  const text = input.value;
  const draft = drafts.get(key);
  if (draft ? draft.text === text : text === input.dataset.saved) return;
  if (text === input.dataset.saved && draft) { keep(key, null); message.hidden = true; input.removeAttribute("aria-invalid"); return; }
  keep(key, { text, why: "" });
  const error = await commit(text);
  const now = drafts.get(key);
  if (now && now.text !== text) return; // typed anew meanwhile
  if (error === LATER) return;
  if (!error) { keep(key, null); told(key, ""); return; }
  const wrong = error.field || key; // of fields that are saved together, the one that cannot be read
  if (wrong !== key) told(wrong, why(error, wrong));
  else told(key, why(error, key));
  keep(wrong, { text: fieldOf(wrong)?.value ?? text, why: why(error, wrong) });
}

const fieldOf = (key) => document.querySelector(`[data-key="${CSS.escape(key)}"]`);

// The reason under a field, or none; a field that was saved shows what the file has, unless it is being typed in.
function told(key, words) {
  const there = fieldOf(key);
  const under = there && document.getElementById(`${there.id}_wrong`);
  if (!under) return;
  under.hidden = !words;
  under.textContent = words;
  if (words) there.setAttribute("aria-invalid", "true"); else there.removeAttribute("aria-invalid");
  if (!words && there !== document.activeElement) there.value = there.dataset.saved;
}

// Why a value is not saved; where it stands is said only where that is another field.
function why(error, key) {
  const name = key.split("/").at(-1);
  const here = error.where === undefined || error.where.split(", ").at(-1) === name;
  return (here && error.problem ? `${capital(error.problem)}${error.hint ? ` (${error.hint})` : ""}` : error.message).replaceAll('\\"', '"');
}

// A field of the job file, by its table's words.
export function jobField(table, at, { label, placeholder, choices, hint } = {}) {
  const name = at[at.length - 1];
  const words = wordsFor(table, name);
  const metric = store.state.unit !== "in";
  const example = metric ? words.metric : words.example;
  const listed = choices || (words.kind === "choice" ? words.choices : words.kind === "yes" ? ["yes", "no"] : null);
  return field({
    key: at.join("/"), label: label || words.ask || capital(words.means), words: words.ask || label ? words : null, hint,
    value: shownValue(valueAt(at)), choices: listed,
    placeholder: placeholder || (example ? `such as ${example}` : ""),
    commit: (text) => change({ do: "set", sets: [{ at, value: text }] }),
  });
}

export const capital = (text) => text.slice(0, 1).toUpperCase() + text.slice(1);

// What waits for other fields that have to be filled in with it.
const LATER = { later: true };

// Fields that make sense only together: all are sent as one table, whichever is left, once those that it needs are there.
export function together(at, table, names, { kept = {}, labels = {}, whole = {}, needs = () => [], held = (name) => (valueAt(at) || {})[name] } = {}) {
  const key = (name) => [...at, name].join("/");
  const now = (name) => {
    const input = document.querySelector(`[data-key="${CSS.escape(key(name))}"]`);
    return input ? input.value : shownValue(held(name));
  };
  const send = async () => {
    const value = { ...kept };
    for (const name of names) value[name] = now(name);
    if (needs(value).some((name) => !value[name])) return LATER;
    const error = await change({ do: "set", sets: [{ at, value: { ...whole, ...value } }] });
    if (!error) for (const name of names) keep(key(name), null);
    const last = error?.where?.split(", ").at(-1);
    if (names.includes(last)) error.field = key(last);
    return error;
  };
  return names.map((name) => {
    const words = wordsFor(table, name);
    return field({
      key: key(name), label: labels[name] || words.ask || capital(words.means), words: words.ask ? words : null,
      value: shownValue(held(name)),
      placeholder: example(words), choices: words.kind === "choice" ? words.choices : null, commit: send,
    });
  });
}

export function example(words) {
  const shown = store.state.unit !== "in" ? words.metric : words.example;
  return shown ? `such as ${shown}` : "";
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
  for (const one of holder.querySelectorAll("details")) if (open.has(one.dataset.focus)) one.open = true;
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

// What was typed and is not saved: it stays as it was typed, with the reason under it, and is kept when the page is loaded
// again.
import { job, settled, store } from "./api.js";
import { capital, wordsOf } from "./dom.js";

export const drafts = new Map(Object.entries(JSON.parse(sessionStorage.getItem(`drafts ${job}`) || "{}")));

export function keep(key, draft) {
  if (draft) drafts.set(key, draft); else drafts.delete(key);
  sessionStorage.setItem(`drafts ${job}`, JSON.stringify(Object.fromEntries(drafts)));
  settled();
}

store.unsaved = () => [...drafts.values()].some((one) => one.why);

// What is typed back as it was is no draft, and neither is a field that was saved with it and only for that found wrong.
export function takenBack(key) {
  const beside = key.slice(0, key.lastIndexOf("/") + 1);
  for (const [other, draft] of [...drafts]) {
    if (other !== key && !(other.startsWith(beside) && draft.text === fieldOf(other)?.dataset.saved)) continue;
    keep(other, null);
    told(other, "");
  }
}

// What is typed waits for another field, unless it was saved with that one, or taken back, before the answer came.
export function wait(key, why) {
  const draft = drafts.get(key);
  if (!draft) return;
  keep(key, { text: draft.text, why, waits: true, again: true });
  told(key, why, true);
}

export const fieldOf = (key) => document.querySelector(`[data-key="${CSS.escape(key)}"]`);

// The reason under a field, or none; a field that was saved shows what the file has, unless it is being typed in.
export function told(key, words, waits = false) {
  const there = fieldOf(key);
  const under = there && document.getElementById(`${there.id}_wrong`);
  if (!under) return;
  under.hidden = !words;
  under.textContent = words;
  under.className = waits ? "help" : "wrong";
  if (words && !waits) there.setAttribute("aria-invalid", "true"); else there.removeAttribute("aria-invalid");
  if (!words && there !== document.activeElement) there.value = there.dataset.saved;
}

// Why a value is not saved; where it stands is said only where that is another field.
export function why(error, key) {
  const way = key.replace(/^measure\/(.*)\/(\w+)$/, "frame/$1/hanger/$2").split("/");
  const parts = (error.where || "").split(", ").filter(Boolean);
  const here = parts.lastIndexOf(way.at(-1)) + 1;
  const called = [way.slice(0, 2).join(" "), `(${way[1]})`]; // "frame B", "frame 2 (B)"
  const known = here || parts.every((part) => way.includes(part) || called.some((one) => part.endsWith(one)));
  const hint = / = /.test(error.hint) ? "" : error.hint; // how the file would have it
  const words = wordsOf({ ...error, hint, where: parts.slice(here || parts.length).join(", ") });
  return known && error.problem ? capital(words) : error.message;
}

// What the page knows of its job, and every request to the desk.
import { find, notice, wordsOf } from "./dom.js";

export const job = new URLSearchParams(location.search).get("job") || "";
export const store = { state: null, fields: null, found: null, selected: null, step: "Wall", sheets: null, unsaved: () => false };
const listeners = [];

export function whenChanged(listener) { listeners.push(listener); }
export function changed(what) { for (const listener of listeners) listener(what); }

const at = (path, more = {}) => `${path}?${new URLSearchParams({ job, ...more })}`;

export async function ask(path, more) {
  return answered(await fetch(at(path, more)));
}

async function post(path, data, more) {
  const body = data instanceof Blob ? data : JSON.stringify(data);
  return answered(await fetch(at(path, more), { method: "POST", body }));
}

// What is made or told is of the job with all changes made before it.
export async function bring(path, data, more) {
  await line;
  return post(path, data, more);
}

export const address = at;

async function answered(response) {
  if (response.ok) return response.json();
  const text = await response.text();
  let error;
  try { error = JSON.parse(text); } catch { error = { problem: text.trim() || `the desk answered ${response.status}` }; }
  throw Object.assign(new Error(wordsOf(error)), error);
}

// Changes go one after the other, in the order in which they were made.
let line = Promise.resolve();
let waiting = 0; // changes that the desk has not answered yet
export function change(data) { return queued(() => post("/change", data)); }
export function step(path) { return queued(() => post(path, {})); }
export function upload(frame, file) { return queued(() => post("/picture", file, { frame, name: file.name || "picture" })); }

function queued(request) {
  waiting += 1;
  const mine = line.then(async () => {
    say(SAVING);
    try {
      take(await request().finally(() => { waiting -= 1; }));
      return null;
    } catch (error) {
      if (lost(error)) error.problem = "the desk does not answer; what you typed is kept on this page";
      say(lost(error) ? "Not saved: the desk does not answer" : "Not saved");
      if (error.gone) await load();
      return error;
    }
  });
  line = mine;
  return mine;
}

const lost = (error) => error instanceof TypeError;
function say(text) { find("saved").textContent = text; }
const SAVING = "Saving…";
const rest = () => (waiting ? SAVING : store.state.problem ? "Cannot be read" : store.unsaved() ? "Not all saved" : "All saved");

// Once a field holds no draft any more, what is said of the whole may be otherwise.
export function settled() { if (["All saved", "Not all saved", "Not saved"].includes(find("saved").textContent)) say(rest()); }

export function take(state) {
  if (store.state && state.number < store.state.number) { say(rest()); return; }
  store.state = state;
  say(rest());
  changed("state");
  look();
}

export async function load() {
  try {
    if (!store.fields) store.fields = await ask("/fields");
    take(await ask("/state"));
  } catch (error) {
    say("Not loaded");
    notice(error.message);
  }
}

// Findings follow the drawing, and what cures them follows the findings.
const REST = 300; // ms without a change: our own
let looking = 0;
async function look() {
  const mine = ++looking;
  try {
    for (const more of [{}, { whole: 1 }]) {
      if (more.whole) await new Promise((done) => setTimeout(done, REST)); // cures are worked out once the hand rests
      if (mine !== looking) return;
      const found = await ask("/found", more);
      if (mine !== looking) return;
      store.found = found;
      changed("found");
    }
  } catch { /* told at the next change */ }
}

// The desk tells of edits from elsewhere, and how far a search is.
export function listen(told) {
  const source = new EventSource(at("/events"));
  source.onmessage = (event) => {
    const news = JSON.parse(event.data);
    if (news.gone) notice(news.gone);
    else if (store.state && news.number !== store.state.number) load();
    told(news);
  };
  source.onerror = () => say("The desk does not answer. Is it still running?");
  source.onopen = () => { if (store.state) say(rest()); };
}

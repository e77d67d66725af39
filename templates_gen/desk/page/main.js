// The page of one wall: puts the drawing, the steps and the findings together.
import { ask, bring, job, listen, load, settled, step, store, whenChanged } from "./api.js";
import { find, h, notice } from "./dom.js";
import { saveKeys, startDragging } from "./dragging.js";
import { madeAnew } from "./fields.js";
import { showFindings } from "./findings.js";
import { afterPanel } from "./step-after.js";
import { arrangePanel, optionsNews } from "./step-arrange.js";
import { framesPanel } from "./step-frames.js";
import { measurePanel } from "./step-measure.js";
import { paperPanel } from "./step-paper.js";
import { wallPanel } from "./step-wall.js";
import { drawWall, mark, shown, zonesAre } from "./wall.js";

const STEPS = { Wall: wallPanel, Frames: framesPanel, Arrange: arrangePanel, Measure: measurePanel, Paper: paperPanel, "After hanging": afterPanel };

function showSteps() {
  madeAnew(find("steps"), () => Object.keys(STEPS).map((name) => h("button", {
    type: "button", "data-focus": name, "aria-current": name === store.step ? "step" : null,
    onclick: () => goTo(name),
  }, name)));
}

function goTo(name) {
  if (name !== store.step) history.pushState(name, "");
  show(name);
}

function show(name) {
  store.step = name;
  settled(); // what was not saved there was said there
  sessionStorage.setItem(`step ${job}`, name);
  showSteps();
  showPanel();
}

function showPanel() {
  if (!store.state?.raw) return;
  madeAnew(find("panel"), () => STEPS[store.step](goTo));
}

function showWall() {
  const active = document.activeElement?.closest?.("#drawing .take")?.dataset.key;
  drawWall(active);
  showTools();
}

function showTools() {
  const { state } = store;
  let tools = find("tools");
  if (!tools) {
    tools = h("div", { id: "tools", className: "tools" });
    find("wall").append(tools);
  }
  const tick = (name, words, then) => h("label", { className: "tick" }, h("input", { type: "checkbox", checked: shown[name], "data-focus": `show ${name}`, onchange: async (event) => { shown[name] = event.target.checked; if (then) await then(); showWall(); } }), ` ${words}`);
  madeAnew(tools, () => [
    h("p", { className: "said" }, state.said ? state.said.join(" ") : ""),
    h("div", { className: "row" },
      tick("nails", "nails"),
      tick("zones", "where cables may run", zones),
      store.sheets ? tick("sheets", "sheets of paper") : null),
    state.finding !== null ? searching(state.finding) : null,
    state.noPlaces ? h("p", { className: "wrong" }, `${state.noPlaces.problem}. ${state.noPlaces.hint || ""}`) : null,
  ].filter(Boolean));
}

async function zones() { zonesAre(await ask("/zones")); }

function searching(done) {
  return h("div", { className: "row", role: "status" }, "Looking for places… ",
    h("progress", { id: "finding", max: 1, value: done, "aria-label": "How far the search is" }),
    h("button", { type: "button", onclick: () => bring("/stop", {}) }, "Stop, and take the best so far"));
}

function showAll() {
  const { state } = store;
  find("undo").disabled = !state.undo;
  find("redo").disabled = !state.redo;
  if (state.gone) notice(`${state.job} ${state.problem.problem}. What you see is how it was before.`, { words: "Write it again as it was", act: () => step("/again") });
  else notice(state.problem ? `${state.job} cannot be read: ${state.problem.where} ${state.problem.problem}. ${state.problem.hint} What you see is how it was before.` : "");
  if (!state.raw) return;
  find("title").textContent = state.title;
  document.title = `${state.title}: the desk`;
  follow();
  showWall();
  showPanel();
}

// What is chosen stays chosen under another name; what is gone is chosen no more.
let chosenAt = -1;
function follow() {
  const { frames, features } = store.state;
  const keys = store.selected?.startsWith("frame ") ? frames.map((one) => `frame ${one.id}`) : features.map((one) => `feature ${one.key}`);
  const at = keys.indexOf(store.selected);
  if (at < 0 && store.selected) store.selected = keys.length === chosenOf ? keys[chosenAt] || null : null;
  chosenAt = keys.indexOf(store.selected);
  chosenOf = keys.length;
}
let chosenOf = 0;

whenChanged((what) => {
  if (what === "state") showAll();
  if (what === "found" || what === "state") showFindings();
  if (what === "selected") { follow(); mark(); if (store.selected) goTo(store.selected.startsWith("frame ") ? frameStep() : "Wall"); }
  if (what === "opened") find("panel").querySelector(".chosen-part input")?.focus();
  if (what === "sheets") showWall();
  if (what === "panel") showPanel();
  if (what === "step") goTo(store.step);
});

const frameStep = () => (["Measure", "After hanging"].includes(store.step) ? store.step : "Frames");

// Escape closes what was opened last: what is said above, else the fold that one is in.
function escape(target) {
  const fold = target.closest?.("details[open]");
  if (!find("notice").hidden) notice("");
  else if (fold) { fold.open = false; fold.querySelector("summary").focus(); }
}

function keyboard(event) {
  if (event.key === "Escape") escape(event.target);
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const typing = event.target.matches?.("input[type=text], textarea") && event.target.value !== event.target.dataset.saved;
  if (typing || !["z", "y"].includes(key)) return; // the browser's own undo, while something is being typed
  event.preventDefault();
  saveKeys();
  step(key === "y" || event.shiftKey ? "/redo" : "/undo");
}

async function template(event) {
  const file = event.dataTransfer?.files?.[0];
  if (!file) return;
  event.preventDefault();
  if (!file.name.toLowerCase().endsWith(".pdf")) { notice("Drop a picture on a frame, a photograph on the wall, or a template's PDF anywhere."); return; }
  try {
    const made = await bring("/from-template", file, { name: file.name });
    location.href = `/wall?${new URLSearchParams({ job: made.job })}`;
  } catch (error) { notice(error.message); }
}

store.step = sessionStorage.getItem(`step ${job}`) || "Wall";
if (!(store.step in STEPS)) store.step = "Wall";
history.replaceState(store.step, "");
window.addEventListener("popstate", (event) => { if (event.state in STEPS) show(event.state); }); // Back goes a step back
find("undo").addEventListener("click", () => { saveKeys(); step("/undo"); });
find("redo").addEventListener("click", () => step("/redo"));
document.addEventListener("keydown", keyboard);
document.addEventListener("dragover", (event) => event.preventDefault());
document.addEventListener("drop", template);
startDragging();
showSteps();
await load();
listen((news) => {
  if (find("finding") && news.finding !== null) find("finding").value = news.finding;
  optionsNews(news.options);
});

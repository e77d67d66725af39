// The wall and what is on it.
import { bring, change, store } from "./api.js";
import { capital, h, notice, sayWrong } from "./dom.js";
import { allFields, choicesOf, fold, jobField, together, valueAt, wordsFor } from "./fields.js";
import { choose } from "./dragging.js";
import { wallBox } from "./photographs.js";

export function wallPanel(goTo) {
  return [
    h("h2", {}, "The wall and what is on it"),
    h("div", { className: "pair" }, jobField("wall", ["wall", "width"]), jobField("wall", ["wall", "height"])),
    featureList(),
    chosenFeature(),
    studs(), stairs(),
    fold("more wall", "More about the wall", () => allFields("wall", ["wall"], ["width", "height"])),
    fold("more job", "More about the job", () => [...allFields("job", ["job"], ["confirmed"]), confirmed()]),
    wallBox(), anotherWall(),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Frames") }, "Next: the frames")),
  ];
}

function featureList() {
  const add = async (kind) => {
    const error = await change({ do: "add feature", kind });
    if (error) { notice(error.message); return; }
    choose(`feature ${store.state.features.at(-1).key}`);
    const name = document.querySelector('.chosen-part [data-key$="/name"]');
    name.focus();
    name.select();
  };
  return h("div", { className: "list" },
    h("h3", {}, wordsFor("feature", "kind").ask),
    h("ul", { className: "chips" }, ...store.state.features.map((one) => h("li", {}, h("button", {
      type: "button", "data-focus": `chip ${one.key}`, "aria-pressed": String(store.selected === `feature ${one.key}`), onclick: () => choose(`feature ${one.key}`),
    }, one.name)))),
    h("div", { className: "row tight", role: "group", "aria-label": "Add to the wall" }, h("span", {}, "Add"), ...choicesOf(wordsFor("feature", "kind")).map(({ value, label }) => h("button", { type: "button", "data-focus": `add ${value}`, onclick: () => add(value) }, label))));
}

function chosenFeature() {
  const one = store.state.features.find((feature) => `feature ${feature.key}` === store.selected);
  if (!one) return h("p", { className: "help" }, "Choose something on the wall to change it. Drag it, or move it by the arrow keys.");
  const at = ["wall", "feature", one.key];
  const names = store.fields.tables.feature.map((words) => words.name);
  const fields = names.filter((name) => name !== "use" || one.kind === "furniture");
  const remove = async () => {
    const error = await change({ do: "remove", at });
    if (error) notice(error.message);
  };
  return h("fieldset", { className: "chosen-part" }, h("legend", {}, capital(one.called)),
    h("div", { className: "pair" }, ...fields.map((name) => jobField("feature", [...at, name], name === "kind" ? { empty: null } : {}))),
    h("div", { className: "row" }, h("button", { type: "button", "data-focus": "remove feature", onclick: remove }, `Take ${one.name} off the wall`)));
}

function studs() {
  return fold("studs", "Studs behind the board", () => [h("div", { className: "pair" }, ...together(["wall", "studs"], "studs"))]);
}

// A stair is by one step, or by its pitch.
function stairs() {
  const needs = (value) => (Object.values(value).some(Boolean) ? ["nosing", "up", ...(value.pitch ? [] : ["run", "rise"])] : []);
  return fold("stairs", "A stair along the wall", () => [
    h("p", { className: "help" }, "Where its lowest nosing is, the way it climbs, and either one step or its pitch. Frames then climb with it: step Arrange, up a stair."),
    h("div", { className: "pair" }, ...together(["wall", "stairs"], "stairs", { names: ["nosing", "up", "run", "rise", "pitch", "steps", "clear"], needs })),
  ]);
}

// The same frames on another wall: a job of its own, and this one stays as it is.
function anotherWall() {
  const input = (name, words) => h("label", {}, words, h("input", { type: "text", id: `other_${name}`, "data-key": `other wall ${name}`, "data-saved": "", autocomplete: "off" }));
  const names = ["title", "width", "height"];
  const begin = async (event) => {
    event.preventDefault();
    try {
      const made = await bring("/another-wall", Object.fromEntries(names.map((name) => [name, document.getElementById(`other_${name}`).value])));
      location.href = `/wall?${new URLSearchParams({ job: made.job })}`;
    } catch (error) { sayWrong(event.target, Object.fromEntries(names.map((name) => [name, `other_${name}`])), error); }
  };
  return fold("other wall", "The same frames on another wall", () => [
    h("p", { className: "help" }, "This wall stays as it is. The other one is empty at first: add what is on it, then look at Arrange."),
    h("form", { id: "other", onsubmit: begin }, h("div", { className: "quick" }, input("title", wordsFor("job", "title").ask), input("width", wordsFor("wall", "width").ask), input("height", wordsFor("wall", "height").ask)),
      h("div", { className: "row" }, h("button", { type: "submit", "data-focus": "begin other wall" }, "Begin the other wall")))]);
}

// What was said to be right though it looks odd; taken back, it is asked about again.
function confirmed() {
  const words = wordsFor("job", "confirmed");
  const all = valueAt(["job", "confirmed"]) || [];
  const again = (one) => change({ do: "set", sets: [{ at: ["job", "confirmed"], value: all.length > 1 ? all.filter((other) => other !== one) : null }] });
  return h("div", { className: "list", "data-key": "job/confirmed" }, h("p", {}, `${capital(words.means)}: ${all.length ? "" : "none"}`),
    h("ul", {}, ...all.map((one) => h("li", {}, `${one} `, h("button", { type: "button", "data-focus": `again ${one}`, onclick: () => again(one) }, "Ask about it again")))));
}

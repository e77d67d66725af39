// The wall and what is on it.
import { change, store } from "./api.js";
import { h, notice } from "./dom.js";
import { capital, jobField, together, wordsFor } from "./fields.js";
import { choose } from "./dragging.js";

export function wallPanel(goTo) {
  return [
    h("h2", {}, "The wall and what is on it"),
    h("div", { className: "pair" }, jobField("wall", ["wall", "width"]), jobField("wall", ["wall", "height"])),
    featureList(),
    chosenFeature(),
    studs(),
    h("details", { "data-focus": "more wall" }, h("summary", {}, "More about the wall and the job"),
      jobField("job", ["job", "title"]), jobField("job", ["job", "client"]),
      jobField("wall", ["wall", "name"], { label: "What is the wall called?" }),
      jobField("wall", ["wall", "build"]), jobField("wall", ["wall", "board"], { label: "How thick is its board or plaster?" }),
      jobField("wall", ["wall", "wiring"], { label: "Whose rule were its cables laid by?" }),
      jobField("wall", ["wall", "clear"], { label: "How far do frames stay away from its edges?" }),
      jobField("wall", ["wall", "public"]), jobField("wall", ["wall", "earthquake"]), jobField("wall", ["wall", "built"]),
      jobField("job", ["job", "unit"], { hint: "Numbers without a unit of their own then mean another length." })),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Frames") }, "Next: the frames")),
  ];
}

function featureList() {
  const kinds = wordsFor("feature", "kind").choices;
  const select = h("select", { id: "new_feature", "data-focus": "new feature", "aria-label": "What to add" }, ...kinds.map((kind) => h("option", { value: kind }, kind)));
  select.value = "furniture";
  const add = async () => {
    const error = await change({ do: "add feature", kind: select.value });
    if (error) notice(error.message);
    else choose(`feature ${store.state.features.at(-1).key}`);
  };
  return h("div", { className: "list" },
    h("h3", {}, "On the wall, or in front of it"),
    h("ul", { className: "chips" }, ...store.state.features.map((one) => h("li", {}, h("button", {
      type: "button", "data-focus": `chip ${one.key}`, "aria-pressed": String(store.selected === `feature ${one.key}`), onclick: () => choose(`feature ${one.key}`),
    }, one.name)))),
    h("div", { className: "row" }, select, h("button", { type: "button", "data-focus": "add feature", onclick: add }, "Add to the wall")));
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
    h("div", { className: "pair" }, ...fields.map((name) => jobField("feature", [...at, name], name === "kind" ? { label: "What is it?" } : {}))),
    h("div", { className: "row" }, h("button", { type: "button", "data-focus": "remove feature", onclick: remove }, `Take ${one.name} off the wall`)));
}

function studs() {
  return h("details", { "data-focus": "studs" }, h("summary", {}, "Studs behind the board"),
    h("div", { className: "pair" }, ...together(["wall", "studs"], "studs", ["first", "second", "spacing", "width"])));
}

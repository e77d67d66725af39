// After hanging: what was measured goes in, and what to move comes out.
import { bring, changed, job, store } from "./api.js";
import { h } from "./dom.js";
import { makeButton } from "./step-paper.js";

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
    ...store.state.frames.map(row),
    wrong ? h("p", { className: "wrong", role: "alert" }, wrong) : null,
    h("div", { className: "row" }, h("button", { type: "button", className: "main", "data-focus": "correct", onclick: work }, "What has to move?"), makeButton("form", "A form on paper")),
    told ? h("pre", { className: "told", tabIndex: 0, "aria-label": "What to move" }, told.text) : null,
  ];
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

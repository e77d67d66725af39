// How the frames hang to each other and on the wall; other arrangements side by side.
import { ask, bring, change, changed, store } from "./api.js";
import { h, notice } from "./dom.js";
import { field, jobField, shownValue, valueAt } from "./fields.js";
import { smallWall } from "./wall.js";

const KINDS = {
  row: "one row", rows: "rows", column: "one column", columns: "columns", grid: "a grid", around: "around something",
  stairs: "up a stair", salon: "places found for you", placed: "each placed by hand",
};

export function arrangePanel(goTo) {
  const { state } = store;
  const pick = async (kind) => {
    const error = await change({ do: "arrange", kind });
    if (error) { notice(error.message); changed("panel"); }
  };
  return [
    h("h2", {}, "How they hang"),
    h("div", { className: "cards words", role: "radiogroup", "aria-label": "Arrangement" }, ...Object.entries(KINDS).map(([kind, words]) => h("label", { className: "card" },
      h("input", { type: "radio", name: "arrangement", value: kind, checked: state.arrangement === kind, "data-focus": `kind ${kind}`, onchange: () => pick(kind) }), words))),
    lists(state),
    h("div", { className: "pair" }, jobField("group", ["group", "gap"]), centreField(state), heightFields(), alignField(state)),
    h("p", { className: "help" }, "Drag a frame on the wall, or move it by the arrow keys: all are then placed by hand. Alt while you drag lets go of edges and gaps."),
    optionsPart(state),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Measure") }, "Next: measure the drops")),
  ];
}

// Rows and columns as people write them: a line for each.
function lists(state) {
  const kind = state.arrangement;
  if (kind === "rows" || kind === "columns") return listField(kind, kind === "rows" ? "Rows from the top, a line each; frames from the left" : "Columns from the left, a line each; frames from the top");
  if (kind === "grid") return valueAt(["group", "rows"]) ? listField("rows", "Rows from the top, a line each") : h("div", { className: "pair" }, jobField("group", ["group", "across"]), orderField());
  if (["row", "column", "stairs"].includes(kind)) return orderField();
  if (kind === "around") return h("div", { className: "pair" }, jobField("group", ["group", "around"], { label: "Around what?", choices: state.features.map((one) => one.name) }), ...["left", "above", "right", "below", "gap_around"].map((name) => jobField("group", ["group", name])));
  return null;
}

function orderField() {
  return field({
    key: "group/order", label: "In which order?", value: shownValue(valueAt(["group", "order"])), placeholder: store.state.frames.map((one) => one.id).join(", "),
    hint: "Short names with a comma between; empty for the order in which they were added", commit: (text) => change({ do: "set", sets: [{ at: ["group", "order"], value: text }] }),
  });
}

function listField(name, label) {
  const value = (valueAt(["group", name]) || []).map((row) => row.join(", ")).join("\n");
  const area = h("textarea", { id: `list_${name}`, rows: Math.max(2, value.split("\n").length), value, "data-key": `group/${name}` });
  area.dataset.saved = value;
  const wrong = h("p", { className: "wrong", hidden: true });
  area.addEventListener("blur", async () => {
    if (area.value === area.dataset.saved) return;
    const rows = area.value.split("\n").map((line) => line.split(",").map((one) => one.trim()).filter(Boolean)).filter((row) => row.length);
    const error = await change({ do: "set", sets: [{ at: ["group", name], value: rows }] });
    const there = document.getElementById(area.id);
    if (error && there) { there.value = area.value; there.setAttribute("aria-invalid", "true"); there.nextElementSibling.hidden = false; there.nextElementSibling.textContent = error.message; }
  });
  return h("div", { className: "field" }, h("label", { htmlFor: area.id }, label), area, wrong, h("p", { className: "help" }, "Short names with a comma between"));
}

function centreField(state) {
  if (state.arrangement === "around") return null;
  const names = ["wall", ...state.features.map((one) => one.name)];
  const now = shownValue(valueAt(["group", "centre_on"])) || "wall";
  return field({
    key: "group/centre_on", label: "Centred on what?", value: now, choices: [...names.map((name) => ({ value: name, label: name === "wall" ? "the wall" : name }))], empty: null,
    commit: (text) => change({ do: "set", sets: [{ at: ["group", "centre_on"], value: text }] }),
  });
}

const HEIGHTS = { centre: "Middle above floor", top: "Top above floor", bottom: "Bottom above floor", above_nosings: "Above the nosings" };

function heightFields() {
  const { state } = store;
  if (state.arrangement === "around") return [];
  const held = valueAt(["group", "height"]) || {};
  const way = held.above !== undefined ? `above ${held.above}` : Object.keys(HEIGHTS).find((name) => held[name] !== undefined) || "";
  const ways = [...Object.entries(HEIGHTS).filter(([name]) => (name === "above_nosings") === (state.arrangement === "stairs")).map(([value, label]) => ({ value, label })),
    ...state.features.map((one) => ({ value: `above ${one.name}`, label: `Above the ${one.name}` }))];
  const send = (chosen, amount) => {
    const value = !chosen ? null : chosen.startsWith("above ") ? { above: chosen.slice(6), by: amount } : { [chosen]: amount };
    return change({ do: "set", sets: [{ at: ["group", "height"], value }] });
  };
  const amount = shownValue(held.above !== undefined ? held.by : held[way]);
  const usual = { centre: inUnit(57, 1450), top: inUnit(75, 1900), bottom: inUnit(45, 1150), above_nosings: inUnit(57, 1450) };
  const fields = [field({
    key: "group/height/way", label: "How high do they hang?", value: way, choices: ways, empty: `Middle at ${inUnit("57 in", "1448 mm")}, as usual`, hint: " ",
    commit: (text) => send(text, amount || usual[text] || inUnit("8", "200 mm")),
  })];
  if (way) fields.push(field({ key: "group/height/amount", label: way.startsWith("above ") ? "How far above it is the lowest frame?" : "How high?", value: amount, hint: " ", commit: (text) => send(way, text) }));
  return fields;
}

const inUnit = (inches, metric) => (store.state.unit === "in" ? String(inches) : typeof metric === "number" ? `${metric} mm` : metric);

function alignField(state) {
  const ways = { row: ["top", "centre", "bottom"], rows: ["top", "centre", "bottom"], grid: ["top", "centre", "bottom"], stairs: ["top", "centre", "bottom"], column: ["left", "centre", "right"], columns: ["left", "centre", "right"] }[state.arrangement];
  if (!ways) return null;
  return field({ key: "group/align", label: state.arrangement.startsWith("column") ? "What lines up in a column?" : "What lines up in a row?", value: shownValue(valueAt(["group", "align"])) || "centre", choices: ways, empty: null, hint: " ", commit: (text) => change({ do: "set", sets: [{ at: ["group", "align"], value: text }] }) });
}

// Other arrangements: looked for while the page goes on, and shown side by side.
let options = { done: null, options: [], problem: null };
const sizes = () => JSON.stringify(store.state.frames.map((one) => [one.id, one.known.width, one.known.height]));
let foundFor = "";

function optionsPart(state) {
  const begin = async () => {
    options = { done: 0, options: [], problem: null };
    foundFor = sizes();
    await bring("/options", {});
    changed("panel");
  };
  if (options.done === null && foundFor !== sizes()) options = { done: null, options: [], problem: null }; // of other frames
  const parts = [h("h3", {}, "Other arrangements of the same frames")];
  if (options.done !== null) parts.push(h("div", { className: "row", role: "status" }, "Looking… ", h("progress", { id: "options_done", max: 1, value: options.done, "aria-label": "How far the search is" }), h("button", { type: "button", "data-focus": "options", onclick: () => bring("/stop", {}) }, "Stop, and show the best so far")));
  else parts.push(h("div", { className: "row" }, h("button", { type: "button", "data-focus": "options", disabled: state.frames.length < 2, onclick: begin }, options.options.length ? "Look again" : "Show some side by side")));
  if (options.problem) parts.push(h("p", { className: "wrong" }, `${options.problem.problem}. ${options.problem.hint}`));
  if (options.options.length) parts.push(h("ul", { className: "options" }, ...options.options.map(optionCard)));
  return h("div", { className: "list" }, ...parts);
}

function optionCard(one) {
  const pick = async () => {
    const error = await change({ do: "place", middles: one.middles });
    if (error) notice(error.message);
  };
  return h("li", {}, smallWall(one.screen, `Arrangement ${one.number}: ${one.kind}`), h("p", {}, h("strong", {}, `${one.number}. ${one.kind}`), `, ${one.size}, ${one.sheets}`),
    one.found.length ? h("details", {}, h("summary", {}, "What there is to settle"), h("ul", {}, ...one.found.map((text) => h("li", {}, text)))) : null,
    h("button", { type: "button", "data-focus": `option ${one.number}`, onclick: pick }, "Hang them like this"));
}

export async function optionsNews(done) {
  if (options.done === null) return;
  options.done = done;
  const bar = document.getElementById("options_done");
  if (bar && done !== null) bar.value = done;
  if (done !== null) return;
  options = await ask("/options");
  changed("panel");
}

// How the frames hang to each other and on the wall; other arrangements side by side.
import { ask, bring, change, changed, store } from "./api.js";
import { capital, h, notice } from "./dom.js";
import { asked, choicesOf, field, fold, jobField, shownValue, valueAt, wordsFor } from "./fields.js";
import { smallWall } from "./wall.js";

export function arrangePanel(goTo) {
  const { state } = store;
  const pick = async (kind) => {
    const error = await change({ do: "arrange", kind });
    if (error) { notice(error.message); changed("panel"); }
  };
  return [
    h("h2", {}, asked(wordsFor("group", "arrangement"))),
    h("div", { className: "cards words", role: "radiogroup", "aria-label": "Arrangement" }, ...choicesOf(wordsFor("group", "arrangement")).map(({ value, label }) => h("label", { className: "card" },
      h("input", { type: "radio", name: "arrangement", value, checked: state.arrangement === value, "data-focus": `kind ${value}`, onchange: () => pick(value) }), label))),
    lists(state),
    h("div", { className: "pair" }, jobField("group", ["group", "gap"]), ...centreFields(state).slice(0, -1), ...heightFields(state).slice(0, 2), oneOf("align", state.arrangement !== "around" && state.arrangement !== "salon" && state.arrangement !== "placed")),
    fold("more group", "More about the arrangement", () => [h("div", { className: "pair" },
      jobField("group", ["group", "gap_across"]), jobField("group", ["group", "gap_down"]), oneOf("set", true),
      oneOf("align", state.arrangement === "around"), ...centreFields(state).slice(-1), ...heightFields(state).slice(2), ...(state.arrangement === "salon" ? WISHES.map((name) => jobField("group", ["group", name])) : []))]),
    h("p", { className: "help" }, "Drag a frame on the wall, or move it by the arrow keys: all are then placed by hand. Alt while you drag lets go of edges and gaps."),
    optionsPart(state),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Measure") }, "Next: measure the drops")),
  ];
}

const WISHES = ["largest", "together", "same_height", "heavy_low", "seed"];

// Which frame hangs where, as far as an arrangement is told that.
function lists({ arrangement, features, raw }) {
  const otherwise = arrangement === "grid" ? (raw.group?.rows ? ["across", "order"] : ["rows"]) : []; // a grid is told in one of two ways
  const names = store.fields.arrangements[arrangement].takes.filter((name) => !["place", ...otherwise].includes(name));
  const lines = { rows: "A line for each row, its frames with a comma between", columns: "A line for each column, its frames with a comma between" };
  const inOrder = store.state.frames.map((one) => one.id).join(", ");
  const fields = names.map((name) => jobField("group", ["group", name], {
    help: lines[name], placeholder: name === "order" ? inOrder : undefined, choices: name === "around" ? features.map((one) => one.name) : undefined, empty: null,
  }));
  return names.length > 1 ? h("div", { className: "pair" }, ...fields) : fields[0];
}

// What lines up, and how rows lie to each other: of the words that this arrangement takes.
function oneOf(name, when) {
  const choices = store.fields.arrangements[store.state.arrangement][name];
  if (!when || choices.length < 2) return null;
  return jobField("group", ["group", name], { choices, empty: null, help: "", value: shownValue(valueAt(["group", name])) || "centre" });
}

// The middle goes on the wall's, on that of a feature, or at a distance; it may be that of one frame.
function centreFields(state) {
  if (state.arrangement === "around") return [];
  const held = valueAt(["group", "centre_on"]) ?? "wall";
  const { frame = "", over = "wall" } = typeof held === "object" ? held : state.frames.some((one) => one.id === held) && held !== "wall" ? { frame: held } : { over: held };
  const send = (one, on) => change({ do: "set", sets: [{ at: ["group", "centre_on"], value: one ? { frame: one, over: on } : on }] });
  const names = ["wall", ...state.features.map((one) => one.name)];
  const away = names.includes(over) ? "" : shownValue(over);
  const fields = [field({
    key: "group/centre_on/over", label: asked(wordsFor("group", "centre_on")), value: away ? AWAY : shownValue(over), empty: null,
    choices: [...names.map((value) => ({ value, label: value === "wall" ? "the wall" : value })), { value: AWAY, label: "a distance from the wall's left end" }],
    commit: (text) => send(frame, text === AWAY ? state.now.centre_on : text),
  })];
  if (away) fields.push(field({ key: "group/centre_on/away", label: "How far is the middle from the wall's left end?", value: away, commit: (text) => send(frame, text || "wall") }));
  fields.push(field({
    key: "group/centre_on/frame", label: capital(wordsFor("centre_on", "frame").means), value: frame, choices: state.frames.map((one) => one.id), empty: wordsFor("centre_on", "frame").usual,
    commit: (text) => send(text, over),
  }));
  return fields;
}

const AWAY = " away";

// How high, in one of the ways of the table; another way begins where the group hangs now.
function heightFields(state) {
  if (state.arrangement === "around") return [];
  const held = valueAt(["group", "height"]) || {};
  const ways = ["centre", "top", "bottom", "above_nosings"].filter((name) => (name === "above_nosings") === (state.arrangement === "stairs"));
  const way = held.above !== undefined ? `above ${held.above}` : ways.find((name) => held[name] !== undefined) || "";
  const choices = [...ways.map((value) => ({ value, label: capital(wordsFor("height", value).means) })), ...(state.arrangement === "stairs" ? [] : state.features.map((one) => ({ value: `above ${one.name}`, label: `Above the ${one.name}` })))];
  const send = (chosen, amount, of) => {
    const feature = chosen.startsWith("above ") ? chosen.slice(6) : null;
    const value = !chosen ? null : { ...(feature === null ? { [chosen]: amount } : { above: feature, by: amount }), ...(of ? { of } : {}) };
    return change({ do: "set", sets: [{ at: ["group", "height"], value }] });
  };
  const name = held.above !== undefined ? "by" : way;
  const fields = [field({
    key: "group/height/way", label: asked(wordsFor("group", "height")), value: way, choices, empty: `As usual: ${store.fields.usualCentre[state.unit]} to the middle`,
    commit: (text) => send(text, state.now[text] || "", held.of),
  })];
  if (!way) return fields;
  fields.push(field({ key: `group/height/${name}`, label: asked(wordsFor("height", name)), value: shownValue(held[name]), commit: (text) => send(way, text, held.of) }));
  if (way !== "above_nosings") {
    const words = wordsFor("height", "of");
    fields.push(field({ key: "group/height/of", label: capital(words.means), value: shownValue(held.of), choices: state.frames.map((one) => one.id), empty: words.usual, commit: (text) => send(way, shownValue(held[name]), text) }));
  }
  return fields;
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

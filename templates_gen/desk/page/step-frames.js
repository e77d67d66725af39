// The frames: one by one or pasted, each with its hanger, its fixing, its picture and what it is made of.
import { address, change, changed, store, upload } from "./api.js";
import { h, notice, sayWrong } from "./dom.js";
import { choose } from "./dragging.js";
import { allFields, asked, example, fieldAt, fold, jobField, namesOf, shownValue, together, valueAt, wordsFor } from "./fields.js";

export function framesPanel(goTo) {
  const chosen = store.state.frames.find((one) => `frame ${one.id}` === store.selected);
  return [
    h("h2", {}, "The frames"),
    h("ul", { className: "chips" }, ...store.state.frames.map((one) => h("li", {}, h("button", {
      type: "button", "data-focus": `chip ${one.id}`, "aria-pressed": String(store.selected === `frame ${one.id}`),
      title: one.title, onclick: () => choose(`frame ${one.id}`),
    }, one.id)))),
    chosen ? frameForm(chosen) : h("p", { className: "help" }, "Choose a frame, here or on the wall, to change it."),
    adding(), pasting(), usualFixing(), types(),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Arrange") }, "Next: arrange them")),
  ];
}

const NEW = ["id", "title", "width", "height", "weight", "hanger", "drop"];
const SAME = ["width", "height", "weight", "hanger"]; // what the next frame has from the last one, unless it is told: our own

// One more frame in a line; what is left empty is as for the frame before it, but for what is measured on each.
function adding() {
  const last = store.state.frames.filter((one) => one.own !== null).at(-1);
  const measured = last && typeof valueAt(["frame", last.id, "hanger"]) === "object"; // it has places of its own
  const inputs = NEW.map((name) => {
    const words = wordsFor("frame", name);
    const shared = { id: `new_${name}`, "data-key": `new frame ${name}`, "data-saved": "", title: words.means };
    const like = SAME.includes(name) && last ? (name === "hanger" ? last.hanger : last.known[name]) : "";
    const placeholder = like || (name === "id" ? "next letter" : example(words));
    const input = name === "hanger"
      ? h("select", shared, h("option", { value: "" }, placeholder), ...store.fields.hangers.filter((one) => !one.needs.length && one.name !== like).map((one) => h("option", { value: one.name }, one.name)))
      : h("input", { type: "text", autocomplete: "off", placeholder, ...shared });
    return h("label", {}, name === "id" ? "short name" : name, input);
  });
  const add = async (event) => {
    event.preventDefault();
    const values = Object.fromEntries(NEW.map((name) => [name, document.getElementById(`new_${name}`).value.trim()]));
    const error = await change({ do: "add frame", values, like: last?.id });
    sayWrong(document.getElementById("new"), Object.fromEntries(NEW.map((name) => [`, ${name}`, `new_${name}`])), error);
    if (error) return;
    for (const name of NEW) document.getElementById(`new_${name}`).value = "";
    document.getElementById("new_title").focus();
  };
  return h("form", { id: "new", className: "list", onsubmit: add }, h("h3", {}, "Add a frame"), h("div", { className: "quick" }, ...inputs),
    h("div", { className: "row" }, h("button", { type: "submit", "data-focus": "add frame" }, "Add this frame"),
      h("span", { className: "help" }, last ? `Enter adds it. Without a size it has that of frame ${last.id}. A width of ${store.state.unit === "in" ? "11 x 14" : store.state.unit === "cm" ? "30 x 40" : "300 x 400"} is both sides.${measured ? " With another size it hangs on a wire, until its own hanger is chosen and measured." : ""}` : "Enter adds it.")));
}

function pasting() {
  const area = h("textarea", { id: "pasted", rows: 5, "data-key": "pasted frames", "data-saved": "", "aria-label": "Cells of a spreadsheet", placeholder: "id\ttitle\twidth\theight\tweight\tdrop" });
  const wrong = h("p", { className: "wrong", role: "alert", hidden: true });
  const paste = async () => {
    const error = await change({ do: "paste frames", text: area.value });
    wrong.hidden = !error;
    wrong.textContent = error ? error.message : "";
    if (!error) document.getElementById("pasted").value = "";
  };
  return h("details", { "data-focus": "paste" }, h("summary", {}, "Paste frames from a spreadsheet"),
    h("p", { className: "help" }, "Copy the cells there and paste them here, one frame a line. Columns: id, title, width, height, weight, drop; with a line of names above, any field of a frame."),
    area, wrong, h("div", { className: "row" }, h("button", { type: "button", "data-focus": "paste them", onclick: paste }, "Add these frames")));
}

function frameForm(one) {
  const at = ["frame", one.id];
  if (one.own === null) return fromSheet(one);
  const own = (name) => jobField("frame", [...at, name], { choices: name === "type" ? Object.keys(store.state.raw.frame_type || {}) : undefined, placeholder: one.known[name] ? `${one.known[name]}${name === "weight" && one.known.weightIs === "estimated" ? ", estimated" : ""}` : undefined });
  const first = ["id", "title", "width", "height", "weight", "depth"];
  const rest = namesOf("frame").filter((name) => ![...first, "hanger", "drop", "fixing", "image"].includes(name));
  return h("fieldset", { className: "chosen-part" }, h("legend", {}, `Frame ${one.id}${one.title ? `: ${one.title}` : ""}`),
    h("div", { className: "pair" }, ...first.map(own)),
    hangerPart(one, at), fixingPart(one, at), picturePart(one), placePart(one),
    fold(`more ${one.id}`, "Print, mat, moulding and glazing", () => [
      h("div", { className: "pair" }, ...rest.map(own)),
      h("h4", {}, "Moulding"), h("div", { className: "pair" }, ...together([...at, "moulding"], "moulding")),
      h("h4", {}, "Mat, side by side"), h("div", { className: "pair" }, ...together([...at, "mat"], "mat", { alone: ["width"] }))]),
    h("div", { className: "row" },
      h("button", { type: "button", "data-focus": "copy frame", onclick: () => act({ do: "copy frame", frame: one.id }) }, "Another one like this"),
      h("button", { type: "button", "data-focus": "remove frame", onclick: () => act({ do: "remove", at }) }, `Remove frame ${one.id}`)));
}

// A frame of a spreadsheet is changed there, or all of it is taken into the job file.
function fromSheet(one) {
  const sheet = store.state.raw.job?.frames || "a spreadsheet";
  return h("fieldset", { className: "chosen-part" }, h("legend", {}, `Frame ${one.id}`),
    h("p", {}, `It stands in ${sheet}. Change it there, and the desk takes it in at once; or take all frames of ${sheet} into this job, and change them here.`),
    h("div", { className: "row" }, h("button", { type: "button", "data-focus": "take in", onclick: () => act({ do: "take in frames" }) }, "Take the frames into this job")));
}

// Where a frame is, by numbers: placed by hand, or pinned where places are found.
function placePart(one) {
  const { arrangement, raw } = store.state;
  if (arrangement !== "placed" && arrangement !== "salon") return null;
  const at = arrangement === "placed" ? ["group", "place", one.id] : ["group", "pin"];
  const words = wordsFor("group", arrangement === "placed" ? "place" : "pin");
  const names = arrangement === "placed" ? Object.keys(raw.group?.place?.[one.id] || { centre: 0 }) : [one.id];
  const fields = names.map((name) => {
    const part = arrangement === "placed" ? wordsFor("place", name).means : `frame ${one.id}`;
    return fieldAt([...at, name], `Across and up: ${part}`, words.means);
  });
  return h("div", { className: "list" }, ...fields);
}

async function act(data) {
  const error = await change(data);
  if (error) notice(error.message);
  else if (data.do === "copy frame") choose(`frame ${store.state.frames.filter((one) => one.own !== null).at(-1).id}`);
}

// A hanger that needs measures is chosen first and saved with them.
const waiting = new Map();

function hangerPart(one, at) {
  const pending = waiting.get(one.id);
  const kind = pending || one.hanger;
  const traits = store.fields.hangers.find((known) => known.name === kind);
  const pick = async (name) => {
    const needs = store.fields.hangers.find((known) => known.name === name).needs;
    if (name === one.hanger) { waiting.delete(one.id); act({ do: "set", sets: [] }); return; }
    if (needs.length) { waiting.set(one.id, name); redraw(); return; }
    waiting.delete(one.id);
    act({ do: "set", sets: [{ at: [...at, "hanger"], value: name }] });
  };
  const group = `hanger_${one.id}`;
  const cards = store.fields.hangers.map((known) => h("label", { className: "card" },
    h("input", { type: "radio", name: group, value: known.name, checked: known.name === kind, "data-focus": `hanger ${known.name}`, onchange: () => pick(known.name) }),
    h("img", { src: address("/hanger", { kind: known.name }), alt: "", width: 74, height: 88 }), known.called.replace(/^an? /, "")));
  return h("div", { className: "list" }, h("h3", {}, `${asked(wordsFor("frame", "hanger"), at)} Seen from behind`), h("div", { className: "cards", role: "radiogroup", "aria-label": `Hanger of frame ${one.id}` }, ...cards),
    traits.needs.length ? pairFields(one, at, kind, traits) : [jobField("frame", [...at, "drop"], { placeholder: one.known.drop || undefined }), kind === "wire" ? wireFields(at) : null],
    pending ? h("p", { className: "help", role: "status" }, `Measure these, and the frame hangs by ${traits.called}.`) : null);
}

function pairFields(one, at, kind, traits) {
  const names = traits.takes.filter((name) => name !== "seen_from");
  const done = () => { if (store.state.frames.find((frame) => frame.id === one.id)?.hanger === kind) waiting.delete(one.id); };
  const whole = keptHanger(at, kind);
  const front = seenFromFront(one);
  const held = (name) => whole[front ? OTHER_SIDE[name] || name : name];
  const fields = together([...at, "hanger"], "hanger", { names, kept: { kind, seen_from: "back" }, whole, held, needs: () => traits.needs });
  queueMicrotask(done);
  return [h("div", { className: "pair" }, ...fields), traits.takes.includes("drop_left") ? null : jobField("frame", [...at, "drop"])];
}

// Sides are shown from behind, and saved so, whichever way the file has them.
const OTHER_SIDE = { left: "right", right: "left", drop_left: "drop_right", drop_right: "drop_left" };

export function seenFromFront(one) {
  const { frame_type: types = {} } = store.state.raw;
  const type = valueAt(["frame", one.id, "type"]);
  return (valueAt(["frame", one.id, "hanger", "seen_from"]) || types[type]?.hanger?.seen_from) === "front";
}

function keptHanger(at, kind) {
  const held = valueAt([...at, "hanger"]);
  return held && typeof held === "object" && held.kind === kind ? held : {};
}

function wireFields(at) {
  return fold("two hooks", "The wire hangs on two hooks", () => [
    h("div", { className: "pair" }, ...together([...at, "hanger"], "hanger", { names: ["apart", "drop_at_two", "ring_separation", "ring_depth"], kept: { kind: "wire" } }))]);
}

const fixingNeeds = (value) => (value.kind === "hook" ? ["below"] : []);
const fixingFields = (at) => h("div", { className: "pair" }, ...together(at, "fixing", { alone: ["kind"], needs: fixingNeeds }));

function fixingPart(one, at) {
  const own = valueAt([...at, "fixing"]);
  return fold(`fixing ${one.id}`, `Fixing: ${one.fixing}${own === undefined ? ", as for every frame" : ", its own"}`, () => [
    h("p", { className: "help" }, "For this frame alone. That of all others is below."), fixingFields([...at, "fixing"])]);
}

function usualFixing() {
  return fold("fixing", "Fixing: for every frame without its own", () => [fixingFields(["fixing"])]);
}

// What the frames of a type share.
function types() {
  const names = Object.keys(store.state.raw.frame_type || {});
  return names.length ? fold("types", "Types: what frames share", () => names.map((name) => {
    const at = ["frame_type", name];
    return h("fieldset", {}, h("legend", {}, name), h("div", { className: "pair" }, ...allFields("frame", at, ["id", "type", "hanger", "fixing"])),
      h("h4", {}, asked(wordsFor("frame", "hanger"), at)), h("div", { className: "pair" }, ...together([...at, "hanger"], "hanger", { alone: ["kind"] })),
      h("h4", {}, asked(wordsFor("fixing", "kind"))), fixingFields([...at, "fixing"]));
  })) : null;
}

function picturePart(one) {
  const choosePicture = async (event) => {
    const [file] = event.target.files;
    const error = file ? await upload(one.id, file) : null;
    if (error) notice(error.message);
  };
  const told = one.imageMissing ? "its file is missing" : one.image ? shownValue(valueAt(["frame", one.id, "image"])) : "none yet";
  return h("div", { className: "list" }, h("label", {}, `${asked(wordsFor("frame", "image"), ["frame", one.id])} Now: ${told}`, h("input", { type: "file", accept: "image/*", "data-focus": `picture ${one.id}`, onchange: choosePicture })),
    h("p", { className: "help" }, "Or drop a picture on the frame on the wall."));
}

const redraw = () => changed("panel");

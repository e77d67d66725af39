// The frames: one by one, or out of a spreadsheet; and everything about the one that is chosen.
import { address, change, changed, store, upload } from "./api.js";
import { h, notice } from "./dom.js";
import { choose } from "./dragging.js";
import { example, jobField, shownValue, together, valueAt, wordsFor } from "./fields.js";

export function framesPanel(goTo) {
  const chosen = store.state.frames.find((one) => `frame ${one.id}` === store.selected);
  return [
    h("h2", {}, "The frames"),
    h("ul", { className: "chips" }, ...store.state.frames.map((one) => h("li", {}, h("button", {
      type: "button", "data-focus": `chip ${one.id}`, "aria-pressed": String(store.selected === `frame ${one.id}`),
      title: one.title, onclick: () => choose(`frame ${one.id}`),
    }, one.id)))),
    chosen ? frameForm(chosen) : h("p", { className: "help" }, "Choose a frame, here or on the wall, to change it."),
    adding(), pasting(),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Arrange") }, "Next: arrange them")),
  ];
}

const NEW = ["id", "title", "width", "height", "weight", "drop"];

function adding() {
  const inputs = NEW.map((name) => {
    const words = wordsFor("frame", name);
    return h("label", {}, name === "id" ? "short name" : name, h("input", { type: "text", id: `new_${name}`, "data-key": `new frame ${name}`, "data-saved": "", autocomplete: "off", placeholder: name === "id" ? "next letter" : example(words) }));
  });
  const add = async (event) => {
    event.preventDefault();
    const values = Object.fromEntries(NEW.map((name) => [name, document.getElementById(`new_${name}`).value.trim()]));
    const error = await change({ do: "add frame", values });
    wrong.hidden = !error;
    wrong.textContent = error ? error.message : "";
    if (error) return;
    for (const name of NEW) document.getElementById(`new_${name}`).value = "";
    document.getElementById("new_id").focus();
  };
  const wrong = h("p", { className: "wrong", role: "alert", hidden: true });
  return h("form", { className: "list", onsubmit: add }, h("h3", {}, "Add a frame"), h("div", { className: "quick" }, ...inputs), wrong,
    h("div", { className: "row" }, h("button", { type: "submit", "data-focus": "add frame" }, "Add this frame")));
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
  if (one.own === null) return h("p", { className: "help" }, `Frame ${one.id} stands in ${store.state.raw.job?.frames || "a spreadsheet"}. Change it there; the desk takes it in at once.`);
  const own = (name, label) => jobField("frame", [...at, name], { label, placeholder: one.known[name] ? `${one.known[name]}${name === "weight" && one.known.weightIs === "estimated" ? ", estimated" : ""}` : undefined });
  return h("fieldset", { className: "chosen-part" }, h("legend", {}, `Frame ${one.id}${one.title ? `: ${one.title}` : ""}`),
    h("div", { className: "pair" }, own("id", "Short name"), own("title", "Title"), own("width", "Width, outside"), own("height", "Height, outside"), own("weight", "Weight"), own("depth", "Depth, front to back")),
    hangerPart(one, at), fixingPart(one, at), picturePart(one),
    h("details", { "data-focus": `more ${one.id}` }, h("summary", {}, "Print, mat and moulding"),
      h("div", { className: "pair" }, ...["type", "print", "mat", "glazing", "backing"].map((name) => jobField("frame", [...at, name])),
        ...["face", "rabbet", "wood"].map((name) => jobField("moulding", [...at, "moulding", name], { label: `Moulding: ${wordsFor("moulding", name).means}` })))),
    h("div", { className: "row" },
      h("button", { type: "button", "data-focus": "copy frame", onclick: () => act({ do: "copy frame", frame: one.id }) }, "Another one like this"),
      h("button", { type: "button", "data-focus": "remove frame", onclick: () => act({ do: "remove", at }) }, `Remove frame ${one.id}`)));
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
  return h("div", { className: "list" }, h("h3", {}, "What is on its back? Seen from behind"), h("div", { className: "cards", role: "radiogroup", "aria-label": `Hanger of frame ${one.id}` }, ...cards),
    traits.needs.length ? pairFields(one, at, kind, traits) : [jobField("frame", [...at, "drop"], { label: dropLabel(kind), placeholder: one.known.drop || undefined }), kind === "wire" ? wireFields(at) : null],
    pending ? h("p", { className: "help", role: "status" }, `Measure these, and the frame hangs by ${traits.called}.`) : null);
}

const dropLabel = (kind) => (kind === "wire" ? "Drop: from the top edge down to the wire, pulled taut" : "Drop: from the top edge down to where it bears");

function pairFields(one, at, kind, traits) {
  const names = traits.takes.filter((name) => name !== "seen_from");
  const done = () => { if (store.state.frames.find((frame) => frame.id === one.id)?.hanger === kind) waiting.delete(one.id); };
  const whole = keptHanger(at, kind);
  const front = seenFromFront(one);
  const held = (name) => whole[front ? OTHER_SIDE[name] || name : name];
  const fields = together([...at, "hanger"], "hanger", names, { kept: { kind, seen_from: "back" }, whole, held, needs: () => traits.needs });
  queueMicrotask(done);
  return [h("div", { className: "pair" }, ...fields), traits.takes.includes("drop_left") ? null : jobField("frame", [...at, "drop"], { label: dropLabel(kind) })];
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
  return h("details", { "data-focus": "two hooks" }, h("summary", {}, "The wire hangs on two hooks"),
    h("div", { className: "pair" }, ...together([...at, "hanger"], "hanger", ["apart", "drop_at_two", "ring_separation", "ring_depth"], {
      kept: { kind: "wire" }, labels: { apart: "How far apart are the hooks?", drop_at_two: "Top edge to the wire on both hooks" },
    })));
}

const FIXING = ["kind", "below", "diameter", "rating", "nails", "length", "angle"];
const fixingNeeds = (value) => (value.kind === "hook" ? ["below"] : []);
const FIXING_LABELS = { kind: "What goes into the wall?", below: "From the nail down to the hook's seat", rating: "What its maker rates one for", nails: "Nails of one fixing", length: "How long is the nail?", angle: "Degrees from straight in", diameter: "How thick is it?" };

function fixingPart(one, at) {
  const own = valueAt([...at, "fixing"]);
  return h("details", { "data-focus": `fixing ${one.id}` }, h("summary", {}, `Fixing: ${one.fixing}${own === undefined ? ", as for every frame" : ", its own"}`),
    h("p", { className: "help" }, "For this frame alone. For all others, see below."),
    h("div", { className: "pair" }, ...together([...at, "fixing"], "fixing", FIXING, { labels: FIXING_LABELS, needs: fixingNeeds })),
    h("h4", {}, "For every frame without its own"),
    h("div", { className: "pair" }, ...together(["fixing"], "fixing", FIXING, { labels: FIXING_LABELS, needs: fixingNeeds })));
}

function picturePart(one) {
  const choosePicture = async (event) => {
    const [file] = event.target.files;
    const error = file ? await upload(one.id, file) : null;
    if (error) notice(error.message);
  };
  const told = one.imageMissing ? "its file is missing" : one.image ? shownValue(valueAt(["frame", one.id, "image"])) : "none yet";
  return h("div", { className: "list" }, h("label", {}, `Its picture, for the proof: ${told}`, h("input", { type: "file", accept: "image/*", "data-focus": `picture ${one.id}`, onchange: choosePicture })),
    h("p", { className: "help" }, "Or drop a picture on the frame on the wall."));
}

const redraw = () => changed("panel");

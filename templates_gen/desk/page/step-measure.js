// The measuring list: every frame from behind, and blanks for what the tape says.
import { ask, change, store } from "./api.js";
import { drawing, h } from "./dom.js";
import { choose } from "./dragging.js";
import { field, shownValue, valueAt } from "./fields.js";
import { seenFromFront } from "./step-frames.js";
import { madeList, makeButton } from "./making.js";

const backs = new Map(); // by frame: what the desk last told of its back

export function measurePanel(goTo) {
  return [
    h("h2", {}, "Measure the frames"),
    h("p", { className: "help" }, "Turn each frame over. Measure from its top edge, a wire pulled taut up to where the hook will hold it. What is typed is saved when you go on."),
    h("div", { className: "row" }, makeButton("measuring", "A measuring sheet on paper")), madeList(),
    ...store.state.frames.map(frameRow),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("Paper") }, "Next: make the paper")),
  ];
}

function frameRow(one) {
  const holder = h("section", { className: "measure", "aria-label": `Frame ${one.id}` });
  const known = backs.get(one.id);
  if (known) fill(holder, one, known.told);
  if (!known || known.number !== store.state.number) {
    ask("/back", { frame: one.id }).then((told) => {
      const same = known && JSON.stringify(known.told) === JSON.stringify(told);
      backs.set(one.id, { number: store.state.number, told });
      if (!same && !holder.contains(document.activeElement)) fill(holder, one, told);
    }).catch(() => {});
  }
  return holder;
}

function fill(holder, one, told) {
  const head = h("h3", {}, h("button", { type: "button", className: "plain", "data-focus": `measure ${one.id}`, onclick: () => choose(`frame ${one.id}`) }, `${one.id}${one.title ? `: ${one.title}` : ""}`));
  if (one.own === null) { holder.replaceChildren(head, h("p", { className: "help" }, "It stands in a spreadsheet: fill that in, or take its frames into this job (step Frames).")); return; }
  holder.replaceChildren(head, drawing(told.drawn, `The back of frame ${one.id}, with letters for what is measured`), h("div", { className: "blanks" }, ...told.measures.filter((measure) => measure.name !== "width" && measure.name !== "height").map((measure) => blank(one, measure))));
}

function blank(one, measure) {
  const inFrame = ["drop", "weight"].includes(measure.name);
  const own = valueAt(inFrame ? ["frame", one.id, measure.name] : ["frame", one.id, "hanger", measure.name]);
  const value = seenFromFront(one) && !inFrame ? measure.known : shownValue(own);
  return field({
    key: `measure/${one.id}/${measure.name}`, label: `${measure.letter ? `${measure.letter}: ` : ""}${measure.words}`, value, placeholder: measure.shown,
    commit: (text) => change({ do: "measure", frame: one.id, name: measure.name, value: text }),
  });
}

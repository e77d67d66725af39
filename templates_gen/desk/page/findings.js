// What was found, beside what it is about, with what cures it as buttons.
import { change, store } from "./api.js";
import { find, h, notice } from "./dom.js";
import { madeAnew } from "./fields.js";
import { mark } from "./wall.js";

const LEVELS = { stop: "Stop", warn: "To settle", note: "Good to know" };

export function showFindings() {
  madeAnew(find("findings"), all);
  const told = find("findings").querySelector("h2").textContent;
  if (find("told").textContent !== told) find("told").textContent = told; // said aloud only when it is another
}

function all() {
  const { found, state } = store;
  if (!found || !state?.screen) return [h("h2", {}, "What was found"), h("p", {}, "…")];
  const count = (level) => found.findings.filter((one) => one.level === level).length;
  const [stops, warns] = [count("stop"), count("warn")];
  const head = stops ? `${stops} to put right before paper is printed` : warns ? `${warns} to settle` : "Nothing stops the paper";
  const list = found.findings.map(one);
  return [
    h("h2", {}, head),
    h("ul", {}, ...list),
    found.expected ? h("p", { className: "help" }, found.expected) : "",
    found.unchecked.length ? h("details", { "data-focus": "unchecked" }, h("summary", {}, "Not checked, because the job does not tell"), h("ul", {}, ...found.unchecked.map((text) => h("li", {}, text)))) : "",
  ];
}

function one(finding) {
  const act = async (data) => {
    const error = await change(data);
    if (error) notice(error.message);
  };
  const buttons = finding.cures.map((cure) => h("button", { type: "button", "data-focus": `cure ${finding.rule} ${cure.words}`, onclick: () => act({ do: "cure", text: store.found.text, changes: cure.changes }) }, cure.words));
  return h("li", {
    className: `finding ${finding.level}`,
    onmouseenter: () => mark(finding.about), onmouseleave: () => mark(),
    onfocusin: () => mark(finding.about), onfocusout: () => mark(),
  },
  h("strong", {}, LEVELS[finding.level]), " ", finding.text,
  finding.source ? h("span", { className: "source" }, ` (${finding.source})`) : "",
  buttons.length ? h("div", { className: "row" }, ...buttons) : "");
}

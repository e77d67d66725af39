// The printer: chosen if it was measured, and measured once by the scale page.
import { ask, bring, changed, job, store } from "./api.js";
import { h, notice, sayWrong } from "./dom.js";
import { fold } from "./fields.js";
import { makeButton } from "./making.js";

const key = `printer ${job}`;
let known = null; // what the desk told of the printers

export function printerName() {
  if (!known) {
    known = { printers: [], damaged: [], rulers: {} };
    ask("/printers").then((told) => { known = told; changed("panel"); }).catch((error) => notice(error.message));
  }
  const name = sessionStorage.getItem(key);
  return known.printers.some((one) => one.name === name) ? name : "";
}

export function printerPart() {
  const name = printerName();
  const chosen = known.printers.find((one) => one.name === name);
  const select = h("select", { id: "printer", "data-focus": "printer", onchange: (event) => { sessionStorage.setItem(key, event.target.value); changed("panel"); } },
    h("option", { value: "" }, "not measured"), ...known.printers.map((one) => h("option", { value: one.name }, one.name)));
  select.value = chosen ? chosen.name : "";
  return fold("printers", `Printer: ${chosen ? chosen.name : "not measured"}`, () => [
    h("p", { className: "help" }, "Printers print a little too long or too short. Measured once, yours is corrected for, and the paper measures true."),
    h("label", { htmlFor: "printer" }, "Which printer prints the template?"), select,
    ...(chosen ? [chosen.about, ...chosen.doubts].map((text) => h("p", { className: "help" }, text)) : []),
    ...known.damaged.map((text) => h("p", { className: "wrong" }, text)),
    h("h4", {}, "Measure another one"), h("div", { className: "row" }, makeButton("scale page", "The page to print and measure")),
    recording(),
  ], Boolean(chosen));
}

function recording() {
  const input = (name, words) => h("label", {}, words, h("input", { type: "text", id: `ruler_${name}`, "data-key": `printer ${name}`, "data-saved": "", autocomplete: "off" }));
  const names = ["name", ...Object.keys(known.rulers)];
  const words = { printer: "ruler_name", ...Object.fromEntries(Object.entries(known.rulers).map(([name, said]) => [said, `ruler_${name}`])) };
  const keep = async (event) => {
    event.preventDefault();
    const data = Object.fromEntries(names.map((name) => [name, document.getElementById(`ruler_${name}`).value]));
    try {
      known = await bring("/printers", { ...data, paper: store.state.paper });
      sessionStorage.setItem(key, known.name);
      for (const name of names) document.getElementById(`ruler_${name}`).value = "";
      changed("panel");
    } catch (error) { sayWrong(document.getElementById("ruler"), words, error); }
  };
  return h("form", { id: "ruler", onsubmit: keep }, h("div", { className: "quick" }, input("name", "Call the printer"), ...Object.entries(known.rulers).map(([name, words]) => input(name, words))),
    h("div", { className: "row" }, h("button", { type: "submit", "data-focus": "keep printer" }, "Keep these")));
}

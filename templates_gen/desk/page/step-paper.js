// The paper: every way to print it with what it takes, and the papers that are made.
import { ask, change, changed, store } from "./api.js";
import { capital, h, notice } from "./dom.js";
import { allFields, fold, jobField, together, wordsFor } from "./fields.js";
import { madeList, makeButton } from "./making.js";
import { tapedBox } from "./photographs.js";
import { printerPart, printerName } from "./printers.js";

const SHOP = "one piece";
const WAYS = ["linked", "marks", "all", "nails", SHOP]; // the least paper first: our own
const known = new Map(); // by cover: what the desk told, and of which state

export function paperPanel(goTo) {
  const { state } = store;
  const cover = state.raw.paper?.print_shop ? SHOP : state.raw.paper?.cover || "marks";
  return [
    h("h2", {}, "Make the paper"),
    h("div", { className: "pair" }, jobField("paper", ["paper", "size"])),
    h("fieldset", { className: "ways" }, h("legend", {}, "How is it to be printed?"), ...WAYS.map((name) => wayCard(name, name === cover))),
    cover === SHOP ? null : printerPart(),
    fold("more paper", "More about the paper", () => [h("div", { className: "pair" }, ...allFields("paper", ["paper"], ["size", "cover", "print_shop"])),
      h("h4", {}, "What the printer cannot reach, side by side"), h("div", { className: "pair" }, ...together(["paper", "margin"], "margin", { alone: ["top", "right", "bottom", "left"] }))]),
    fold("accuracy", "How exactly you work", () => [h("p", { className: "help" }, "Usual errors: one time in three it is more. The first page says what comes of them."), h("div", { className: "pair" }, ...allFields("accuracy", ["accuracy"]))]),
    h("div", { className: "row" }, makeButton("template", "Make the template", { printer: printerName() })),
    h("div", { className: "list" }, h("h3", {}, "Other papers"), h("div", { className: "row" },
      h("a", { className: "button", href: `/proof?${new URLSearchParams({ job: state.job })}`, target: "_blank", rel: "noopener" }, "The proof, for the client"),
      makeButton("guide", "A page for the phone"), makeButton("photo card", "Cards for photographs"), makeButton("labels", "Labels for the backs"), makeButton("schedule", "The schedule"))),
    madeList(),
    tapedBox(),
    h("div", { className: "row end" }, h("button", { type: "button", className: "main", onclick: () => goTo("After hanging") }, "Next: after hanging")),
  ];
}

function wayCard(name, chosen) {
  const words = name === SHOP ? wordsFor("paper", "print_shop").called.true : wordsFor("paper", "cover").called[name];
  const [title, about] = words.split(": ").map(capital);
  const pick = async () => {
    const shop = name === SHOP;
    const sets = [{ at: ["paper", "print_shop"], value: shop ? true : null }];
    if (!shop) sets.push({ at: ["paper", "cover"], value: name });
    const error = await change({ do: "set", sets });
    if (error) notice(error.message);
  };
  const told = look(name);
  if (chosen && told?.way) showSheets(told.way.windows);
  return h("label", { className: "way" },
    h("input", { type: "radio", name: "cover", value: name, checked: chosen, "data-focus": `way ${name}`, onchange: pick }),
    h("span", {}, h("strong", {}, title), h("span", { className: "takes", "data-way": name }, takes(told)), h("span", { className: "help" }, about)));
}

function takes(told) {
  if (!told) return "being worked out…";
  if (told.cover === SHOP) return told.shop || "It is too large for the usual rolls: ask a print shop.";
  if (!told.way) return "not on this paper";
  const { sheets, joins, pieces, minutes, exact } = told.way;
  const count = (number, noun) => `${number} ${noun}${number === 1 ? "" : "s"}`;
  return [count(sheets, "sheet"), joins ? count(joins, "join") : "", pieces > 1 ? count(pieces, "loose piece") : "", `about ${minutes} min`, exact].filter(Boolean).join(", ");
}

const asked = new Set();
let number = 0;

// What a way takes is worked out once for every state of the job, one way after the other.
function look(cover) {
  const { state } = store;
  if (number !== state.number) { number = state.number; asked.clear(); }
  if (!asked.has(cover) && state.lines) {
    asked.add(cover);
    ask("/way", { cover }).then((told) => {
      if (told.number !== store.state.number) return;
      known.set(cover, told);
      changed("panel");
    }).catch(() => {});
  }
  return known.get(cover);
}

function showSheets(windows) {
  if (JSON.stringify(windows) === JSON.stringify(store.sheets)) return;
  store.sheets = windows;
  queueMicrotask(() => changed("sheets"));
}

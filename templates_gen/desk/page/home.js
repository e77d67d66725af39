// The walls of this folder, a new one, and samples to play with.
import { ask, bring } from "./api.js";
import { find, h, notice, sayWrong } from "./dom.js";

const open = (job) => { location.href = `/wall?${new URLSearchParams({ job })}`; };

async function begin(path, data, more) {
  try { open((await bring(path, data, more)).job); } catch (error) { notice(error.message); }
}

// A new wall, in the words of the job file's tables; its first frame is called A.
const NEW = [["job", "title"], ["job", "unit"], ["wall", "width"], ["wall", "height"], ["frame", "width"], ["frame", "height"], ["paper", "size"]];

function newWall() {
  const wordsFor = ([table, name]) => fields.tables[table].find((one) => one.name === name);
  const inches = navigator.language === "en-US";
  const idOf = (place) => `new_${place.join("_")}`;
  const unit = () => find(idOf(["job", "unit"]))?.value || (inches ? "in" : "cm");
  const example = (place) => (wordsFor(place).kind === "length" && unit() !== "in" ? "" : `such as ${wordsFor(place).example}`);
  const input = (place) => {
    const words = wordsFor(place);
    const id = idOf(place);
    if (words.name === "unit") return select(id, words.choices.map((value) => [value, words.called[value]]), inches ? "in" : "cm");
    if (words.name === "size") return select(id, fields.papers.map((name) => [name, name]), fields.usualPapers[unit()]);
    return h("input", { type: "text", id, placeholder: example(place), required: place[1] === "width" || place[1] === "title", autocomplete: "off" });
  };
  const make = async (event) => {
    event.preventDefault();
    const data = Object.fromEntries(NEW.map((place) => [place.join("."), find(idOf(place)).value]));
    try { open((await bring("/new", data)).job); } catch (error) {
      sayWrong(form, Object.fromEntries(NEW.map((place) => [place[0] === "frame" ? `(A), ${place[1]}` : place.join(", "), idOf(place)])), error);
    }
  };
  const form = h("form", { id: "new", className: "new", onsubmit: make }, h("h2", {}, "Begin a new wall"),
    h("div", { className: "quick" }, ...NEW.map((place) => h("label", {}, wordsFor(place).ask.replace("{id}", "A, the first"), input(place)))),
    h("div", { className: "row" }, h("button", { type: "submit", className: "main" }, "Begin")));
  form.querySelector(`#${idOf(["job", "unit"])}`).addEventListener("change", () => {
    for (const place of NEW) if (wordsFor(place).kind === "length") find(idOf(place)).placeholder = example(place);
    find(idOf(["paper", "size"])).value = fields.usualPapers[unit()];
  });
  return form;
}

function select(id, choices, value) {
  const made = h("select", { id }, ...choices.map(([one, words]) => h("option", { value: one }, words)));
  made.value = value;
  return made;
}

function show(told) {
  if (told.blocked) notice(`${told.blocked}. Start the desk in another folder.`);
  const jobs = told.jobs.map((one) => h("li", {}, h("a", { href: `/wall?${new URLSearchParams({ job: one.name })}` }, one.title || one.name), h("span", { className: "help" }, ` ${one.name}`)));
  const samples = told.samples.map((one) => h("li", {}, h("button", { type: "button", onclick: () => begin("/sample", { name: one.name }) }, one.name.replaceAll("-", " ")), h("span", { className: "help" }, ` ${one.about}`)));
  const file = h("input", { type: "file", id: "template", accept: "application/pdf", onchange: (event) => begin("/from-template", event.target.files[0], { name: event.target.files[0].name }) });
  const sample = h("button", { type: "button", className: "main", onclick: () => begin("/sample", { name: "fern-prints" }) }, "Play with a sample wall");
  find("home").replaceChildren(
    jobs.length ? h("section", {}, h("h2", {}, "Open a wall"), h("ul", { className: "jobs" }, ...jobs))
      : h("section", {}, h("h2", {}, "No wall here yet"), h("p", {}, "Begin a new one, or play with one first. Nothing you do there can break anything."), h("div", { className: "row" }, sample)),
    newWall(),
    h("section", {}, h("h2", {}, "Samples to play with"), h("ul", { className: "jobs" }, ...samples)),
    h("section", {}, h("h2", {}, "From a printed template"), h("label", { htmlFor: "template" }, "A template's PDF gives its job back. Choose it, or drop it on this page."), file),
    h("p", { className: "help" }, `Folder: ${told.folder}. Everything stays on this machine.`));
}

document.addEventListener("dragover", (event) => event.preventDefault());
document.addEventListener("drop", (event) => {
  event.preventDefault();
  const [file] = event.dataTransfer.files;
  if (file) begin("/from-template", file, { name: file.name });
});
let fields = null;
try { fields = await ask("/fields"); show(await ask("/jobs")); } catch (error) { notice(error.message); }
new EventSource("/events"); // tells the desk that a page is open

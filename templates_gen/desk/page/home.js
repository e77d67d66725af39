// The walls of this folder, a new one, and samples to play with.
import { ask, bring } from "./api.js";
import { find, h, notice } from "./dom.js";

const open = (job) => { location.href = `/wall?${new URLSearchParams({ job })}`; };

async function begin(path, data, more) {
  try { open((await bring(path, data, more)).job); } catch (error) { notice(error.message); }
}

// Fields of a new wall by where the job file has them.
const PLACES = { "wall, width": "wallWidth", "wall, height": "wallHeight", "(A), width": "frameWidth", "(A), height": "frameHeight" };

function newWall() {
  const unit = h("select", { id: "unit" }, ...[["in", "inches"], ["cm", "centimetres"], ["mm", "millimetres"]].map(([value, words]) => h("option", { value }, words)));
  unit.value = navigator.language === "en-US" ? "in" : "cm";
  const paper = h("select", { id: "paper" }, ...["letter", "a4", "tabloid", "a3", "legal"].map((size) => h("option", {}, size)));
  paper.value = navigator.language === "en-US" ? "letter" : "a4";
  const text = (id, words, placeholder, needed = true) => h("label", {}, words, h("input", { type: "text", id, placeholder, required: needed, autocomplete: "off" }));
  const examples = () => (unit.value === "in" ? ["12' 6\"", "8'", "11", "14"] : unit.value === "cm" ? ["380", "245", "30", "40"] : ["3800", "2450", "300", "400"]);
  const fields = [["wallWidth", "How wide is the wall?"], ["wallHeight", "How high is it?"], ["frameWidth", "How wide is the first frame, outside?"], ["frameHeight", "How high is that frame?"]].map(([id, words], at) => text(id, words, `such as ${examples()[at]}`));
  unit.addEventListener("change", () => fields.forEach((one, at) => { one.querySelector("input").placeholder = `such as ${examples()[at]}`; }));
  const wrong = h("p", { className: "wrong", role: "alert", hidden: true });
  const make = async (event) => {
    event.preventDefault();
    const data = Object.fromEntries(["title", "unit", "wallWidth", "wallHeight", "frameWidth", "frameHeight", "paper"].map((id) => [id, find(id).value]));
    for (const id of Object.keys(data)) find(id).removeAttribute("aria-invalid");
    try { open((await bring("/new", data)).job); } catch (error) {
      const place = Object.keys(PLACES).find((one) => error.where?.endsWith(one));
      wrong.hidden = false;
      wrong.textContent = (place ? error.problem : error.message).replaceAll('\\"', '"');
      if (place) { find(PLACES[place]).setAttribute("aria-invalid", "true"); find(PLACES[place]).focus(); }
    }
  };
  return h("form", { className: "new", onsubmit: make }, h("h2", {}, "Begin a new wall"),
    h("div", { className: "quick" }, text("title", "What is the job called?", "such as Fern prints"), h("label", {}, "Which unit do you measure in?", unit), ...fields, h("label", {}, "What paper is in the printer?", paper)),
    wrong, h("div", { className: "row" }, h("button", { type: "submit", className: "main" }, "Begin")));
}

function show(told) {
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
try { show(await ask("/jobs")); } catch (error) { notice(error.message); }
new EventSource("/events"); // tells the desk that a page is open

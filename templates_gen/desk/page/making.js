// Papers that were made since the page was opened, and the buttons that make them.
import { address, bring, changed } from "./api.js";
import { h, notice } from "./dom.js";

const made = [];
const making = new Set();

export function makeButton(kind, words, more = {}) {
  const busy = making.has(kind);
  const make = async (over) => {
    making.add(kind);
    changed("panel");
    try {
      const told = await bring("/paper", { kind, ...more, over });
      for (const file of told.files) {
        const old = made.findIndex((one) => one.file === file);
        if (old >= 0) made.splice(old, 1);
      }
      made.unshift(...told.files.map((file) => ({ file, said: told.said })));
    } catch (error) { notice(error.message, error.taken && { words: "Replace it", act: () => { notice(""); make(true); } }); }
    making.delete(kind);
    changed("panel");
    document.getElementById("made")?.querySelector("a")?.focus();
  };
  return h("button", { type: "button", className: kind === "template" ? "main" : "", "data-focus": `make ${kind}`, disabled: busy, onclick: () => make(false) }, busy ? "Being made…" : words);
}

export function madeList() {
  return h("ul", { id: "made", className: "made", "aria-live": "polite" }, ...made.map(({ file, said }) => h("li", {}, h("a", { href: address("/written", { file }), target: "_blank", rel: "noopener" }, `Open ${file}`), `: ${said}. It lies beside the job file.`)));
}

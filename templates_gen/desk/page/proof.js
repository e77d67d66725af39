// The proof on a page of its own: the wall with its pictures, and nothing that is not for the client.
import { address, ask, bring, job, listen } from "./api.js";
import { find, notice } from "./dom.js";

async function draw() {
  try {
    const { title } = await ask("/state");
    find("title").textContent = title || "Proof";
    document.title = `${title}: proof`;
    find("back").href = `/wall?${new URLSearchParams({ job })}`;
    const svg = await bring("/paper", { kind: "proof picture" });
    const picture = find("proof");
    picture.src = address("/written", { file: svg.files[0], v: Date.now() });
    picture.alt = `The wall to scale with all frames: ${title}, ${svg.said}`;
    picture.hidden = false;
    find("wait").hidden = true;
    const pdf = await bring("/paper", { kind: "proof" });
    find("pdf").href = address("/written", { file: pdf.files[0] });
    find("pdf").hidden = false;
  } catch (error) { notice(error.message); }
}

let known = null;
listen((news) => {
  if (news.number !== known) { known = news.number; draw(); }
});

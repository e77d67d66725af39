"""How the take-along page looks, and what keeps its ticks."""

from __future__ import annotations

STYLE = """
:root { color-scheme: light dark; --ink: #22303a; --page: #f3f1ec; --card: #fffdf9; --line: #d8d3c7; --chalk: #1d5a7d;
  --stop: #a12d1d; --warn: #805300; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e6df; --page: #191d20; --card: #22282c; --line: #3a4247;
  --chalk: #8cc4e2; --stop: #ff9d8c; --warn: #eec170; } }
* { box-sizing: border-box; }
body { margin: 0; font: 1.1rem/1.45 system-ui, sans-serif; color: var(--ink); background: var(--page); }
main { max-width: 44rem; margin: 0 auto; padding: .7rem; }
h1 { font-size: 1.4rem; margin: .3rem 0; }
h2 { font-size: 1.2rem; margin: 0 0 .5rem; }
h3 { font-size: 1.5rem; margin: 0; }
h3 small { font-size: 1rem; font-weight: 400; }
section { background: var(--card); border: 1px solid var(--line); border-radius: .6rem; }
section { padding: .8rem; margin: .7rem 0; }
article { border-top: 1px solid var(--line); padding: .7rem 0; }
figure { margin: .4rem 0; background: #fff; border-radius: .4rem; padding: .3rem; } svg { width: 100%; height: auto; }
ul.ticks, ol.ticks { list-style: none; padding: 0; margin: 0; }
label { display: flex; gap: .7rem; padding: .5rem 0; align-items: flex-start; }
label > span { flex: 1; }
label span span { display: block; }
.far { font-size: 1.35rem; font-weight: 600; }
input { width: 1.7rem; height: 1.7rem; flex: none; accent-color: var(--chalk); }
label:has(:checked) > span { text-decoration: line-through; }
.grid { display: grid; grid-template-columns: repeat(auto-fill, minmax(4.5rem, 1fr)); gap: .2rem .6rem; }
.stop { border-left: .4rem solid var(--stop); padding-left: .6rem; }
.warn { border-left: .4rem solid var(--warn); padding-left: .6rem; }
"""

SCRIPT = """
const own = "templates-gen " + document.body.dataset.job;
let kept = {};
try {
  kept = JSON.parse(localStorage.getItem(own) || "{}");
} catch { /* no storage: the ticks last while the page is open */ }
for (const box of document.querySelectorAll("input[data-key]")) {
  box.checked = Boolean(kept[box.dataset.key]);
  box.addEventListener("change", () => {
    kept[box.dataset.key] = box.checked;
    try { localStorage.setItem(own, JSON.stringify(kept)); } catch { /* as above */ }
  });
}
"""

// What is taken by hand follows at once; when it is let go, the desk says where it is.  Edges, gaps and lines hold it.
import { change, changed, store, upload } from "./api.js";
import { find, notice } from "./dom.js";
import { take as takePhoto } from "./photographs.js";
import { s } from "./wall.js";

const NEAR = 8; // pixels from which an edge, a gap or a line holds: our own
const STILL = 4; // pixels that a hand trembles when it only chooses: our own
const PAUSE = 350; // ms after the last arrow key until the place is saved: our own

let taken = null;
let keys = null;

export function startDragging() {
  const wall = find("wall");
  wall.addEventListener("pointerdown", take);
  wall.addEventListener("pointermove", move);
  wall.addEventListener("pointerup", letGo);
  wall.addEventListener("pointercancel", cancel);
  wall.addEventListener("keydown", pressed);
  wall.addEventListener("focusout", () => saveKeys());
  wall.addEventListener("dragover", (event) => event.preventDefault());
  wall.addEventListener("drop", dropped);
}

function partOf(group) {
  const { state } = store;
  const frame = group.dataset.frame;
  if (frame !== undefined) return { frame, rect: state.screen.frames.find((one) => one.name === frame).rect };
  const at = state.features.findIndex((one) => one.key === group.dataset.feature);
  return at < 0 ? null : { feature: group.dataset.feature, rect: state.screen.features[at].rect };
}

function inDrawing(event) {
  const svg = find("drawing");
  return new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
}

export function choose(key) {
  if (store.selected === key) return;
  store.selected = key;
  changed("selected");
}

function take(event) {
  const group = event.target.closest?.(".take");
  if (!group || event.button) return;
  saveKeys();
  const byTouch = event.pointerType === "touch" && store.selected !== group.dataset.key;
  choose(group.dataset.key);
  if (byTouch) return; // the first tap chooses, so that the page can still be scrolled over the wall
  const part = partOf(group);
  if (!part) return;
  const from = inDrawing(event);
  taken = { group, part, from, at: [event.clientX, event.clientY], moved: false, dx: 0, dy: 0, held: [] };
  find("wall").setPointerCapture(event.pointerId);
}

function move(event) {
  if (!taken) return;
  const far = Math.hypot(event.clientX - taken.at[0], event.clientY - taken.at[1]);
  if (!taken.moved && far < STILL) return;
  taken.moved = true;
  const now = inDrawing(event);
  const scale = store.state.screen.scale;
  const dx = (now.x - taken.from.x) * scale;
  const dy = (taken.from.y - now.y) * scale;
  const near = NEAR * scale / find("drawing").getScreenCTM().a;
  Object.assign(taken, event.altKey ? { dx, dy, held: [], guides: [] } : held(taken.part, dx, dy, near));
  put(taken);
}

function put({ group, dx, dy, guides = [] }) {
  const k = 1 / store.state.screen.scale;
  group.setAttribute("transform", `translate(${dx * k} ${-dy * k})`);
  for (const nail of document.querySelectorAll(`.nails [data-of="${CSS.escape(group.dataset.frame || "")}"]`)) {
    nail.setAttribute("transform", `translate(${dx * k} ${-dy * k})`);
  }
  const box = store.state.screen.box;
  find("guides").replaceChildren(...guides.map(([axis, value]) => (axis === "x"
    ? s("line", { x1: value * k, x2: value * k, y1: box[1], y2: box[1] + box[3] })
    : s("line", { y1: -value * k, y2: -value * k, x1: box[0], x2: box[0] + box[2] }))));
}

// The nearest edge, middle, gap or line in each direction, if it is near enough.
export function held(part, dx, dy, near) {
  const { state } = store;
  const [x0, y0, x1, y1] = part.rect;
  const own = (list, index, key) => list.filter((_, at) => at !== index || !key);
  const frames = state.screen.frames.filter((one) => one.name !== part.frame).map((one) => one.rect);
  const index = part.feature ? state.features.findIndex((one) => one.key === part.feature) : -1;
  const features = own(state.screen.features, index, part.feature).map((one) => one.rect);
  const gaps = part.frame !== undefined ? state.gap : [0, 0];
  const across = stops([x0 + dx, x1 + dx], frames, features, 0, gaps[0], state.lines?.centre);
  const up = stops([y0 + dy, y1 + dy], frames, features, 1, gaps[1], part.frame !== undefined ? state.lines?.level : undefined);
  const best = (list) => list.reduce((one, other) => (Math.abs(other[0]) < Math.abs(one[0]) ? other : one), [near, null]);
  const [moveX, guideX] = best(across);
  const [moveY, guideY] = best(up);
  const names = part.frame !== undefined ? ["x", "y"] : ["left", "bottom"];
  return {
    dx: dx + (guideX === null ? 0 : moveX), dy: dy + (guideY === null ? 0 : moveY),
    held: [guideX === null ? null : names[0], guideY === null ? null : names[1]].filter(Boolean),
    guides: [guideX === null ? null : ["x", guideX], guideY === null ? null : ["y", guideY]].filter(Boolean),
  };
}

function stops([low, high], frames, features, axis, gap, line) {
  const found = [];
  const middle = (low + high) / 2;
  for (const rect of [...frames, ...features]) {
    const [a, b] = [rect[axis], rect[axis + 2]];
    found.push([a - low, a], [b - high, b], [(a + b) / 2 - middle, (a + b) / 2]);
  }
  for (const rect of frames) {
    const [a, b] = [rect[axis], rect[axis + 2]];
    if (gap) found.push([b + gap - low, b + gap], [a - gap - high, a - gap]);
  }
  if (line !== undefined) found.push([line - middle, line]);
  return found;
}

async function letGo(event) {
  if (!taken) return;
  const done = taken;
  taken = null;
  find("guides").replaceChildren();
  if (find("wall").hasPointerCapture(event.pointerId)) find("wall").releasePointerCapture(event.pointerId);
  done.group.focus({ preventScroll: true });
  if (done.moved) await save(done);
}

function cancel() {
  if (!taken) return;
  taken.group.removeAttribute("transform");
  for (const nail of document.querySelectorAll(".nails [transform]")) nail.removeAttribute("transform");
  find("guides").replaceChildren();
  taken = null;
}

async function save({ group, part, dx, dy, held: kept }) {
  const [x0, y0, x1, y1] = part.rect;
  const data = part.frame !== undefined
    ? { do: "move frame", frame: part.frame, x: (x0 + x1) / 2 + dx, y: (y0 + y1) / 2 + dy, held: kept }
    : { do: "move feature", feature: part.feature, x: x0 + dx, y: y0 + dy, held: kept };
  const error = await change(data);
  if (error) { group.removeAttribute("transform"); notice(error.message); changed("state"); }
}

const WAYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

function pressed(event) {
  const group = event.target.closest?.(".take");
  if (event.key === "Escape") { cancel(); dropKeys(); return; }
  if (!group) return;
  if (event.key === "Enter" || event.key === " ") { event.preventDefault(); saveKeys(); choose(group.dataset.key); changed("opened"); return; }
  const way = WAYS[event.key];
  if (!way || event.ctrlKey || event.metaKey) return;
  event.preventDefault();
  const step = event.shiftKey ? store.state.largeStep : store.state.step;
  if (!keys || keys.group.dataset.key !== group.dataset.key) { saveKeys(); keys = { group, part: partOf(group), dx: 0, dy: 0, held: [] }; }
  if (!keys.part) { keys = null; return; }
  choose(group.dataset.key);
  keys.dx += way[0] * step;
  keys.dy += way[1] * step;
  put({ ...keys, group: document.querySelector(`#drawing [data-key="${CSS.escape(group.dataset.key)}"]`) || group });
  clearTimeout(keys.timer);
  keys.timer = setTimeout(() => saveKeys(), PAUSE);
}

function dropKeys() {
  if (!keys) return;
  clearTimeout(keys.timer);
  keys.group.removeAttribute("transform");
  keys = null;
}

export function saveKeys() {
  if (!keys) return;
  const done = keys;
  keys = null;
  clearTimeout(done.timer);
  save(done);
}

async function dropped(event) {
  event.preventDefault();
  const group = event.target.closest?.(".take.frame");
  const file = event.dataTransfer.files[0];
  if (!file || file.name.toLowerCase().endsWith(".pdf")) return;
  event.stopPropagation();
  if (!group) { store.step = "Wall"; changed("step"); takePhoto("wall", [file]); return; }
  const error = await upload(group.dataset.frame, file);
  if (error) notice(error.message);
}

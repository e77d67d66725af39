// Pointing at frames' corners on a photograph: roughly on the whole picture, then exactly on a part of it.
import { changed, store } from "./api.js";
import { h } from "./dom.js";

const WHOLE = 640; // pixels of the screen for the whole picture: our own
const PART = 320; // and of the part, of which each is one of the photograph
const CORNERS = ["upper left", "upper right", "lower right", "lower left"];
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

export const pointed = { file: null, picture: null, corners: {}, frame: null, near: null };

export async function open(file) {
  const picture = await createImageBitmap(file); // upright, as the desk reads it
  Object.assign(pointed, { file, picture, corners: {}, frame: store.state.frames[0]?.id, near: null });
}

export const whole = () => Object.fromEntries(Object.entries(pointed.corners).filter(([, points]) => points.length === CORNERS.length));

export function pointingPart() {
  const { picture, corners, frame } = pointed;
  if (!picture) return [];
  const mine = corners[frame] || [];
  const next = CORNERS[mine.length];
  const ready = Object.keys(whole()).length;
  return [
    h("div", { className: "row tight", role: "group", "aria-label": "Frames" }, ...store.state.frames.map((one) => h("button", {
      type: "button", "data-focus": `point ${one.id}`, "aria-pressed": String(one.id === frame),
      onclick: () => { pointed.frame = one.id; if (whole()[one.id]) delete corners[one.id]; changed("panel"); },
    }, `${one.id}${whole()[one.id] ? " ✓" : ""}`))),
    h("p", { role: "status" }, next ? `Frame ${frame}: point at its ${next} corner, the outer one of its front.` : `Frame ${frame} has its four corners. Choose another, or read them.`),
    wholeView(), pointed.near && next ? partView(mine) : null,
    h("p", { className: "help" }, `${ready} of ${store.state.frames.length} frames have their corners. Keys: arrows move, with Shift further, Enter points.`),
  ];
}

function wholeView() {
  const { picture } = pointed;
  const scale = Math.min(1, WHOLE / picture.width);
  const view = canvas(picture.width * scale, picture.height * scale, "The photograph: point roughly at a corner", "whole");
  const pen = view.getContext("2d");
  pen.drawImage(picture, 0, 0, view.width, view.height);
  for (const points of Object.values(pointed.corners)) outline(pen, points.map(([x, y]) => [x * scale, y * scale]));
  if (pointed.near) cross(pen, pointed.near.map((one) => one * scale));
  const at = (x, y) => { pointed.near = within([x / scale, y / scale]); changed("panel"); };
  view.addEventListener("click", (event) => at(...place(event, view)));
  keys(view, (dx, dy, far) => { const [x, y] = pointed.near || [picture.width / 2, picture.height / 2]; const by = far ? 100 : 20; at((x + dx * by) * scale, (y + dy * by) * scale); }, () => document.querySelector('[data-focus="part"]')?.focus());
  return view;
}

function partView(mine) {
  const [x, y] = pointed.near.map((one) => Math.round(one - PART / 2));
  const view = canvas(PART, PART, "A part of the photograph: point exactly at the corner", "part");
  const pen = view.getContext("2d");
  pen.drawImage(pointed.picture, x, y, PART, PART, 0, 0, PART, PART);
  cross(pen, [PART / 2, PART / 2]);
  const set = (u, v) => {
    pointed.corners[pointed.frame] = [...mine, [x + u, y + v]];
    pointed.near = null;
    if (mine.length + 1 === CORNERS.length) pointed.frame = store.state.frames.map((one) => one.id).find((id) => !whole()[id]) || pointed.frame;
    changed("panel");
    document.querySelector('[data-focus="whole"]')?.focus();
  };
  view.addEventListener("click", (event) => set(...place(event, view)));
  keys(view, (dx, dy, far) => { const by = far ? 10 : 1; pointed.near = within([pointed.near[0] + dx * by, pointed.near[1] + dy * by]); changed("panel"); }, () => set(PART / 2, PART / 2));
  return view;
}

const within = ([x, y]) => [Math.min(Math.max(x, 0), pointed.picture.width), Math.min(Math.max(y, 0), pointed.picture.height)];

function canvas(width, height, label, focus) {
  return h("canvas", { width: Math.round(width), height: Math.round(height), tabIndex: 0, role: "img", "aria-label": label, "data-focus": focus, className: "pointing" });
}

function place(event, view) {
  const box = view.getBoundingClientRect();
  return [(event.clientX - box.left) * view.width / box.width, (event.clientY - box.top) * view.height / box.height];
}

function keys(view, move, enter) {
  view.addEventListener("keydown", (event) => {
    if (event.key === "Enter") enter();
    else if (STEPS[event.key]) move(...STEPS[event.key], event.shiftKey);
    else return;
    event.preventDefault();
  });
}

function outline(pen, points) {
  pen.lineWidth = 3;
  pen.strokeStyle = "#d0342c";
  pen.beginPath();
  for (const [x, y] of points) pen.lineTo(x, y);
  if (points.length === CORNERS.length) pen.closePath();
  pen.stroke();
  for (const point of points) cross(pen, point);
}

function cross(pen, [x, y]) {
  for (const [colour, width] of [["#ffffff", 3], ["#d0342c", 1]]) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    pen.moveTo(x - 9, y); pen.lineTo(x + 9, y); pen.moveTo(x, y - 9); pen.lineTo(x, y + 9);
    pen.stroke();
  }
}

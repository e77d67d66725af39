// The wall to scale: the server's drawing, with what can be taken by hand in groups of their own.
import { address, store } from "./api.js";
import { find } from "./dom.js";

const SVG = "http://www.w3.org/2000/svg";

export function s(tag, props = {}, ...children) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(props)) if (value !== null && value !== undefined) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

function drawn(text, props = {}) {
  const group = s("g", props);
  group.innerHTML = text;
  return group;
}

const show = { nails: true, zones: false, sheets: false };
export const shown = show;

// A wall that is drawn, without anything to take: for choosing between arrangements.
export function smallWall(screen, label) {
  const svg = s("svg", { viewBox: screen.box.join(" "), role: "img", "aria-label": label });
  svg.append(drawn(screen.wall));
  for (const part of [...screen.features, ...screen.frames]) svg.append(drawn(part.drawn));
  return svg;
}

let zones = { drawn: "" };
export function zonesAre(told) { zones = told; }

export function drawWall(keep) {
  const { state } = store;
  const screen = state.screen;
  const k = 1 / screen.scale;
  const svg = s("svg", { viewBox: screen.box.join(" "), role: "group", "aria-label": "The wall: frames and what is on it. Arrow keys move what is chosen.", id: "drawing" });
  svg.append(drawn(screen.wall, { class: "behind" }));
  if (state.lines) svg.append(linesGroup(state, k, screen.box));
  state.features.forEach((feature, at) => svg.append(featureGroup(feature, screen.features[at], k)));
  if (show.zones) svg.append(drawn(zones.drawn, { class: "zones" }));
  for (const part of screen.frames) svg.append(frameGroup(state, part, k));
  if (show.nails) svg.append(nailGroup(state, k));
  if (show.sheets && store.sheets) svg.append(sheetGroup(store.sheets, k));
  svg.append(s("g", { id: "guides" }));
  find("wall").querySelector("svg#drawing")?.remove();
  find("wall").prepend(svg);
  mark();
  if (keep) svg.querySelector(`[data-key="${CSS.escape(keep)}"]`)?.focus({ preventScroll: true });
}

function frameGroup(state, part, k) {
  const frame = state.frames.find((one) => one.id === part.name);
  const [x0, y0, x1, y1] = part.rect;
  const title = frame.title ? `, ${frame.title}` : "";
  const label = `Frame ${frame.id}${title}, ${frame.known.width} wide, ${frame.known.height} high`;
  const group = drawn(part.drawn, { class: "take frame", tabindex: 0, role: "button", "aria-label": label, "data-frame": frame.id, "data-key": `frame ${frame.id}` });
  if (frame.image && !frame.imageMissing) {
    const [a, b, c, d] = part.window;
    group.append(s("image", { href: address("/picture", { frame: frame.id, v: frame.imageFile }), x: a * k, y: -d * k, width: (c - a) * k, height: (d - b) * k }));
  }
  const size = Math.min(0.34 * (y1 - y0), (1.1 * (x1 - x0)) / Math.max(1.6, frame.id.length)) * k;
  group.append(
    s("text", { x: ((x0 + x1) / 2) * k, y: -((y0 + y1) / 2) * k, dy: "0.35em", "font-size": Math.min(size, 9), class: frame.image && !frame.imageMissing ? "id on-picture" : "id" }, frame.id),
    s("rect", { class: "hold", x: x0 * k, y: -y1 * k, width: (x1 - x0) * k, height: (y1 - y0) * k }),
    s("title", {}, label));
  return group;
}

function featureGroup(feature, part, k) {
  const [x0, y0, x1, y1] = part.rect;
  const group = drawn(part.drawn, { class: "take feature", tabindex: 0, role: "button", "aria-label": `On the wall: ${feature.called}`, "data-feature": feature.key, "data-key": `feature ${feature.key}` });
  const wide = (x1 - x0) * k;
  const size = Math.max(2.6, Math.min(4.5, (1.4 * wide) / feature.name.length));
  const inside = size * feature.name.length * 0.55 < wide;
  group.append(
    s("text", { x: ((x0 + x1) / 2) * k, y: inside ? -((y0 + y1) / 2) * k : -y0 * k + 3.6, dy: inside ? "0.35em" : 0, "font-size": inside ? size : 2.8, class: "name" }, feature.name),
    s("rect", { class: "hold", x: x0 * k, y: -y1 * k, width: wide, height: (y1 - y0) * k }),
    s("title", {}, feature.called));
  return group;
}

function linesGroup(state, k, box) {
  const { centre, level, slope } = state.lines; // up a stair the line climbs, and is called by its slope
  const [left, right] = [box[0] + 4, box[0] + box[2] - 4];
  const up = (x) => -level * k - slope * (x - centre * k);
  const turned = slope ? `rotate(${(-Math.atan(slope) * 180) / Math.PI} ${left + 3} ${up(left + 3) - 1})` : null;
  return s("g", { class: "lines", "aria-hidden": "true" },
    s("line", { x1: centre * k, x2: centre * k, y1: box[1] + 4, y2: 0, class: "centre" }),
    s("line", { x1: left, x2: right, y1: up(left), y2: up(right), class: "level" }),
    s("text", { x: left + 3, y: up(left + 3) - 1, "font-size": 3, transform: turned }, slope ? "pitch line" : "level line"),
    s("text", { x: centre * k + 1, y: box[1] + 11, "font-size": 3 }, "centre line"));
}

function nailGroup(state, k) {
  const group = s("g", { class: "nails", "aria-hidden": "true" });
  for (const nail of state.nails) {
    const [x, y] = [nail.x * k, -nail.y * k];
    group.append(s("g", { "data-of": nail.frame }, s("circle", { cx: x, cy: y, r: 1.3 }), s("path", { d: `M${x - 2} ${y}h4M${x} ${y - 2}v4` }), s("title", {}, `${nail.name}: ${nail.words}`)));
  }
  return group;
}

function sheetGroup(windows, k) {
  const group = s("g", { class: "sheets", "aria-hidden": "true" });
  for (const [name, [x0, y0, x1, y1]] of windows) {
    group.append(s("rect", { x: x0 * k, y: -y1 * k, width: (x1 - x0) * k, height: (y1 - y0) * k }),
      s("text", { x: x0 * k + 1.5, y: -y1 * k + 4.5, "font-size": 4 }, name));
  }
  return group;
}

// What is chosen, and what a finding is about, stands out.
export function mark(about = null) {
  const svg = find("drawing");
  if (!svg) return;
  for (const group of svg.querySelectorAll(".take")) {
    group.classList.toggle("chosen", group.dataset.key === store.selected);
    group.classList.toggle("about", Boolean(about) && about.includes(group.dataset.frame));
  }
}

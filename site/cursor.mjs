// Reads a drawn curve by knob, tap or drag, and picks a place on a drawn map. It works from what
// stands in the drawing's data attributes and knows no trade. Everything is delegated, and what
// was read is read again after a morph.
const SVG = "http://www.w3.org/2000/svg";
const clamp = (value, low, high) => Math.min(Math.max(value, low), high);
const numbers = (text) => text.split(" ").map(Number);

// Where a pointer is within the plotted part of a drawing, from 0 to 1 across and down.
function shareOf(svg, { clientX, clientY }) {
  const [left, right, top, foot] = numbers(svg.dataset.plot);
  const { width, height } = svg.viewBox.baseVal;
  const frame = svg.getBoundingClientRect();
  const across = ((clientX - frame.left) / frame.width) * width;
  const down = ((clientY - frame.top) / frame.height) * height;
  return [clamp((across - left) / (right - left), 0, 1), clamp((down - top) / (foot - top), 0, 1)];
}

// A stroke of our own in a drawing; set only where it changes, since changes are watched below.
function draw(svg, name, attributes) {
  const old = svg.querySelector(`:scope > ${name}.cursor`);
  const stroke = old ?? svg.appendChild(document.createElementNS(SVG, name));
  for (const [key, value] of Object.entries({ class: "cursor", ...attributes })) {
    if (stroke.getAttribute(key) !== String(value)) stroke.setAttribute(key, value);
  }
}

// ---- Reading a curve ----

const read = new Map(); // id of a figure → the place read

// Columns stand one a line, parted by tabs: how many places share an entry, then the entries, over
// and over. Below zero stands for figures, with those between on the straight line that is drawn.
function between(figures, at) {
  const from = Math.floor(at);
  const next = figures[from + 1] ?? figures[from];
  return Math.round(figures[from] + (next - figures[from]) * (at - from));
}

function wordsAt({ words, columns }, place) {
  const texts = columns.split("\n").map((column) => {
    const [every, ...entries] = column.split("\t");
    if (every < 0) return between(entries.map(Number), place / -every);
    return entries[Math.floor(place / every) % entries.length];
  });
  return words.replace(/\{(\d+)\}/g, (_, column) => texts[column]);
}

function readAt(figure, asked) {
  const reading = figure.querySelector(".reading");
  const knob = reading.querySelector("input");
  const place = clamp(Math.round(asked), Number(knob.min), Number(knob.max));
  const words = wordsAt(reading.dataset, place);
  read.set(figure.id, place);
  if (knob.value !== String(place)) knob.value = place;
  // the line below says the rest, so that nothing is heard twice
  const heard = words.split(": ")[0];
  if (knob.ariaValueText !== heard) knob.ariaValueText = heard;
  const said = reading.querySelector("output");
  if (said.textContent !== words) said.textContent = words;
  for (const svg of figure.querySelectorAll("svg[data-plot]")) {
    const [left, right, top, foot, from, to] = numbers(svg.dataset.plot);
    const x = (left + ((right - left) * (place - from)) / (to - from)).toFixed(1);
    const visibility = place >= from && place <= to ? "visible" : "hidden";
    draw(svg, "line", { x1: x, x2: x, y1: top, y2: foot, visibility });
  }
}

const curveOf = (element) => element.closest?.("figure:has(.reading)");

// The knob is no field of a plan: what it does stays here.
for (const kind of ["input", "change"]) {
  const take = (event) => {
    if (!event.target.matches(".reading input")) return;
    event.stopImmediatePropagation();
    readAt(curveOf(event.target), event.target.value);
  };
  document.addEventListener(kind, take, true);
}

document.addEventListener("click", ({ target }) => {
  const button = target.closest("button[data-by]");
  const figure = button && curveOf(button);
  if (figure) readAt(figure, (read.get(figure.id) ?? 0) + Number(button.dataset.by));
});

function point(event) {
  const svg = event.isPrimary && event.target.closest?.("svg[data-plot]");
  const figure = svg && curveOf(svg);
  if (!figure) return;
  const [, , , , from, to] = numbers(svg.dataset.plot);
  readAt(figure, from + shareOf(svg, event)[0] * (to - from));
}

document.addEventListener("pointerdown", point);
document.addEventListener("pointermove", (event) => event.buttons && point(event));

// ---- Picking a place on a map ----

// An axis is two ends and the letters of its two sides, as “-180 180 W E”; a grain is one step.
function axisOf(text) {
  const [from, to, under, over] = text.split(" ");
  return { from: Number(from), to: Number(to), under, over };
}

const placeOn = ({ from, to }, share) => from + (to - from) * share;
const shareOn = ({ from, to }, place) => (place - from) / (to - from);
const spoken = ({ under, over }, place) =>
  Math.round(place) === 0 ? "0" : `${Math.abs(Math.round(place))} ${place < 0 ? under : over}`;

function axes(map) {
  return [axisOf(map.dataset.down), axisOf(map.dataset.across)];
}

// Show where the mark would stand; what is picked is [down, across], in the axes' own figures.
function aim(map, picked) {
  const sides = axes(map);
  map.dataset.aim = picked.join(" ");
  const said = map.parentElement.querySelector("output");
  said.textContent = sides.map((side, place) => spoken(side, picked[place])).join(", ");
  for (const svg of map.querySelectorAll("svg[data-plot]")) {
    const [left, right, top, foot] = numbers(svg.dataset.plot);
    const [down, across] = sides.map((side, place) => shareOn(side, picked[place]));
    const cx = (left + (right - left) * across).toFixed(1);
    const cy = (top + (foot - top) * down).toFixed(1);
    draw(svg, "circle", { cx, cy, r: 9 });
  }
}

// The place is written into the map's own hidden field, as if it were typed there: one step to undo.
function set(map) {
  const field = document.querySelector(`input[name="${map.dataset.field}"]`);
  if (!field) return;
  const picked = numbers(map.dataset.aim);
  field.value = axes(map).map((side, place) => spoken(side, picked[place])).join(", ");
  field.dispatchEvent(new Event("change", { bubbles: true }));
}

document.addEventListener("click", (event) => {
  const map = event.target.closest("[data-field]");
  const svg = event.target.closest("svg[data-plot]");
  if (!map || !svg) return;
  const [across, down] = shareOf(svg, event);
  const sides = axes(map);
  aim(map, [placeOn(sides[0], down), placeOn(sides[1], across)].map(Math.round));
  set(map);
});

const MOVES = { ArrowUp: [1, 0], ArrowDown: [-1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] };

document.addEventListener("keydown", (event) => {
  const map = event.target;
  if (!map.matches("[data-field]") || event.ctrlKey || event.metaKey || event.altKey) return;
  const move = MOVES[event.key];
  if (!move && event.key !== "Enter") return;
  event.preventDefault();
  const now = numbers(map.dataset.aim ?? map.dataset.at ?? "0 0");
  if (!move) return void (map.dataset.aim && set(map));
  const ends = axes(map).map(({ from, to }) => [Math.ceil(Math.min(from, to)), Math.floor(Math.max(from, to))]);
  aim(map, now.map((place, axis) => clamp(place + move[axis] * map.dataset.grain, ...ends[axis])));
});

// ---- After a morph ----

function again() {
  for (const [id, place] of read) {
    const figure = document.getElementById(id);
    if (figure?.querySelector(".reading")) readAt(figure, place);
  }
}

const page = document.getElementById("page");
const watched = { subtree: true, childList: true, attributeFilter: ["data-columns", "data-plot"] };
new MutationObserver(again).observe(page, watched);

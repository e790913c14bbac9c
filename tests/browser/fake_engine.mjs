// Stands in for the engine's worker, so that the page script is tried alone: a page with one field
// of each kind, a slow start and slow answers when asked, long work, and a list of every event.
const START = 0; // milliseconds; a test may put in another number
const events = [];
const undone = [];
let fields = { boat: "Alder", run: "6.1", amps: "14", shore: "no", volts: "12", size: "8" };
let rows = ["L1", "L2", "L3"];
let settings = {};
let route = "";
let tab = "";
let pause = 0;
let slices = 0; // of long work, done
let isWorking = false;
const WORK = 40; // slices
let waiting = [];
let isReady = false;

const text = (words) =>
  String(words).replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
const field = (name) =>
  `<div class="field" id="of-${name}"><label for="f-${name}">${name}</label>` +
  `<input id="f-${name}" name="${name}" value="${text(fields[name])}"></div>`;
const pick = (name, value, kind) =>
  `<label><input type="${kind}" id="${name}-${value}" name="${name}" ` +
  `${kind === "radio" ? `value="${value}"` : ""} ${fields[name] === value ? "checked" : ""}>${value}</label>`;
const lines = "<p>One more line, so that the page can be scrolled.</p>".repeat(40);

function page() {
  if (route.startsWith("#other")) {
    return `<h1>Another page</h1><details><summary>Why?</summary><p>So.</p></details>${lines}`;
  }
  return `<h1>${text(fields.boat)}</h1>
<p id="slices">${slices}</p><p id="answer">run ${text(fields.run)}, amps ${text(fields.amps)}, shore ${fields.shore}, ${fields.volts} V, size ${fields.size}</p>
<details class="why" id="why"><summary>Why this number?</summary><p>Because of ${text(fields.run)}.</p></details>
<form data-live>${field("run")}${field("amps")}</form>
${field("boat")}
<div class="ticks">${pick("shore", "yes", "checkbox")}</div>
<fieldset class="choices"><legend>Volts</legend>${pick("volts", "12", "radio")}${pick("volts", "24", "radio")}</fieldset>
<div class="field"><label for="f-size">Size</label><select id="f-size" name="size">
${["6", "8", "10"].map((size) => `<option${size === fields.size ? " selected" : ""}>${size}</option>`).join("")}</select></div>
<form data-do="find"><label class="field">Find<input id="f-find" name="find" value=""></label><button class="main">Find</button></form>
<div class="actions"><button data-do="add">Add</button><button data-do="delete">Delete</button>
<button data-do="work">Work</button><button data-do="rest">Rest</button>
<button data-do="break">Break</button><button data-do="view" data-arg="dim-red">Dim</button></div>
<table class="grid"><tbody>${rows.map((row) => `<tr id="${row}"><td><a class="whole" href="#other/${row}">${row}</a></td><td>a cell</td></tr>`).join("")}</tbody></table>
${lines}<p id="foot"><a href="#other">Elsewhere</a></p>`;
}

const strip = () => `<span class="boat">${text(fields.boat)}</span><span class="state" id="tab">${tab}</span>
<div class="tools"><button data-do="undo">Undo</button><button data-local="lock">Lock</button></div>
<span class="progress" data-progress></span>`;
const rail = `<a href="#">Home</a><a href="#other">Other</a>`;
const record = () => ({ id: "p1", name: fields.boat, text: JSON.stringify(fields) });

const apply = {
  open(event) {
    ({ route, settings, tab } = event);
    if (event.record) fields = JSON.parse(event.record);
  },
  go: (event) => void ({ route } = event),
  set({ path, value, typing }) {
    if (!typing) undone.push({ ...fields });
    fields[path] = path === "run" && !typing ? value.replace(",", ".") : value;
    return typing ? {} : { record: record() };
  },
  do({ name, arg }) {
    if (name === "undo" && undone.length) fields = undone.pop();
    if (name === "add") rows = [`L${rows.length + 1}`, ...rows];
    if (name === "pause") pause = Number(arg);
    if (name === "work" || name === "rest") isWorking = name === "work";
    if (name === "break") throw new Error("broken on purpose");
    if (name === "delete") return { drop: "p1" };
    if (name === "view") return { settings: { ...settings, view: arg } };
    return name === "undo" ? { record: record() } : {};
  },
  state: () => ({}),
  more() {
    slices += 1;
    if (slices === WORK) isWorking = false;
    return {};
  },
  file: () => ({}),
};

function drain() {
  const batch = waiting;
  waiting = [];
  if (!batch.length) return;
  const { n } = batch.at(-1);
  const reply = {};
  try {
    for (const { event } of batch) {
      events.push(event);
      Object.assign(reply, apply[event.kind](event));
    }
  } catch (error) {
    self.postMessage({ n, failed: error.message });
    return;
  }
  if (isWorking) reply.more = true;
  const log = `<pre id="events" hidden>${text(JSON.stringify(events))}</pre>`;
  reply.fragments = [["strip", strip()], ["rail", rail], ["page", page() + log]];
  reply.title = `${fields.boat} ${route}`;
  setTimeout(() => self.postMessage({ n, reply }), pause);
}

self.onmessage = ({ data }) => {
  waiting.push(data);
  if (isReady) drain();
};

setTimeout(() => {
  isReady = true;
  self.postMessage({ ready: true, how: "snapshot", ms: START });
  drain();
}, START);

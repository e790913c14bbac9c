// The page script: sends what the reader does to the engine's worker, and morphs in what returns.
// It knows no trade.
import { Idiomorph } from "./idiomorph.mjs";
import * as store from "./store.mjs";
import "./cursor.mjs";

const root = document.documentElement;
const byId = (id) => document.getElementById(id);
const make = (tag, properties) => Object.assign(document.createElement(tag), properties);
const REGIONS = ["strip", "rail", "page"];

// Small memory of this device. Private windows may refuse it; then only the next start is slower.
const kept = {
  get(key) {
    try {
      return JSON.parse(localStorage.getItem(`ohmward.${key}`));
    } catch {
      return null;
    }
  },
  put(key, value) {
    try {
      localStorage.setItem(`ohmward.${key}`, JSON.stringify(value));
    } catch {
      // full or forbidden
    }
  },
};

// ---- To the engine ----

const OPENING = 1; // the number of the first message
const name = location.search === "?boot=files" ? "files" : "";
const worker = new Worker(new URL("worker.mjs", import.meta.url), { type: "module", name });
const unanswered = new Map(); // number → event
let newest = OPENING;
let opened = false;
let writer = true;

function send(event) {
  const n = ++newest;
  unanswered.set(n, event);
  root.toggleAttribute("data-busy", true);
  if (opened) worker.postMessage({ n, event });
  setTimeout(() => unanswered.has(n) && progress("Still working"), 1000);
  return n;
}

// Long work comes in slices: each is asked for when the last is shown, and whatever the reader does
// goes first. It keeps nobody waiting, so it does not count as unanswered.
let slice = null; // the number of the slice asked for

function askMore() {
  if (slice) return;
  slice = Infinity; // asked for once the page has had its turn
  setTimeout(() => {
    slice = ++newest;
    worker.postMessage({ n: slice, event: { kind: "more" } });
  });
}

const tell = (key, value) => send({ kind: "state", key, value });

function progress(words) {
  const span = document.querySelector("#strip [data-progress]");
  if (span) span.textContent = words;
}

// ---- Fields: what is typed is never lost and never written over ----

// name → { element, n }: the field keeps its own value until reply n, or while half typed.
const held = new Map();
const HALF_TYPED = Infinity;
const keyOf = (element) => element.name || element;
const isHalfTyped = (element) => held.get(keyOf(element))?.n === HALF_TYPED;
const isField = (element) => element.matches?.("input:not([type=file]), select, textarea");
const isText = (element) => element.matches("textarea, input:not([type=checkbox], [type=radio])");
// A form with data-do goes to the engine as a whole, when it is sent.
const goesAlone = (element) => element.name && !element.closest("form[data-do]");
const valueOf = ({ type, checked, value }) => (type === "checkbox" ? (checked ? "yes" : "no") : value);
let liveTimer = 0;

function commit(element) {
  clearTimeout(liveTimer);
  const n = send({ kind: "set", path: element.name, value: valueOf(element), typing: false });
  held.set(keyOf(element), { element, n });
}

function commitHalfTyped() {
  for (const { element, n } of [...held.values()]) {
    if (n === HALF_TYPED && goesAlone(element)) commit(element);
  }
}

function formValues(form) {
  const fields = [...form.elements].filter(
    (element) => element.name && isField(element) && (element.type !== "radio" || element.checked),
  );
  return Object.fromEntries(fields.map((element) => [element.name, valueOf(element)]));
}

let lastTap = { key: "", at: -Infinity };

function act({ dataset: { do: name, arg = "" } }, form) {
  // A drop of water or a trembling hand taps twice: the same command within 0.3 s is ignored.
  const tap = { key: `${name} ${arg}`, at: performance.now() };
  if (tap.key === lastTap.key && tap.at - lastTap.at < 300) return;
  lastTap = tap;
  commitHalfTyped();
  if (name === "update-now") return void updateNow();
  const n = send({ kind: "do", name, arg, ...(form && { form: formValues(form) }) });
  for (const hold of held.values()) if (form && hold.element.form === form) hold.n = n;
}

document.addEventListener("input", ({ target }) => {
  if (!isField(target)) return;
  held.set(keyOf(target), { element: target, n: HALF_TYPED });
  if (!isText(target) || !target.closest("form[data-live]") || !goesAlone(target)) return;
  clearTimeout(liveTimer);
  const { name: path } = target;
  liveTimer = setTimeout(() => send({ kind: "set", path, value: target.value, typing: true }), 120);
});

document.addEventListener("change", ({ target }) => {
  if (target.matches("[data-file]")) sendFile(target);
  else if (isField(target) && goesAlone(target)) commit(target);
});

// Typed and typed back again gives no change event, yet the field must be let go.
document.addEventListener("focusout", ({ target }) => {
  if (isHalfTyped(target) && goesAlone(target)) commit(target);
});

document.addEventListener("focusin", ({ target }) => {
  if (!target.matches("input") || !isField(target) || !isText(target)) return;
  target.select();
  // a tap sets its caret after that; typing may come before the next frame
  requestAnimationFrame(() => {
    if (document.activeElement === target && !isHalfTyped(target)) target.select();
  });
});

async function sendFile(input) {
  const [file] = input.files;
  if (!file) return;
  const { name, size } = file;
  const fits = size <= 2 * 1024 * 1024;
  send({ kind: "file", name, text: fits ? await file.text() : null, size });
  input.value = ""; // so that the same file can be chosen again
}

function nextField(element) {
  const scope = element.closest("form, table, main") ?? document;
  const fields = [...scope.querySelectorAll("input, select, textarea")].filter(
    (field) => field === element || (!field.disabled && field.offsetParent),
  );
  return fields[fields.indexOf(element) + 1];
}

document.addEventListener("keydown", (event) => {
  const { target } = event;
  const key = event.key.toLowerCase();
  if (key === "enter" && target.matches("input") && isText(target) && !event.isComposing) {
    event.preventDefault();
    const next = nextField(target);
    if (next) next.focus();
    else if (target.closest("form[data-do]")) target.form.requestSubmit();
    else target.blur();
  }
  // In a half-typed field the undo keys belong to the typing.
  if (!(event.ctrlKey || event.metaKey) || !"zy".includes(key) || isHalfTyped(target)) return;
  event.preventDefault();
  send({ kind: "do", name: key === "y" || event.shiftKey ? "redo" : "undo", arg: "" });
});

document.addEventListener("click", (event) => {
  const { target } = event;
  const touched = target.closest("a, button, input, label, select, summary, textarea");
  for (const menu of document.querySelectorAll(".menu[open]")) {
    if (!menu.contains(target) || touched?.matches("a, button")) menu.open = false;
  }
  rememberPlace(target);
  const { local, do: command } = touched?.dataset ?? {};
  if (local || command) event.preventDefault();
  if (local) locals[local]();
  else if (command && touched.ariaDisabled !== "true") act(touched, touched.closest("form"));
  else if (!touched && getSelection().isCollapsed) {
    target.closest("tr, .row")?.querySelector("a.whole")?.click();
  }
});

document.addEventListener("submit", (event) => {
  event.preventDefault();
  if (event.target.dataset.do) act(event.target, event.target);
});

// ---- Going from page to page ----

history.scrollRestoration = "manual";
const pathNow = () => location.hash.split("?")[0];
let path = "";
let going = history.state && { n: OPENING, place: history.state };
let scrollTimer = 0;

// Each entry of the history knows where the reader was, so that back returns to the same row.
function rememberPlace(target) {
  const row = target?.closest?.("#page [id]")?.id ?? history.state?.row;
  history.replaceState({ y: scrollY, row }, "");
}

addEventListener("scroll", () => {
  clearTimeout(scrollTimer);
  scrollTimer = setTimeout(rememberPlace, 400);
});

addEventListener("hashchange", () => {
  clearTimeout(scrollTimer); // that place was on the page just left
  commitHalfTyped();
  going = { n: send({ kind: "go", route: location.hash }), place: history.state };
});

function focusOn(element) {
  if (!element) return;
  const folded = element.matches("summary") ? null : element.closest("details:not([open])");
  if (folded) folded.open = true;
  if (element.tabIndex < 0) element.tabIndex = -1; // headings and rows take the focus only so
  element.focus({ preventScroll: true });
}

function arrive(place, isNewPage) {
  if (place) {
    const row = place.row && byId(place.row);
    if (row) focusOn(row.querySelector("a, button, input") ?? row);
    scrollTo(0, place.y);
  } else if (isNewPage) {
    focusOn(document.querySelector("#page h1") ?? byId("page"));
    scrollTo(0, 0);
  }
}

// ---- From the engine ----

let current = null; // the newest record, also when it could not be stored
let keepTimer = 0;
let sayTimer = 0;
let saidAt = -Infinity;

const morphRules = {
  morphStyle: "innerHTML",
  callbacks: {
    beforeAttributeUpdated(name, element, how) {
      if (name === "open") return !element.matches("details"); // only the reader opens and closes
      if (name === "tabindex" && how === "remove") return false; // the element may have the focus
      if (!["value", "checked", "selected"].includes(name)) return true;
      return !held.has(keyOf(element.closest("select") ?? element));
    },
  },
};

function showFragments(fragments, isNewPage) {
  const around = [];
  for (let up = document.activeElement; (up = up?.parentElement); ) if (up.id) around.push(up.id);
  for (const [id, html] of fragments) {
    const region = byId(id);
    if (!region) continue;
    // Another page is not a changed page: nothing of the old one may linger in it.
    if (isNewPage && region.closest("#page")) region.innerHTML = html;
    else Idiomorph.morph(region, html, morphRules);
  }
  // A field with an id lives on through a morph; one that is gone was meant to go.
  for (const [key, { element }] of held) if (!element.isConnected) held.delete(key);
  // What had the focus may be gone, such as the button of a row deleted: stay near it.
  if (around.length && document.activeElement === document.body && !isNewPage) {
    focusOn(byId(around.find((id) => byId(id))));
  }
}

function useSettings({ view = "plain", hand = "left", extra_dim: extra = 0 }) {
  Object.assign(root.dataset, { view, hand, extra });
  document.querySelector("[name=theme-color]").content = getComputedStyle(root).backgroundColor;
}

function announce(words) {
  clearTimeout(sayTimer);
  byId("say").textContent = ""; // what was said before no longer holds
  const speak = () => {
    saidAt = performance.now();
    byId("say").textContent = words;
  };
  sayTimer = setTimeout(speak, Math.max(0, saidAt + 2000 - performance.now())); // one in two seconds
}

// The made-up boat is never shown to a returning owner as their own.
function keepLastPage() {
  const isOwn = writer && current && !document.querySelector("#strip .made-up");
  if (!isOwn || "waking" in root.dataset) return;
  const [strip, rail, page] = REGIONS.map((id) => byId(id).innerHTML);
  kept.put("page", { strip, rail, page, route: location.hash });
}

function settle(n) {
  for (const old of unanswered.keys()) if (old <= n) unanswered.delete(old);
  for (const [key, hold] of held) if (hold.n <= n) held.delete(key);
  root.toggleAttribute("data-busy", unanswered.size > 0);
  progress("");
}

function take(n, reply) {
  settle(n);
  if (slice <= n) slice = null;
  const arrival = going?.n <= n ? going : null;
  if (arrival) going = null;
  if (reply.route) history.replaceState(history.state, "", reply.route);
  const isNewPage = path !== pathNow();
  path = pathNow();
  if (isNewPage) commitHalfTyped();
  showFragments(reply.fragments, isNewPage && arrival);
  delete root.dataset.waking;
  if (reply.title) document.title = reply.title;
  if (arrival) arrive(arrival.place, isNewPage);
  for (const key in replyParts) if (reply[key]) replyParts[key](reply[key]);
  clearTimeout(keepTimer);
  keepTimer = setTimeout(keepLastPage, 500);
}

const replyParts = {
  settings(settings) {
    kept.put("settings", settings);
    useSettings(settings);
  },
  focus(id) {
    focusOn(byId(id));
    byId(id)?.scrollIntoView({ block: "nearest" });
  },
  say: announce,
  left: (records) => records.forEach(keepRecord), // plans edited and left within one batch
  record: keepRecord,
  drop: forget,
  last: ({ id }) => writer && store.rememberLast(id).catch(() => {}),
  want: async (id) => send({ kind: "record", id, record: await store.read(id).catch(() => null) }),
  download,
  copy,
  share,
  print: () => print(),
  more: askMore,
};

function download({ name, type, text }) {
  const href = URL.createObjectURL(new Blob([text], { type }));
  make("a", { href, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
}

// Some browsers copy only at the very tap, and none over plain http: then the reader does it.
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
  } catch {
    const box = make("dialog", { onclose: () => box.remove() });
    const area = make("textarea", { value: text, readOnly: true, ariaLabel: "Text to copy" });
    box.append("Copy this text:", area, make("button", { textContent: "Close", onclick: () => box.close() }));
    document.body.append(box);
    box.showModal();
    area.select();
  }
}

async function share({ title, url }) {
  const link = { title, url: new URL(url, location.href).href };
  try {
    if (!navigator.canShare?.(link)) throw new Error("no share sheet");
    await navigator.share(link);
  } catch (error) {
    if (error.name !== "AbortError") await copy(link.url);
  }
}

// ---- Keeping the plan ----

let savedAt = "";
let planNames = "";

function tellPlans(plans) {
  const names = JSON.stringify(plans.map(({ id, name }) => [id, name]));
  if (names !== planNames) tell("plans", plans);
  planNames = names;
}

async function keepRecord(record) {
  current = record;
  if (!writer) return;
  try {
    const plans = await store.save(record);
    const now = new Date().toTimeString().slice(0, 5);
    if (now !== savedAt) tell("saved", now);
    savedAt = now;
    byId("stop")?.remove();
    tellPlans(plans);
    if (!kept.get("had")) askToKeep();
  } catch (error) {
    savedAt = "";
    tell("saved", `failed: ${error.message}`);
    stop("The plan could not be saved on this device", error);
  }
}

async function askToKeep() {
  kept.put("had", true); // should the store ever be found empty, it was not always so
  await navigator.storage?.persist?.().catch(() => {});
  tellStorage();
}

async function tellStorage() {
  const granted = await navigator.storage?.persisted?.().catch(() => {});
  tell("storage", { true: "kept", false: "may be cleared" }[granted] ?? "unknown");
}

async function forget(id) {
  if (!writer) return;
  if (current?.id === id) current = null;
  kept.put("page", null);
  await store.drop(id).then(tellPlans, (error) => tell("saved", `failed: ${error.message}`));
}

async function updateNow() {
  const { update } = await import("./offline.mjs");
  flush();
  await store.settled();
  update();
}

// The last dependable moment before a tablet throws the page away.
function flush() {
  commitHalfTyped();
  keepLastPage();
  const events = [...unanswered.values()].filter(({ kind }) => kind === "set");
  if (writer && current) kept.put("unsent", { id: current.id, events });
}

document.addEventListener("visibilitychange", () => document.hidden && flush());
addEventListener("pagehide", flush);

// ---- Buttons of the page's own ----

const locals = { print: () => print(), lock, skip: () => focusOn(byId("page")) };

// Splash lock: water taps anywhere, but hardly here and then there. The button moves at every tap.
function lock() {
  const button = make("button");
  const cover = make("div", { className: "lock" });
  let taps;
  let isLeft = Math.random() < 0.5;
  const show = (count) => {
    taps = count;
    isLeft = !isLeft;
    button.className = isLeft ? "left" : "right";
    button.textContent = ["Unlock", "Unlock: now here"][taps];
  };
  const freeze = (frozen) => REGIONS.forEach((id) => (byId(id).inert = frozen));
  cover.onclick = ({ target }) => {
    if (target !== button) show(0); // a splash in between starts again
    else if (taps === 0) show(1);
    else {
      cover.remove();
      freeze(false);
      document.querySelector("[data-local=lock]")?.focus();
    }
  };
  cover.append(make("p", { textContent: "Locked against splashes. Two taps unlock it." }), button);
  document.body.append(cover);
  freeze(true);
  show(0);
  button.focus();
}

// Paper shows what is folded away on the screen.
const openForPrint = (selector, value) => () => {
  for (const part of document.querySelectorAll(selector)) {
    if (value) part.setAttribute("open", value);
    else part.removeAttribute("open");
  }
};
addEventListener("beforeprint", openForPrint("#page details:not([open])", "print"));
addEventListener("afterprint", openForPrint("[open=print]", ""));

// ---- When something breaks ----

function stop(what, error) {
  if (byId("stop")) return;
  const words = make("p", { textContent: `${what} (${error?.message ?? error}).` });
  const save = make("button", { textContent: "Save a copy to a file now" });
  const again = make("button", { textContent: "Load the page again", onclick: () => location.reload() });
  save.onclick = async () => {
    const text = current?.text ?? (await store.begin().catch(() => null))?.record;
    if (text) download({ name: "ohmward-plan.json", type: "application/json", text });
    else words.textContent += " No plan is stored on this device.";
  };
  const box = make("div", { id: "stop", className: "stop-banner", role: "alert" });
  box.append(words, save, again);
  document.body.prepend(box);
}

addEventListener("error", ({ error }) => error && stop("The page met an error", error));
addEventListener("unhandledrejection", ({ reason }) => stop("The page met an error", reason));
worker.onerror = ({ message }) => stop("The calculator did not start", message);

worker.onmessage = ({ data }) => {
  if (data.reply) take(data.n, data.reply);
  else if (data.progress) showLoading(data.progress);
  else if (data.ready) calculatorReady(data);
  else if (data.failed) {
    settle(data.n ?? 0); // what broke the calculator is not sent a second time
    stop("The calculator stopped", data.failed);
  }
};

function showLoading({ name, done, of }) {
  const mega = (bytes) => (bytes / 1e6).toFixed(1);
  const isLong = "waking" in root.dataset && performance.now() > 1000;
  if (isLong) progress(`${name} ${mega(done)} of ${mega(of)} MB; you can begin`);
}

function calculatorReady({ how, ms }) {
  Object.assign(root.dataset, { how, ms });
  const getReady = () =>
    import("./offline.mjs")
      .then((offline) => offline.begin(root.dataset.version, tell, kept))
      .catch(({ message }) => tell("offline", `failed: ${message}`));
  setTimeout(getReady, 1500); // the reader's first touch comes first
}

// ---- Start ----

async function start() {
  const settings = kept.get("settings") ?? {};
  const last = kept.get("page");
  const unsent = kept.get("unsent");
  useSettings(settings);
  if (last?.route && !location.hash) history.replaceState(history.state, "", last.route);
  path = pathNow();
  progress("waking");
  writer = await store.isWriter();
  let stored = { plans: [], id: null, record: null };
  let trouble;
  try {
    stored = await store.begin();
  } catch (error) {
    trouble = error; // a private window: the page works, and says that it cannot keep the plan
  }
  const { plans, id, record } = stored;
  if (record) current = { id, text: record };
  planNames = JSON.stringify(plans.map((plan) => [plan.id, plan.name]));
  const now = new Date();
  const today = new Date(now - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  const { version } = root.dataset;
  const base = location.href.split("#")[0];
  const tab = writer ? "writer" : "reader";
  const post = (n, event) => worker.postMessage({ n, event });
  post(OPENING, { kind: "open", record, settings, route: location.hash, plans, today, version, tab, base });
  opened = true;
  // What was typed just before the last page was thrown away, if it belongs to this plan.
  if (writer && record && unsent?.id === id) unsent.events.forEach((event) => post(OPENING, event));
  unanswered.forEach((event, n) => post(n, event));
  kept.put("unsent", null);
  if (trouble) tell("saved", `failed: ${trouble.message}`);
  else if (record) tellStorage();
  else if (kept.get("had")) tell("storage", "lost");
  if (!writer) store.writerGone().then(() => location.reload());
}

start();

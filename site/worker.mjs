// The engine's worker: starts Python from a memory snapshot, or from files where that cannot be
// trusted, and hands events to engine.door. It knows the boot and the queue, and no trade.
import boot from "./python/boot.mjs";
import { loadPyodide } from "./python/pyodide.mjs";

const started = performance.now();
const base = new URL("./python/", import.meta.url).href;
const SITE_PACKAGES = "/lib/python3.14/site-packages/";
const PAGE = 4096; // bytes of memory
const EMPTY_ZIP = Uint8Array.of(80, 75, 5, 6, ...new Array(18).fill(0));

// ---- the queue: whatever waits is answered in one call ----

const waiting = [];
let answer = null; // engine.door.answer, once there is an engine
const bell = new MessageChannel();
// A message to ourselves comes after those already sent to us; a promise would come before.
const ring = () => bell.port2.postMessage(null);
bell.port1.onmessage = answerWaiting;
let newest = 0; // number of the last message from the page
let steps = 1; // of long work, in one slice
const SLICE = 80; // milliseconds aimed at
const opened = new Promise((resolve) => {
  self.onmessage = ({ data }) => { // set before anything is awaited, or early edits are lost
    newest = data.n;
    waiting.push(data);
    ring();
    resolve();
  };
});

function answerWaiting() {
  if (!answer || !waiting.length) return;
  const batch = waiting.splice(0);
  const { n } = batch.at(-1);
  const events = batch.map(({ event }) => (event.kind === "more" ? { ...event, steps } : event));
  const began = performance.now();
  try {
    const reply = JSON.parse(answer(JSON.stringify({ events })));
    self.postMessage({ n, reply });
    if (events.length === 1 && events[0].kind === "more") fitSlice(performance.now() - began);
  } catch (error) {
    self.postMessage({ n, failed: String(error.message ?? error) });
  }
}

// A tap waits for one slice at most, so a slice has as many steps as fit, on this machine.
function fitSlice(took) {
  steps = Math.max(1, Math.min(2 * steps, Math.floor((steps * SLICE) / took)));
}

function tell(key, value) {
  waiting.push({ n: newest, event: { kind: "state", key, value } });
  ring();
}

// ---- files: each is fetched once, counted, and checked by its hash before it is used ----

const realFetch = self.fetch.bind(self);
const packed = new Map(); // key in boot.files → promise of the bytes as shipped
const progress = { name: "calculator", done: 0, of: 0 };

function get(key) {
  if (!packed.has(key)) {
    progress.of += boot.files[key].size;
    const file = fetchChecked(boot.files[key]);
    file.catch(() => {}); // reported where it is awaited
    packed.set(key, file);
  }
  return packed.get(key);
}

async function fetchChecked({ name, size, sha256 }) {
  const response = await realFetch(base + name, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  const bytes = new Uint8Array(size);
  const refuse = () => {
    throw new Error(`${name}: not the file of this release`);
  };
  let at = 0;
  for (const reader = response.body.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    if (at + value.length > size) refuse();
    bytes.set(value, at);
    at += value.length;
    progress.done += value.length;
    if (!answer) self.postMessage({ progress });
  }
  // Without a secure context nothing can be hashed; the snapshot is not used then (see start).
  if (crypto.subtle && (await digest(bytes)) !== sha256) refuse();
  return bytes;
}

async function digest(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function unpacked(key, type) {
  const stream = new Blob([await get(key)]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream, { headers: { "content-type": type } });
}

async function bytesOf(key) {
  return new Uint8Array(await (await unpacked(key, "")).arrayBuffer());
}

function unpackParcel(FS, bytes) {
  const names = [];
  let at = 4 + new DataView(bytes.buffer).getUint32(0, true);
  for (const [name, length] of JSON.parse(new TextDecoder().decode(bytes.subarray(4, at)))) {
    const file = SITE_PACKAGES + name;
    FS.mkdirTree(file.slice(0, file.lastIndexOf("/")));
    FS.writeFile(file, bytes.subarray(at, at + length));
    at += length;
    names.push(name);
  }
  return names;
}

// ---- the runtime ----

// The glue is a megabyte of script: it too is shipped packed, and run from memory. Where a host's
// own policy refuses that, the same script is there as a plain file.
async function importGlue() {
  try {
    const script = await (await unpacked("glue", "text/javascript")).blob();
    return (await import(URL.createObjectURL(script))).default;
  } catch {
    return (await import("./python/pyodide.asm.mjs")).default;
  }
}

// Compiling takes longest, so it begins before Pyodide asks for it. Our own type on the response:
// with a wrong one, from the host, Pyodide would wait for ever.
const compiled = unpacked("wasm", "application/wasm").then(WebAssembly.compileStreaming);
const glue = importGlue();
let laidOut = null; // the memory as the .wasm file lays it out, before any code has run in it

WebAssembly.instantiateStreaming = async (_, imports) => {
  const module = await compiled;
  const instance = await WebAssembly.instantiate(module, imports);
  laidOut = new Uint8Array(instance.exports.memory.buffer).slice(0, boot.laidOut);
  return { module, instance };
};

// Never waits for what cannot come: fails as soon as one of the parts does.
async function create(settings, parts) {
  const failure = Promise.all([compiled, ...parts]).then(() => new Promise(() => {}));
  return Promise.race([(await glue)(settings), failure]);
}

// Pyodide fetches its .wasm and its library by address: both are answered from what we hold.
function load(library, options) {
  const answers = { "pyodide.asm.wasm": () => new Response(), "python_stdlib.zip": library };
  self.fetch = async (address, rest) =>
    answers[String(address).slice(base.length)]?.() ?? realFetch(address, rest);
  const lock = { info: boot.info, packages: {} };
  return loadPyodide({ indexURL: base, lockFileContents: lock, env: { ...boot.env }, ...options });
}

// ---- two ways to start ----

async function fromSnapshot() {
  const difference = bytesOf("snapshot");
  const data = bytesOf("data");
  const createPyodideModule = async (settings) => {
    const module = await create(settings, [difference, data]);
    restoreMemory(module, await difference);
    return module;
  };
  const head = Uint8Array.from(atob(boot.head), (each) => each.charCodeAt(0));
  const nothing = () => new Response(EMPTY_ZIP);
  const python = await load(nothing, { _loadSnapshot: head, createPyodideModule });
  unpackParcel(python.FS, await data); // files are not part of the memory
  return python;
}

// The snapshot holds the pages that differ from the memory as laid out, each as the difference.
function restoreMemory(module, difference) {
  if (module.HEAPU8.length < boot.heap) module.growMemory(boot.heap);
  module.HEAPU8.set(laidOut);
  module.HEAPU8.fill(0, laidOut.length);
  const count = Math.ceil(boot.heap / PAGE);
  const words = new Uint32Array(difference.buffer);
  const heap = module.HEAPU32;
  let from = Math.ceil(count / 32);
  for (let page = 0; page < count; page++) {
    if (!(difference[page >> 3] & (1 << (page & 7)))) continue;
    const end = (page + 1) * (PAGE / 4);
    for (let to = page * (PAGE / 4); to < end;) heap[to++] ^= words[from++];
  }
}

async function fromFiles() {
  const library = unpacked("stdlib", "");
  const parcels = [bytesOf("packages"), bytesOf("data")];
  const createPyodideModule = (settings) => create(settings, [library, ...parcels]);
  const fsInit = async (FS) => {
    for (const parcel of parcels) unpackParcel(FS, await parcel);
  };
  return load(() => library, { createPyodideModule, fsInit });
}

// After a start from the snapshot nothing needs these, but a late import might.
async function bringFiles(python) {
  const [library, packages] = await Promise.all([bytesOf("stdlib"), bytesOf("packages")]);
  python.FS.writeFile("/lib/python314.zip", library);
  unpackParcel(python.FS, packages);
  python.runPython("import importlib; importlib.invalidate_caches()");
}

// What no first page needs. A parcel that could not be had is tried again, ever more seldom, and at
// once when there is a connection again.
async function bringLater(python) {
  for (let pause = 5_000; ; pause *= 2) {
    try {
      const parcel = await bytesOf("later");
      await opened; // what the page says first goes first
      const names = unpackParcel(python.FS, parcel);
      python.runPython("import importlib; importlib.invalidate_caches()");
      tell("later", "here");
      return importAll(python, names);
    } catch (error) {
      packed.delete("later");
      await opened;
      tell("later", `missing: ${error.message}`);
      await new Promise((resolve) => {
        setTimeout(resolve, pause);
        self.addEventListener("online", resolve, { once: true });
      });
    }
  }
}

// One module at a time, from the lowest floor up, with a turn for the page in between: then the
// first page that needs them need not import them all at once.
async function importAll(python, names) {
  const { import_module: importOne } = python.pyimport("importlib");
  for (const name of names.filter((each) => each.endsWith(".pyc"))) {
    await new Promise((resolve) => setTimeout(resolve));
    importOne(name.replace(/(\/__init__)?\.pyc$/, "").replaceAll("/", "."));
  }
}

async function start() {
  let python;
  let how = "snapshot";
  try {
    if (self.name === "files") throw new Error("asked for");
    if (!crypto.subtle) throw new Error("no secure context to check the snapshot in");
    python = await fromSnapshot();
  } catch (error) {
    how = `files: ${error.message}`;
    python = await fromFiles();
  }
  answer = python.pyimport("engine.door").answer;
  self.postMessage({ ready: true, how, ms: Math.round(performance.now() - started) });
  ring();
  bringLater(python);
  if (how === "snapshot") await bringFiles(python).catch(() => {}); // then the next start will
  packed.clear(); // eleven megabytes that nobody needs any more
}

start().catch((error) => self.postMessage({ failed: String(error.message ?? error) }));

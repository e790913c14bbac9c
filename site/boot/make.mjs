// Makes everything of the boot that depends on Python: compiled files, memory snapshot, boot.json.
// build.py compresses what this writes and adds sizes and hashes.
// node --import ./deterministic.mjs make.mjs WORK
//   WORK/wheels holds the wheels of wheels.txt; the results go to WORK/python.
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import createPyodideModule from "../node_modules/pyodide/pyodide.asm.mjs";
import { loadPyodide } from "../node_modules/pyodide/pyodide.mjs";

const work = path.resolve(process.argv[2]);
const here = import.meta.dirname;
const engine = path.join(here, "../../engine");
const runtime = path.join(here, "../node_modules/pyodide");
const wheels = path.join(work, "wheels");
const out = path.join(work, "python");
const PAGE = 4096;
const BUILD_TOOL = "micropip";

// One environment for build and browser: what Python reads of it is frozen in the snapshot.
const env = { HOME: "/home/pyodide", PYTHONHASHSEED: "0" };
const { info } = JSON.parse(fs.readFileSync(path.join(runtime, "pyodide-lock.json")));
const nothingToLoad = { info, packages: {} };

const sha256 = (bytes) => createHash("sha256").update(bytes).digest("hex");
const canonical = (name) => name.toLowerCase().replace(/[-_.]+/g, "-");

// ---- what pint needs, worked out by micropip and compared with the list ----

function listedWheels() {
  const lines = fs.readFileSync(path.join(here, "wheels.txt"), "utf8").split("\n");
  const found = lines.map((line) => /^(\S+)==(\S+) --hash=sha256:(\S+)$/.exec(line)).filter(Boolean);
  return Object.fromEntries(found.map(([, name, version, hash]) => [canonical(name), [version, hash]]));
}

function indexPage(name) { // the simple index of a registry, for one package (PEP 691)
  const files = fs.readdirSync(wheels).filter((file) => canonical(file.split("-")[0]) === name);
  return JSON.stringify({
    name,
    meta: { "api-version": "1.0" },
    files: files.map((filename) => ({
      filename,
      url: `emfs:/wheels/${filename}`,
      hashes: { sha256: sha256(fs.readFileSync(path.join(wheels, filename))) },
    })),
  });
}

async function answerFromShelf(request) {
  const address = String(request.url ?? request);
  const match = /^shelf:\/+([^/]+)$/.exec(address);
  if (!match) throw new Error(`the build fetches nothing, yet ${address} was asked for`);
  const headers = { "content-type": "application/vnd.pypi.simple.v1+json" };
  return new Response(indexPage(match[1]), { headers });
}

async function checkWheels(python) {
  const listed = listedWheels();
  const [version] = listed.pint;
  globalThis.fetch = answerFromShelf;
  const resolve = python.pyimport("resolve");
  resolve.bring_tool("/wheels");
  const frozen = JSON.parse(await resolve.frozen(`pint==${version}`));
  const { [BUILD_TOOL]: _, ...shipped } = listed;
  const sorted = (record) => JSON.stringify(Object.entries(record).sort());
  if (sorted(frozen) !== sorted(shipped)) {
    throw new Error(`wheels.txt lists ${sorted(shipped)}\nbut micropip froze ${sorted(frozen)}`);
  }
  return Object.keys(shipped).map((name) => name.replaceAll("-", "_"));
}

async function compileAll() {
  const python = await loadPyodide({
    lockFileContents: nothingToLoad,
    env: { ...env, PYTHONNODEBUGRANGES: "1" }, // a traceback needs its lines, not the columns
  });
  const { FS } = python;
  for (const [name, folder] of Object.entries({ wheels, engine, runtime, out, boot: here })) {
    FS.mkdirTree(`/${name}`);
    python.mountNodeFS(`/${name}`, folder);
  }
  python.runPython("import sys; sys.path.append('/boot'); sys.dont_write_bytecode = True");
  const names = await checkWheels(python);
  const list = python.toPy(names);
  python.pyimport("packing").pack("/runtime/python_stdlib.zip", "/wheels", list, "/engine", "/out");
}

// ---- the memory snapshot ----

function writeParcel(FS, bytes) {
  const size = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
  let at = 4 + size;
  for (const [name, length] of JSON.parse(new TextDecoder().decode(bytes.subarray(4, at)))) {
    const file = `/lib/python3.14/site-packages/${name}`;
    FS.mkdirTree(path.posix.dirname(file));
    FS.writeFile(file, bytes.subarray(at, at + length));
    at += length;
  }
}

// Memory that was freed still holds what it held: zeros compress better. So take every free block of
// the C allocator, then every free block of Python's own allocator for small objects inside the
// blocks it has, blank them, and give them back. Likewise the dead stack.
const SMALL_OBJECT = 512;
const SMALL_STEP = 8;

function blankFreeMemory(module) {
  const brk = module._emscripten_get_sbrk_ptr() >> 2;
  const end = module.HEAPU32[brk];
  const taken = [];
  const takeAll = (size, allocate, free) => {
    for (;;) {
      const block = allocate(size);
      if (block >= end) return free(block); // what was free is used up: this one is new
      module.HEAPU8.fill(0, block, block + size);
      taken.push(() => free(block));
    }
  };
  for (let size = 1 << 20; size >= 16; size = size > 256 ? size >> 1 : size - 8) {
    takeAll(size, module._malloc, module._free);
  }
  for (let size = SMALL_OBJECT; size > 0; size -= SMALL_STEP) {
    takeAll(size, module._PyObject_Malloc, module._PyObject_Free);
  }
  for (const giveBack of taken.reverse()) giveBack();
  module.HEAPU8.fill(0, module._emscripten_stack_get_end() + 16, module.stackSave() - 64);
}

const TIDY = `
import functools, gc, importlib, linecache, re, sys
for one in gc.get_objects():  # what is only remembered is quickly made again
    if isinstance(one, functools._lru_cache_wrapper):
        one.cache_clear()
linecache.clearcache()
re.purge()
sys.path_importer_cache.clear()
importlib.invalidate_caches()
sys.modules["zipimport"]._zip_directory_cache.clear()
for _ in range(4):
    gc.collect()
`;

// Wraps Pyodide's own start to see the memory before any code has run in it: a pure function of
// the .wasm file, which the browser has too. The snapshot is packed as the difference from it.
function watchingMemory(seen) {
  return (settings) => {
    const instantiate = settings.instantiateWasm;
    settings.instantiateWasm = (imports, done) => instantiate(imports, (instance, module) => {
      const memory = new Uint8Array(instance.exports.memory.buffer);
      seen.initial = memory.slice(0, memory.findLastIndex((byte) => byte !== 0) + 1);
      done(instance, module);
    });
    return createPyodideModule(settings);
  };
}

async function takeSnapshot() {
  const seen = {};
  const python = await loadPyodide({
    _makeSnapshot: true,
    createPyodideModule: watchingMemory(seen),
    lockFileContents: nothingToLoad,
    stdLibURL: path.join(out, "stdlib.zip"),
    env: { ...env },
    fsInit: async (FS) => {
      for (const each of ["packages", "data"]) {
        writeParcel(FS, new Uint8Array(fs.readFileSync(path.join(out, `${each}.parcel`))));
      }
    },
  });
  python.runPython("import engine.door; engine.door.warm()");
  // A record of loaded packages would be kept as a JavaScript object, which no snapshot can hold.
  for (const name of Object.keys(python.loadedPackages)) delete python.loadedPackages[name];
  python.runPython(TIDY);
  blankFreeMemory(python._module);
  const snapshot = python.makeMemorySnapshot();
  const heapStart = new Uint32Array(snapshot.buffer, 0, 2)[1];
  return { initial: seen.initial, head: snapshot.subarray(0, heapStart), heap: snapshot.subarray(heapStart) };
}

// A bitmap of the pages that differ, then those pages, each XORed with the memory at the start.
function difference(heap, initial) {
  const count = Math.ceil(heap.length / PAGE);
  const bitmap = new Uint8Array(Math.ceil(count / 32) * 4);
  const pages = [];
  for (let page = 0; page < count; page++) {
    const from = page * PAGE;
    const bytes = heap.slice(from, from + PAGE);
    const base = initial.subarray(from, from + PAGE);
    for (let i = 0; i < base.length; i++) bytes[i] ^= base[i];
    if (bytes.some((byte) => byte !== 0)) {
      bitmap[page >> 3] |= 1 << (page & 7);
      pages.push(bytes);
    }
  }
  return Buffer.concat([bitmap, ...pages]);
}

process.on("uncaughtException", (error) => { // not Node's way: it would print the line, a megabyte
  console.error(error.stack);
  process.exit(1);
});
fs.rmSync(out, { recursive: true, force: true });
fs.mkdirSync(out, { recursive: true });
await compileAll();
const { initial, head, heap } = await takeSnapshot();
fs.writeFileSync(path.join(out, "snapshot.difference"), difference(heap, initial));
const boot = { info, env, laidOut: initial.length, heap: heap.length, head: Buffer.from(head).toString("base64") };
fs.writeFileSync(path.join(out, "boot.json"), JSON.stringify(boot));
process.exit(0); // Pyodide leaves handles open

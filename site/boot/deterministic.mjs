// Loaded before the build (node --import): the same source must give the same bytes, so entropy
// comes from a fixed sequence and every clock only counts its own readings.
import { createRequire } from "node:module";

const crypto = createRequire(import.meta.url)("node:crypto");
let word = 0x9e3779b9;

function nextByte() { // xorshift32
  word ^= word << 13;
  word ^= word >>> 17;
  word ^= word << 5;
  return word & 0xff;
}

function fill(view) {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  for (let i = 0; i < bytes.length; i++) bytes[i] = nextByte();
  return view;
}

crypto.randomFillSync = fill;
globalThis.crypto.getRandomValues = fill;

const RealDate = Date;
let milliseconds = RealDate.UTC(2026, 0, 1);
const now = () => (milliseconds += 1000);
globalThis.Date = new Proxy(RealDate, {
  construct: (target, args, newTarget) => Reflect.construct(target, args.length ? args : [now()], newTarget),
  get: (target, key) => (key === "now" ? now : Reflect.get(target, key)),
});

let reading = 1000;
performance.now = () => (reading += 1);

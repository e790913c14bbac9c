// Plans on this device: two slots a plan, written in turn with a checksum, so that a write cut
// short by a flat battery costs one step at most. The last ten snapshots stand behind them.
const SNAPSHOTS = 10;
const SNAPSHOT_EVERY = 5 * 60 * 1000;
const WRITER = "ohmward-writer";

let opening = null;
const slotOf = new Map(); // plan id → { slot, seq } of the newest good copy

const result = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const finished = (transaction) =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onerror = transaction.onabort = () =>
      reject(transaction.error ?? new Error("the write was cut off"));
  });

function database() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("ohmward", 1);
    request.onupgradeneeded = () => {
      for (const name of ["about", "slots", "snapshots"]) request.result.createObjectStore(name);
    };
    request.onsuccess = () => {
      request.result.onclose = () => (opening = null); // the browser cleared it: open again next time
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
  });
  opening.catch(() => (opening = null));
  return opening;
}

async function get(store, key) {
  return result((await database()).transaction(store).objectStore(store).get(key));
}

export async function checksum(text) {
  const bytes = new TextEncoder().encode(text);
  if (globalThis.crypto?.subtle) {
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }
  let crc = -1; // plain http on a boat's own network has no crypto.subtle
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (0xedb88320 & -(crc & 1));
  }
  return `crc32-${(~crc >>> 0).toString(16)}`;
}

const fits = async (copy) =>
  typeof copy?.text === "string" && copy.sum === (await checksum(copy.text));

const everyKeyOf = (id) => IDBKeyRange.bound([id], [id, []]);

// The newest good copy of a plan: a slot, else a snapshot, else null.
export async function read(id) {
  const slots = await Promise.all([get("slots", [id, 0]), get("slots", [id, 1])]);
  let best = null;
  for (const [slot, copy] of slots.entries()) {
    if ((await fits(copy)) && copy.seq > (best?.copy.seq ?? -1)) best = { slot, copy };
  }
  slotOf.set(id, best ? { slot: best.slot, seq: best.copy.seq } : { slot: 1, seq: 0 });
  if (best) return best.copy.text;
  const base = await database();
  const old = await result(base.transaction("snapshots").objectStore("snapshots").getAll(everyKeyOf(id)));
  for (const copy of old.reverse()) if (await fits(copy)) return copy.text;
  return null;
}

export async function begin() {
  const plans = (await get("about", "plans")) ?? [];
  const id = (await get("about", "last")) ?? plans.at(-1)?.id ?? null;
  return { plans, id, record: id === null ? null : await read(id) };
}

async function write({ id, name, text }) {
  if (!slotOf.has(id)) await read(id);
  const { slot, seq } = slotOf.get(id);
  const saved = new Date().toISOString();
  const next = { slot: 1 - slot, seq: seq + 1 };
  const copy = { seq: next.seq, saved, text, sum: await checksum(text) };
  const base = await database();
  const transaction = base.transaction(["about", "slots", "snapshots"], "readwrite", { durability: "strict" });
  const done = finished(transaction);
  const about = transaction.objectStore("about");
  const snapshots = transaction.objectStore("snapshots");
  transaction.objectStore("slots").put(copy, [id, next.slot]);
  const plans = ((await result(about.get("plans"))) ?? []).filter((plan) => plan.id !== id);
  plans.push({ id, name, saved });
  about.put(plans, "plans");
  about.put(id, "last");
  const keys = await result(snapshots.getAllKeys(everyKeyOf(id)));
  if (Date.now() - (keys.at(-1)?.[1] ?? 0) >= SNAPSHOT_EVERY) {
    snapshots.put(copy, [id, Date.now()]);
    for (const key of keys.slice(0, -(SNAPSHOTS - 1))) snapshots.delete(key);
  }
  await done;
  slotOf.set(id, next);
  return plans;
}

// Writes follow one another; a newer text of the same plan replaces one that still waits.
const waiting = new Map();
let writing = null;

export function save(record) {
  waiting.set(record.id, record);
  writing ??= (async () => {
    let plans;
    try {
      while (waiting.size) {
        const [id, next] = waiting.entries().next().value;
        waiting.delete(id);
        plans = await write(next);
      }
    } finally {
      writing = null;
    }
    return plans;
  })();
  return writing;
}

export const settled = () => (writing ?? Promise.resolve()).catch(() => {});

export async function drop(id) {
  await settled();
  const base = await database();
  const transaction = base.transaction(["about", "slots", "snapshots"], "readwrite");
  const done = finished(transaction);
  const about = transaction.objectStore("about");
  transaction.objectStore("slots").delete(everyKeyOf(id));
  transaction.objectStore("snapshots").delete(everyKeyOf(id));
  const plans = ((await result(about.get("plans"))) ?? []).filter((plan) => plan.id !== id);
  about.put(plans, "plans");
  if ((await result(about.get("last"))) === id) about.delete("last");
  await done;
  slotOf.delete(id);
  return plans;
}

export async function rememberLast(id) {
  const transaction = (await database()).transaction("about", "readwrite");
  transaction.objectStore("about").put(id, "last");
  return finished(transaction);
}

// One writer across tabs. A page that loads itself again may still find its own old lock for a
// moment, so a taken lock is asked for a few times; a slow device never loses a free one.
export async function isWriter(tries = 8) {
  if (!navigator.locks) return true; // plain http has no locks; then every tab writes
  const asked = new Promise((resolve) => {
    navigator.locks.request(WRITER, { ifAvailable: true }, (lock) => {
      resolve(Boolean(lock));
      return lock ? new Promise(() => {}) : undefined; // held until this tab closes
    });
  });
  if ((await asked) || tries <= 1) return asked;
  await new Promise((resolve) => setTimeout(resolve, 150));
  return isWriter(tries - 1);
}

// Resolves when the writing tab is gone for good, not only reloading.
export async function writerGone() {
  for (;;) {
    await navigator.locks.request(WRITER, () => {});
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const { held } = await navigator.locks.query();
    if (!held.some((lock) => lock.name === WRITER)) return;
  }
}

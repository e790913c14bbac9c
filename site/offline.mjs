// Ready offline is a claim, so it is proved: every file is in the cache, and a second worker has
// started from there and done one sum. New versions wait until the owner says so.
const SUM = "#sum/conductor?volts=12+V&current=10+A&run=10+ft";

function ask(worker, question) {
  return new Promise((resolve, reject) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(() => reject(new Error("no answer from the offline copy")), 60_000);
    worker.postMessage(question, [port2]);
  });
}

function oneSum() {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./worker.mjs", import.meta.url), { type: "module", name: "check" });
    const end = (settle, value) => {
      worker.terminate();
      settle(value);
    };
    setTimeout(() => end(reject, new Error("the trial sum took too long")), 120_000);
    worker.onerror = () => end(reject, new Error("the trial worker did not start"));
    worker.onmessage = ({ data }) => {
      if (data.failed) end(reject, new Error(data.failed));
      else if (data.n === 2 && data.reply.fragments.some(([, html]) => html)) end(resolve);
    };
    const open = { kind: "open", record: null, settings: {}, route: "", plans: [], today: "2026-01-01", version: "", tab: "reader" };
    worker.postMessage({ n: 1, event: open });
    worker.postMessage({ n: 2, event: { kind: "go", route: SUM } });
  });
}

// The worker that holds every file, or the reason why there is none.
function storing() {
  return new Promise((resolve, reject) => {
    navigator.serviceWorker.ready.then(({ active }) => resolve(active));
    registration.installing?.addEventListener("statechange", ({ target }) => {
      if (target.state === "redundant") reject(new Error("the files could not be stored"));
    });
  });
}

let registration = null;

// tell(key, value) sends a state event; kept is the page's small memory.
export async function begin(version, tell, kept) {
  if (!navigator.serviceWorker) return tell("offline", "none");
  try {
    registration = await navigator.serviceWorker.register("./sw.js");
    const watch = () => {
      if (registration.waiting && navigator.serviceWorker.controller) tell("update", "waiting");
    };
    registration.addEventListener("updatefound", () =>
      registration.installing?.addEventListener("statechange", watch),
    );
    watch();
    tell("offline", "checking");
    const answer = await ask(await storing(), { kind: "verify" });
    if (!answer.ok) throw new Error(`not stored: ${answer.missing.join(", ")}`);
    if (kept.get("proved") !== version) {
      await oneSum();
      kept.put("proved", version);
    }
    tell("offline", "ready");
  } catch (error) {
    tell("offline", `failed: ${error.message}`);
  }
}

// The page has flushed its writes; the new version takes over and the page loads once more.
export function update() {
  navigator.serviceWorker?.addEventListener("controllerchange", () => location.reload(), { once: true });
  registration?.waiting?.postMessage({ kind: "update" });
}

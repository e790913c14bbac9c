"""Prints what the boot and the page cost, each figure beside its target.

``python3 build.py bench``. Starts of Python are medians of interleaved runs and compared as ratios
with an untouched ``loadPyodide()`` of the same package in the same run, so that a slow or busy
machine changes both. Nothing here passes or fails a test.
"""

import argparse
import gzip
import json
import shutil
import statistics
import subprocess
import tempfile
import time
import zipfile
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

from playwright.sync_api import Browser, Page, sync_playwright

import build
from engine.check.circuits import answers_of, circuit_answer
from engine.check.network import network_answer
from engine.check.path import paths_of
from engine.check.users import used_in, users_of
from engine.plan.made_up import made_up_document
from engine.plan.parts import Plan
from engine.plan.read import plan_of
from engine.simulate.march import march_of
from engine.units import Share
from tests.bench import days
from tests.browser.conftest import FLAGS, Host, Reader, start_host
from tests.browser.test_later import OPEN, WORK
from tests.published.test_simulate import day_of, integrated
from tests.simulate.banks import alone, flooded

BLANK: Final = "<!doctype html><title>bench</title>"
BARE_WORKER: Final = """
import { loadPyodide } from "./bare/pyodide.mjs";
const python = await loadPyodide({ indexURL: new URL("./bare/", import.meta.url).href });
python.runPython("1 + 1");
self.postMessage({ ready: true, how: "bare" });
"""
START: Final = """([script, name]) => new Promise((resolve, reject) => {
  const start = performance.now();
  const worker = new Worker(`../${script}`, { type: "module", name });
  worker.onerror = (event) => reject(new Error(event.message));
  worker.onmessage = ({ data }) => {
    if (!data.ready && !data.failed) return;
    resolve([performance.now() - start, data.how ?? data.failed]);
    worker.terminate();
  };
})"""
FIRST_PAINT: Final = """new Promise((resolve) => new PerformanceObserver((list, observer) => {
  observer.disconnect();
  resolve(list.getEntries()[0].startTime);
}).observe({ type: "paint", buffered: true }))"""
# From the change event to the page that shows its answer: the script drops data-busy right after
# it has morphed the answer in.
EDIT: Final = """async ([name, value]) => {
  const root = document.documentElement;
  const field = document.getElementsByName(name)[0];
  field.focus();
  field.value = value;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  const answered = new Promise((resolve) => {
    const observer = new MutationObserver(() => {
      if (root.hasAttribute("data-busy")) return;
      observer.disconnect();
      resolve();
    });
    observer.observe(root, { attributes: true, attributeFilter: ["data-busy"] });
  });
  const start = performance.now();
  field.dispatchEvent(new Event("change", { bubbles: true }));
  await answered;
  return performance.now() - start;
}"""

# The engine from its sources in the untouched package: what is measured is the same Python.
DAYS_WORKER: Final = """
import { loadPyodide } from "./bare/pyodide.mjs";
const python = await loadPyodide({ indexURL: new URL("./bare/", import.meta.url).href });
for (const name of NAMES) {
  const address = new URL(`./bench/${name}`, import.meta.url);
  python.unpackArchive(await (await fetch(address)).arrayBuffer(), "zip");
}
python.runPython("import json, days");
self.postMessage(python.runPython("json.dumps(days.figures())"));
"""
ASK_DAYS: Final = """() => new Promise((resolve, reject) => {
  const worker = new Worker("../days.mjs", { type: "module" });
  worker.onerror = (event) => reject(new Error(event.message));
  worker.onmessage = ({ data }) => {
    resolve(data);
    worker.terminate();
  };
})"""
STEPS_A_DAY: Final = 96

CIRCUITS: Final = (40, 200, 1000)
COPIES: Final = 16
"""Circuits added to the made-up boat's 24, so that 40 are recomputed at once."""
EDITED: Final = {  # on the made-up boat: where, which fields, in which unit
    "loads table": ("#energy/use", 'input[name$=".draw"]', "A"),
    "one load": ("#energy/use/L11", 'input[name$=".draw"]', "A"),
    "one circuit": ("#wiring/circuits/D14", 'input[name$=".run"]', "ft"),
}
VARIANTS: Final = {  # what is started, and by which script and worker name
    "bare": ("bare.mjs", ""),
    "snapshot": ("worker.mjs", ""),
    "files": ("worker.mjs", "files"),
}
RATIO_TARGETS: Final = {"snapshot": 0.35, "files": 0.65}
CRITICAL: Final = ("wasm", "glue", "snapshot", "data")
OWN_SCRIPTS: Final = ("app.mjs", "worker.mjs")

Line = tuple[str, str, str, str]


def line(what: str, figure: float, target: float, unit: str = "", digits: int = 0) -> Line:
    met = "met" if figure <= target else "NOT MET"
    return what, f"{figure:.{digits}f} {unit}".strip(), f"≤ {target:g} {unit}".strip(), met


def note(what: str, figure: str) -> Line:
    return what, figure, "", ""


# ---- starts of Python ----


def bench_folder(place: Path) -> Path:
    """Give a copy of dist/ with the untouched package and a blank page beside it."""
    folder = Path(shutil.copytree(build.DIST, place / "dist"))
    shutil.copytree(build.SITE / "node_modules" / "pyodide", folder / "bare")
    (folder / "bare.mjs").write_text(BARE_WORKER)
    # In a folder of its own: beside the page the service worker would answer with the page.
    (folder / "bench").mkdir()
    (folder / "bench" / "blank.html").write_text(BLANK)
    (folder / "days.mjs").write_text(DAYS_WORKER.replace("NAMES", json.dumps(archives(folder))))
    return folder


def archives(folder: Path) -> list[str]:
    """Put the engine, what it needs and what measures it beside the page, as archives."""
    names = []
    for wheel in sorted((build.WORK / "wheels").glob("*.whl")):
        names.append(wheel.name)
        shutil.copyfile(wheel, folder / "bench" / wheel.name)
    with zipfile.ZipFile(folder / "bench" / "engine.zip", "w") as archive:
        for path in build.files_of(build.ROOT / "engine"):
            archive.write(path, path.relative_to(build.ROOT))
        archive.write(Path(days.__file__), "days.py")
    return [*names, "engine.zip"]


def start_once(page: Page, host: Host, variant: str) -> float:
    page.goto(f"{host.address}bench/blank.html")
    milliseconds, how = page.evaluate(START, list(VARIANTS[variant]))
    if not str(how).startswith(variant):
        raise SystemExit(f"bench: asked for a start from {variant}, got {how}")
    return float(milliseconds)


def starts(browser: Browser, host: Host, runs: int) -> Iterator[Line]:
    taken: dict[tuple[str, str], list[float]] = defaultdict(list)
    warm = browser.new_context()
    page = warm.new_page()
    Reader(page).open(host.address).wait_offline()
    start_once(page, host, "bare")  # fills the browser's own cache, as the worker's is filled
    for _ in range(runs):
        for variant in VARIANTS:
            fresh = browser.new_context()
            taken["cold", variant].append(start_once(fresh.new_page(), host, variant))
            fresh.close()
            taken["warm", variant].append(start_once(page, host, variant))
    warm.close()
    for state in ("cold", "warm"):
        medians = {each: statistics.median(taken[state, each]) for each in VARIANTS}
        yield note(f"{state}: bare loadPyodide()", f"{medians['bare']:.0f} ms")
        for variant, target in RATIO_TARGETS.items():
            ratio = medians[variant] / medians["bare"]
            what = f"{state}: engine ready from {variant}, {medians[variant]:.0f} ms, of bare"
            yield line(what, ratio, target, "×", 2)


# ---- the page ----


def paints(browser: Browser, host: Host, runs: int) -> Iterator[Line]:
    taken, before = [], True
    for _ in range(runs):
        context = browser.new_context()
        page = context.new_page()
        page.goto(host.address, wait_until="commit")
        taken.append(float(page.evaluate(FIRST_PAINT)))
        Reader(page).wait_ready()
        ready = page.evaluate("Number(document.documentElement.dataset.ms)")
        before &= taken[-1] < ready  # that one counts from the worker's start, so this is strict
        context.close()
    yield line("first paint of a cold visit", statistics.median(taken), 300, "ms")
    page_text = (host.folder / "index.html").read_text(encoding="utf-8")
    carries = "Ah" in page_text.partition("<main")[2].partition("</main>")[0]
    yield (
        "it carries the answer and comes before Python",
        "yes" if carries and before else "no",
        "yes",
        "met" if carries and before else "NOT MET",
    )


def edits(browser: Browser, host: Host) -> Iterator[Line]:
    context = browser.new_context()
    reader = Reader(context.new_page()).open(host.address).press("look-around")
    for what, (route, selector, unit) in EDITED.items():
        fields = reader.go(route).page.locator(f"#page {selector}").all()[:12]
        names = [field.get_attribute("name") for field in fields]
        taken = []
        for turn in range(65):
            name, value = names[turn % len(names)], f"{1 + turn % 17 / 10:.1f} {unit}"
            taken.append(float(reader.page.evaluate(EDIT, [name, value])))
        taken = sorted(taken[5:])
        late = taken[int(len(taken) * 0.95)]
        yield line(f"edit to changed page, {what}, median", statistics.median(taken), 50, "ms")
        yield line(f"edit to changed page, {what}, 95th percentile", late, 150, "ms")
    context.close()


# ---- sizes and the command line ----


def sizes() -> Iterator[Line]:
    python = build.DIST / "python"
    packed = sum((python / f"{each}.bin").stat().st_size for each in CRITICAL)
    others = [python / "pyodide.mjs", python / "boot.mjs"]
    others += [path for path in build.DIST.iterdir() if path.is_file() and path.name != "sw.js"]
    plain = sum(path.stat().st_size for path in others)
    small = sum(zipped(path) for path in others)
    yield line("first visit, host compresses nothing", (packed + plain) / 1e6, 8.5, "MB", 2)
    yield line("first visit, host compresses", (packed + small) / 1e6, 8.5, "MB", 2)
    later = (python / "later.bin").stat().st_size
    yield note("what comes once the page is awake", f"{later / 1e6:.2f} MB")
    yield line("both, host compresses nothing", (packed + plain + later) / 1e6, 8.5, "MB", 2)
    own = sum(zipped(build.DIST / each) for each in OWN_SCRIPTS) / 1e3
    yield line("own scripts, gzip", own, 12, "kB", 1)
    total = sum(path.stat().st_size for path in build.files_of(build.DIST))
    yield note("everything kept for offline", f"{total / 1e6:.1f} MB")


def zipped(path: Path) -> int:
    return len(gzip.compress(path.read_bytes(), mtime=0))


def command_line() -> Iterator[Line]:
    sums: list[dict[str, Any]] = [
        {
            "sum": "conductor",
            "inputs": {"volts": "12 V", "current": f"{1 + n % 40} A", "run": f"{5 + n % 30} ft"},
        }
        for n in range(1000)
    ]
    asked = "".join(json.dumps(each) + "\n" for each in sums)
    taken = []
    for _ in range(3):
        start = time.perf_counter()
        command = [str(build.PYTHON), "-m", "engine", "sums"]
        done = subprocess.run(
            command, input=asked, capture_output=True, text=True, cwd=build.ROOT, check=True
        )
        taken.append(time.perf_counter() - start)
        if len(done.stdout.splitlines()) != len(sums):
            raise SystemExit("bench: not every sum was answered")
    yield line("1 000 conductor sums, natively", statistics.median(taken), 2, "s", 2)


def boat_of(circuits: int) -> Plan:
    """Return the made-up boat with her circuits and loads copied over and over."""
    document = made_up_document()
    rows = document["circuits"]
    copied = []
    for place in range(circuits):
        first = place // len(rows) * len(rows)
        row = {**rows[place % len(rows)], "id": f"D{place + 1:02d}"}
        if feeder := row.get("fed_from"):
            row["fed_from"] = f"D{int(feeder[1:]) + first:02d}"
        copied.append(row)
    return plan_of({**document, "circuits": copied})


def wiring() -> Iterator[Line]:
    """Recompute whole plans: drop, heat, protection, fault and the network, nothing remembered."""
    for count in CIRCUITS:
        plan = boat_of(count)
        taken = []
        for _ in range(5):
            for remembered in (circuit_answer, paths_of, network_answer, users_of):
                remembered.cache_clear()
            start = time.perf_counter()
            answers_of(plan)
            network_answer(plan, used_in(plan, "anchor"))
            taken.append((time.perf_counter() - start) * 1000)
        middle = statistics.median(taken)
        what = f"{count} circuits anew, natively, {middle / count:.2f} ms each"
        yield (
            line(what, middle, 30, "ms") if count == CIRCUITS[0] else note(what, f"{middle:.0f} ms")
        )


def wiring_in_browser(browser: Browser, host: Host) -> Iterator[Line]:
    context = browser.new_context()
    reader = Reader(context.new_page()).open(host.address).press("look-around")
    reader.go("#wiring/circuits/D05")
    for _ in range(COPIES):
        reader.press("copy-row")
    reader.go("#wiring/circuits")
    taken = []
    for turn in range(25):
        value = f"{0.1 + turn % 7 / 10:.1f} m"
        taken.append(float(reader.page.evaluate(EDIT, ["boat.tape", value])))
    what = "40 circuits anew in the browser, page and all"
    yield line(what, statistics.median(taken[5:]), 120, "ms")
    context.close()


def days_ahead(browser: Browser, host: Host) -> Iterator[Line]:
    """Run days natively and in the browser by the same text, right after each other."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{host.address}bench/blank.html")
    here = days.figures()
    there: dict[str, float] = json.loads(page.evaluate(ASK_DAYS))
    again = days.figures()
    here = {name: min(figure, again[name]) for name, figure in here.items()}
    fortnight = days.LENGTHS[0]
    for where, found, target in (("natively", here, 60), ("in the browser", there, 200)):
        yield line(f"a run of {fortnight} days, {where}", found[f"run {fortnight}"], target, "ms")
        seconds = found["chances"] / 1000
        yield line(f"{days.RUNS} runs of {fortnight} days, {where}", seconds, 12, "s", 2)
        steps = days.RUNS * fortnight * STEPS_A_DAY / seconds
        yield note(f"steps of a chance, {where}", f"{steps / 1000:.0f} k/s")
        for length in days.LENGTHS[1:]:
            growth = found[f"run {length}"] / found[f"run {fortnight}"] / (length / fortnight)
            what = f"{length} days, {where}, {found[f'run {length}']:.0f} ms, of so many fortnights"
            yield note(what, f"{growth:.2f} ×")
    yield note("the browser over natively", f"{there['chances'] / here['chances']:.1f} ×")
    context.close()


def sliced(browser: Browser, host: Host) -> Iterator[Line]:
    """Run the chances as the page does: in slices, drawn, with taps in between."""
    context = browser.new_context()
    page = context.new_page()
    Reader(page).open(host.address).wait_offline()
    found = page.evaluate(WORK, OPEN)
    slices, taps = sorted(found["slices"]), sorted(found["taps"])
    yield line("chances on the page: first estimate", found["first"] / 1000, 1, "s", 2)
    yield line(f"chances on the page: all {days.RUNS}", found["whole"] / 1000, 12, "s", 2)
    yield line("a slice, median", statistics.median(slices), 120, "ms")
    yield note("a slice, 95th percentile", f"{slices[int(len(slices) * 0.95)]:.0f} ms")
    yield line("a tap during the work, slowest", taps[-1], 300, "ms")
    context.close()


def solver() -> Iterator[Line]:
    """Run one day of a two-well bank by the engine and by SciPy's general solver."""
    house, day = flooded(start=0.9, disconnect=Share(0.0)), day_of(3.0, 30.0)

    def ours() -> None:
        march_of(alone(house)).go(day.loads, day.kept_on, day.free, day.step)

    own = days.milliseconds(ours, 9)
    general = days.milliseconds(lambda: integrated(house, day), 1)
    yield note("a day of two wells, natively", f"{own:.2f} ms")
    yield note("the same by scipy's solve_ivp, natively", f"{general:.0f} ms")
    yield note("solve_ivp over the engine", f"{general / own:.0f} ×")


def show(lines: Iterator[Line]) -> None:
    for what, figure, target, met in lines:
        print(f"{what:<58} {figure:>10}  {target:>10}  {met}", flush=True)


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--runs", type=int, default=5)
    runs = parser.parse_args().runs
    print(f"{'figure':<58} {'here':>10}  {'target':>10}")
    show(sizes())
    show(command_line())
    show(wiring())
    show(solver())
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        host = start_host(bench_folder(Path(place)))
        browser = playwright.chromium.launch(
            executable_path=build.find_chromium(), args=list(FLAGS)
        )
        show(paints(browser, host, runs))
        show(edits(browser, host))
        show(wiring_in_browser(browser, host))
        show(days_ahead(browser, host))
        show(sliced(browser, host))
        show(starts(browser, host, runs))
        browser.close()
        host.stop()


if __name__ == "__main__":
    main()

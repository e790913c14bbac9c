"""What no first page needs comes once the page is awake, and the page says so until then."""

from typing import TYPE_CHECKING, Any

import pytest

from tests.browser.test_boot import PYTHON, assert_answers, damaged

if TYPE_CHECKING:
    from pathlib import Path

    from tests.browser.conftest import Host, MakeHost, Reader

pytestmark = pytest.mark.browser

LATER = f"{PYTHON}later.bin"
SUM = "#sum/sun-day?latitude=43"
ANSWERED = "document.getElementById('sum-answer')?.textContent.includes('Wh/m²')"
REFUSED = "document.getElementById('late')?.textContent.includes('Connect once')"
# The long work of one page, asked for slice by slice: how long a slice takes, how long a tap waits
# that comes right behind one, and whether it stops and goes on.
WORK = """async (open) => {
  const worker = new Worker("./worker.mjs", { type: "module", name: "" });
  const came = new Map();
  let lateCame;
  const late = new Promise((resolve) => { lateCame = resolve; });
  worker.onmessage = ({ data }) => {
    if (data.failed) throw new Error(data.failed);
    if (!data.reply) return;
    if (!came.size) lateCame(); // a reply nobody here asked for: the parcel is there
    for (const [n, answered] of came) { // one reply answers all that had come
      if (n <= data.n && came.delete(n)) answered(data.reply);
    }
  };
  let n = 0;
  const ask = (event) => new Promise((resolve) => {
    came.set(++n, resolve);
    worker.postMessage({ n, event });
  });
  const timed = async (event) => {
    const start = performance.now();
    const reply = await ask(event);
    return [performance.now() - start, Boolean(reply.more)];
  };
  const press = (name) => ({ kind: "do", name, arg: "", form: {} });
  await ask(open);
  await late;
  const start = performance.now();
  let [, more] = await timed({ kind: "go", route: "#energy/ahead" });
  const slices = [];
  const taps = [];
  let first = 0;
  while (more) {
    const slice = timed({ kind: "more" });
    if (slices.length % 3 === 1) {
      await new Promise((resolve) => setTimeout(resolve, 5)); // the slice is under way
      taps.push((await timed({ kind: "state", key: "saved", value: String(n) }))[0]);
    }
    const [took, goesOn] = await slice;
    slices.push(took);
    if (slices.length === 3) first = performance.now() - start;
    more = goesOn;
    if (slices.length !== 5) continue;
    const [, whenStopped] = await timed(press("stop-work"));
    const [, whenAsked] = await timed({ kind: "more" });
    const [, whenResumed] = await timed(press("go-on"));
    if (whenStopped || whenAsked || !whenResumed) return "it does not stop and go on";
  }
  worker.terminate();
  return { slices, taps, first, whole: performance.now() - start };
}"""
OPEN: dict[str, Any] = {
    "kind": "open", "record": None, "settings": {"chosen": "looked"}, "route": "#home",
    "plans": [], "today": "2026-11-25", "version": "1", "tab": "writer",
}  # fmt: skip


@pytest.mark.parametrize("how", ["", "?boot=files"])
def test_it_comes_after_either_start(reader: "Reader", make_host: "MakeHost", how: str) -> None:
    host = make_host()
    reader.open(f"{host.address}{how}").go(SUM)
    reader.wait(ANSWERED)
    first = f"/{PYTHON}{'packages' if how else 'snapshot'}.bin"
    assert host.asked.index(f"/{LATER}") > host.asked.index(first)
    assert reader.errors == []


def test_a_page_asked_for_at_once_waits_for_it(reader: "Reader", site: str) -> None:
    reader.open(f"{site}{SUM}")
    reader.wait(ANSWERED)
    assert reader.page.evaluate("document.querySelector('#page h1').textContent").endswith("?")


@pytest.mark.parametrize("content", ["damaged", "missing"])
def test_without_it_the_page_answers_and_says_so(
    reader: "Reader", make_host: "MakeHost", dist: "Path", content: str
) -> None:
    bad = damaged((dist / LATER).read_bytes()) if content == "damaged" else b""
    replaced = {LATER: bad}
    reader.open(make_host(replaced=replaced).address).go(SUM)
    reader.wait(REFUSED)
    assert "later.bin: not the file of this release" in reader.text()
    assert_answers(reader)
    reader.go(SUM)
    replaced.clear()  # the host mends, and it is asked again
    reader.wait(ANSWERED)


def test_without_a_connection_for_it_the_page_says_so(reader: "Reader", site: str) -> None:
    context = reader.page.context
    context.route(f"**/{LATER}", lambda route: route.abort("internetdisconnected"))
    reader.open(site).go(SUM)
    reader.wait(REFUSED)
    assert "Failed to fetch" in reader.text()
    assert_answers(reader)
    reader.go(SUM)
    context.unroute(f"**/{LATER}")
    reader.wait(ANSWERED)


def test_it_is_kept_for_a_start_with_the_host_gone(
    reader: "Reader", stoppable_site: "Host"
) -> None:
    reader.open(stoppable_site.address).wait_offline()
    stoppable_site.stop()
    reader.page.goto("about:blank")
    reader.open(f"{stoppable_site.address}{SUM}")
    reader.wait(ANSWERED)


def test_it_is_not_ready_offline_without_it(
    reader: "Reader", make_host: "MakeHost", dist: "Path"
) -> None:
    host = make_host(replaced={LATER: damaged((dist / LATER).read_bytes())})
    reader.open(host.address).go("#papers")
    reader.wait("document.getElementById('page').textContent.includes('could not be stored')")
    assert reader.page.evaluate("localStorage.getItem('ohmward.proved')") is None


def test_long_work_lets_a_tap_through_and_stops_when_told(page_ready: "Reader") -> None:
    found = page_ready.page.evaluate(WORK, OPEN)
    assert isinstance(found, dict), found
    assert len(found["slices"]) > 5
    assert found["taps"]
    assert sorted(found["taps"])[len(found["taps"]) // 2] < 300, found

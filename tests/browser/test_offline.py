"""After one visit everything works with the host gone, and a new version waits to be asked for."""

import json
import re
import shutil
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import Page

import build

if TYPE_CHECKING:
    from tests.browser.conftest import Host, MakeHost, Reader

pytestmark = pytest.mark.browser

VERIFY = """() => new Promise(async (resolve) => {
  const { active } = await navigator.serviceWorker.ready;
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => resolve(data);
  active.postMessage({ kind: "verify" }, [port2]);
})"""
CACHES = "caches.keys()"
HAS_WAITING = "navigator.serviceWorker.getRegistration().then((found) => Boolean(found?.waiting))"
LOOK_FOR_UPDATE = "navigator.serviceWorker.getRegistration().then((found) => found.update())"
STYLE = "fetch('style.css').then((response) => response.text())"
MARK = "/* the next version */"


def listed_files(dist: Path) -> dict[str, str]:
    found = re.search(r"const FILES = (\{[^}]*\})", (dist / "sw.js").read_text())
    assert found
    files: dict[str, str] = json.loads(found[1])
    return files


def release(folder: Path) -> None:
    """Stamp a changed copy of dist/ as a release of its own."""
    shutil.copyfile(build.SITE / "sw.js", folder / "sw.js")
    build.stamp_service_worker(folder)


@pytest.fixture
def own_dist(dist: Path, tmp_path: Path) -> Path:
    """A copy of dist/ that a test may change."""
    return Path(shutil.copytree(dist, tmp_path / "dist"))


def test_every_file_is_on_the_list(dist: Path) -> None:
    names = {path.relative_to(dist).as_posix() for path in build.files_of(dist)}
    assert names - {"sw.js"} == listed_files(dist).keys()


def test_all_files_are_kept_and_checked(reader: "Reader", site: str, dist: Path) -> None:
    reader.open(site).wait_offline()
    assert reader.page.evaluate(VERIFY) == {"ok": True, "files": len(listed_files(dist))}


def test_a_lost_file_is_noticed(reader: "Reader", site: str) -> None:
    reader.open(site).wait_offline()
    reader.page.evaluate(
        "caches.keys().then(([name]) => caches.open(name))"
        ".then((cache) => cache.delete(new URL('style.css', location.href)))"
    )
    assert reader.page.evaluate(VERIFY) == {"ok": False, "missing": ["style.css"]}


def test_works_with_the_host_gone(reader: "Reader", stoppable_site: "Host") -> None:
    reader.open(stoppable_site.address).wait_offline()
    context = reader.page.context
    stoppable_site.stop()

    again = context.new_page()
    later = type(reader)(again).open(stoppable_site.address)
    assert later.how == "snapshot"
    before = later.go("#energy/loads").text()
    again.reload()
    assert later.wait_ready().text() == before
    assert later.go("#").text() != ""


def test_starts_from_files_with_the_host_gone(reader: "Reader", stoppable_site: "Host") -> None:
    reader.open(stoppable_site.address).wait_offline()
    stoppable_site.stop()
    reader.open(f"{stoppable_site.address}?boot=files")
    assert reader.how == "files: asked for"


def test_one_bad_file_and_nothing_is_kept(page: Page, make_host: "MakeHost", dist: Path) -> None:
    content = (dist / "style.css").read_bytes() + MARK.encode()
    host = make_host(replaced={"style.css": content})
    page.goto(f"{host.address}manifest.webmanifest")  # not the page: only the worker is tried here
    outcome: Any = page.evaluate(
        """async () => {
          const registration = await navigator.serviceWorker.register("sw.js");
          const worker = registration.installing;
          return new Promise((resolve) => worker.addEventListener("statechange", async () => {
            if (worker.state !== "installing") resolve([worker.state, await caches.keys()]);
          }));
        }"""
    )
    assert outcome == ["redundant", []]


def test_a_new_version_waits_until_it_is_asked_for(
    reader: "Reader", make_host: "MakeHost", own_dist: Path
) -> None:
    host = make_host(folder=own_dist)
    page = reader.open(host.address).wait_offline().page
    [old] = page.evaluate(CACHES)
    with (own_dist / "style.css").open("a") as style:
        style.write(MARK)
    release(own_dist)

    host.asked.clear()
    page.evaluate(LOOK_FOR_UPDATE)
    reader.wait(HAS_WAITING)
    assert not [path for path in host.asked if path.endswith(".bin")], "unchanged files came again"
    assert MARK not in page.evaluate(STYLE)
    page.reload()
    reader.wait_ready()
    assert MARK not in page.evaluate(STYLE)

    page.evaluate(
        "navigator.serviceWorker.getRegistration()"
        ".then((found) => found.waiting.postMessage({ kind: 'update' }))"
    )
    reader.wait("caches.keys().then((names) => names.length === 1)")
    [new] = page.evaluate(CACHES)
    assert new != old
    page.reload()
    assert MARK in page.evaluate(STYLE)


def test_caches_of_neighbours_are_left_alone(
    reader: "Reader", make_host: "MakeHost", own_dist: Path
) -> None:
    host = make_host(folder=own_dist)
    page = reader.open(host.address).wait_offline().page
    page.evaluate("caches.open('a neighbour on the same host')")
    with (own_dist / "style.css").open("a") as style:
        style.write(MARK)
    release(own_dist)
    page.evaluate(LOOK_FOR_UPDATE)
    reader.wait(HAS_WAITING)
    page.evaluate(
        "navigator.serviceWorker.getRegistration()"
        ".then((found) => found.waiting.postMessage({ kind: 'update' }))"
    )
    reader.wait("caches.keys().then((names) => names.length === 2)")
    assert "a neighbour on the same host" in page.evaluate(CACHES)

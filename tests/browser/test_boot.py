"""Python starts from the snapshot where it can be trusted, from files where it cannot."""

import gzip
import json
import re
import shutil
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

import build

if TYPE_CHECKING:
    from tests.browser.conftest import MakeHost, Reader

pytestmark = pytest.mark.browser

PYTHON = "python/"


def boot_facts(dist: Path) -> dict[str, Any]:
    text = (dist / "python" / "boot.mjs").read_text().removeprefix("export default ")
    facts: dict[str, Any] = json.loads(text.rstrip().removesuffix(";"))
    return facts


def damaged(content: bytes) -> bytes:
    middle = len(content) // 2
    return content[:middle] + bytes([content[middle] ^ 1]) + content[middle + 1 :]


def assert_answers(reader: "Reader") -> None:
    """An event goes to the engine and its answer comes back."""
    reader.go("#energy/loads")
    assert reader.page.title()
    assert reader.text().strip()


def test_starts_from_the_snapshot(page_ready: "Reader") -> None:
    assert page_ready.how == "snapshot"
    assert_answers(page_ready)
    assert page_ready.errors == []


def test_starts_from_files_when_asked(reader: "Reader", site: str) -> None:
    reader.open(f"{site}?boot=files")
    assert reader.how == "files: asked for"
    assert_answers(reader)


def test_both_starts_give_the_same_page(reader: "Reader", site: str) -> None:
    from_snapshot = reader.open(site).text()
    from_files = reader.open(f"{site}?boot=files").text()
    assert from_snapshot == from_files


def test_a_damaged_snapshot_is_not_used(
    reader: "Reader", make_host: "MakeHost", dist: Path
) -> None:
    content = damaged((dist / PYTHON / "snapshot.bin").read_bytes())
    reader.open(make_host(replaced={f"{PYTHON}snapshot.bin": content}).address)
    assert reader.how == "files: snapshot.bin: not the file of this release"
    assert_answers(reader)


def test_a_snapshot_of_another_version_is_not_used(
    reader: "Reader", make_host: "MakeHost", dist: Path
) -> None:
    inner = bytearray(gzip.decompress((dist / PYTHON / "snapshot.bin").read_bytes()))
    inner[-5000:] = bytes(5000)  # well formed, only not what this version made
    content = gzip.compress(bytes(inner), mtime=0)
    reader.open(make_host(replaced={f"{PYTHON}snapshot.bin": content}).address)
    assert reader.how.startswith("files: snapshot.bin: ")
    assert_answers(reader)


def test_a_missing_snapshot_is_done_without(reader: "Reader", make_host: "MakeHost") -> None:
    reader.open(make_host(replaced={f"{PYTHON}snapshot.bin": b""}).address)
    assert reader.how.startswith("files: snapshot.bin: ")


def test_a_runtime_of_another_version_says_so(
    reader: "Reader", make_host: "MakeHost", dist: Path
) -> None:
    content = damaged((dist / PYTHON / "wasm.bin").read_bytes())
    reader.page.goto(make_host(replaced={f"{PYTHON}wasm.bin": content}).address)
    reader.page.locator("#stop").wait_for(timeout=60_000)
    assert "wasm.bin: not the file of this release" in reader.text("#stop")


def test_wrong_types_do_not_hang_the_start(reader: "Reader", make_host: "MakeHost") -> None:
    host = make_host(types={".bin": "text/html", ".wasm": "text/plain"})
    assert reader.open(host.address).how == "snapshot"


def test_a_host_with_a_strict_policy_of_its_own(reader: "Reader", make_host: "MakeHost") -> None:
    """Its policy reaches into the worker and forbids running script from memory."""
    policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'"
    host = make_host(headers={"Content-Security-Policy": policy})
    assert reader.open(host.address).how == "snapshot"
    assert f"/{PYTHON}pyodide.asm.mjs" in host.asked


def test_works_under_a_sub_path(reader: "Reader", make_host: "MakeHost") -> None:
    host = make_host(under="/boats/ohmward/")
    reader.open(host.address)
    assert reader.how == "snapshot"
    reader.wait_offline()
    assert all(path.startswith("/boats/ohmward/") for path in host.asked)


def test_events_sent_before_python_is_ready_are_answered(reader: "Reader", site: str) -> None:
    reader.page.goto(site)
    reader.page.evaluate("location.hash = '#wiring/circuits'")
    reader.wait_ready()
    assert reader.page.evaluate("location.hash") == "#wiring/circuits"
    early = reader.text()
    assert early == reader.go("#").go("#wiring/circuits").text()


def test_asks_no_other_origin(reader: "Reader", stoppable_site: Any) -> None:
    asked: list[str] = []
    reader.page.context.on("request", lambda request: asked.append(request.url))
    reader.open(stoppable_site.address).wait_offline()
    foreign = [url for url in asked if not url.startswith(("blob:", stoppable_site.address))]
    assert asked
    assert foreign == []


def test_the_policy_allows_nothing_unsafe(dist: Path) -> None:
    page = (dist / "index.html").read_text()
    found = re.search(r'http-equiv="Content-Security-Policy"\s+content="([^"]*)"', page)
    assert found
    assert "'unsafe-inline'" not in found[1]
    assert "'unsafe-eval'" not in found[1]
    assert "http:" not in found[1]
    assert not re.search(r"<script(?![^>]*\bsrc=)|\son\w+=|\sstyle=", page)


def test_no_address_of_the_page_is_absolute(dist: Path) -> None:
    page = (dist / "index.html").read_text()
    addresses = re.findall(r'\b(?:src|href)="([^"]*)"', page)
    assert addresses
    assert [each for each in addresses if re.match(r"[a-z]+:|/", each)] == []


def test_what_the_first_visit_needs_is_small(dist: Path) -> None:
    """At most 8.5 MB before the first answer, on a host that compresses nothing."""
    before = ("wasm", "glue", "snapshot", "data")
    needed = sum(boot_facts(dist)["files"][key]["size"] for key in before)
    needed += (dist / PYTHON / "pyodide.mjs").stat().st_size
    needed += sum(path.stat().st_size for path in dist.iterdir() if path.is_file())
    assert needed <= 8_500_000


def test_what_comes_later_is_small_and_in_no_other_parcel(dist: Path) -> None:
    """At most half a megabyte; and the snapshot was taken without it."""
    names = {key: set(parcel_names(dist, key)) for key in ("later", "packages", "data")}
    assert boot_facts(dist)["files"]["later"]["size"] <= 500_000
    assert "engine/solar/climatology.json" in names["later"]
    assert not names["later"] & (names["packages"] | names["data"])


def parcel_names(dist: Path, key: str) -> list[str]:
    content = gzip.decompress((dist / PYTHON / f"{key}.bin").read_bytes())
    length = int.from_bytes(content[:4], "little")
    return [name for name, _ in json.loads(content[4 : 4 + length])]


def test_two_builds_are_byte_identical(
    dist: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    work = tmp_path / "work"
    work.mkdir()
    shutil.copytree(build.WORK / "wheels", work / "wheels")
    shutil.copy(build.WORK / "stamp-wheels", work)
    monkeypatch.setattr(build, "WORK", work)
    monkeypatch.setattr(build, "DIST", tmp_path / "dist")
    build.build()
    first = {path.relative_to(dist): path.read_bytes() for path in build.files_of(dist)}
    again = {path.relative_to(build.DIST): path.read_bytes() for path in build.files_of(build.DIST)}
    assert first.keys() == again.keys()
    assert [str(name) for name in first if first[name] != again[name]] == []

"""Fixtures of the browser tests: hosts that serve dist/, well or badly, and a reader at the page.

The strict content policy forbids Playwright's ``wait_for_function``; :func:`until` polls instead.
"""

import contextlib
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import ConsoleMessage, Error, Page

import build

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PATIENCE = 60.0  # seconds; a CI machine may be slow, and nothing here measures time


def until(page: Page, expression: str, patience: float = PATIENCE) -> Any:
    """Poll a JavaScript expression until it is true, and give its value."""
    end = time.monotonic() + patience
    while time.monotonic() < end:
        with contextlib.suppress(Error):  # a page that loads itself again takes its context along
            if value := page.evaluate(expression):
                return value
        page.wait_for_timeout(50)
    pytest.fail(f"never true in {patience} s: {expression}")


@dataclass
class Host:
    """A static host on this machine, and what was asked of it."""

    address: str
    folder: Path
    server: build.Server
    asked: list[str] = field(default_factory=list)

    def stop(self) -> None:
        self.server.shutdown()
        self.server.server_close()


MakeHost = Callable[..., Host]


def start_host(
    folder: Path,
    *,
    under: str = "/",
    types: dict[str, str] | None = None,
    headers: dict[str, str] | None = None,
    replaced: dict[str, bytes] | None = None,
) -> Host:
    """Serve a folder below a path, with wrong types, more headers or other files if so asked."""
    asked: list[str] = []

    class Odd(build.Handler):
        extensions_map = build.Handler.extensions_map | (types or {})

        def do_GET(self) -> None:  # noqa: N802  (the base's name)
            asked.append(self.path)
            if not self.path.startswith(under):
                self.send_error(404)
                return
            self.path = "/" + self.path.removeprefix(under)
            content = (replaced or {}).get(self.path.removeprefix("/"))
            if content is None:
                super().do_GET()
                return
            self.send_response(200)
            self.send_header("Content-Type", self.guess_type(self.path))
            self.send_header("Content-Length", str(len(content)))
            self.end_headers()
            self.wfile.write(content)

        def end_headers(self) -> None:
            for name, value in (headers or {}).items():
                self.send_header(name, value)
            super().end_headers()

        def log_error(self, format: str, *args: object) -> None:  # noqa: A002
            """Say nothing: the tests look at what was asked."""

    server = build.local_server(folder, handler=Odd)
    threading.Thread(target=server.serve_forever, args=(0.05,), daemon=True).start()
    return Host(f"http://127.0.0.1:{server.server_port}{under}", folder, server, asked)


@dataclass
class Reader:
    """A person at the page: goes, types, presses, and waits until the page has answered."""

    page: Page
    errors: list[str] = field(default_factory=list)

    def open(self, address: str) -> "Reader":
        """Open the page and wait for the engine's first answer."""
        self.page.goto(address)
        return self.wait_ready()

    def wait_ready(self) -> "Reader":
        until(self.page, "document.documentElement.dataset.how || document.getElementById('stop')")
        if (stop := self.page.locator("#stop")).count():
            pytest.fail(f"the page stopped: {stop.inner_text()}")
        return self.settle()

    def settle(self) -> "Reader":
        """Wait until every event has been answered."""
        until(self.page, "!document.documentElement.matches('[data-waking], [data-busy]')")
        return self

    @property
    def how(self) -> str:
        """How Python was started: ``snapshot``, or ``files`` with the reason."""
        return str(self.page.evaluate("document.documentElement.dataset.how ?? ''"))

    def go(self, route: str) -> "Reader":
        """Go to a route, such as ``#energy/loads``."""
        self.page.evaluate("route => { location.hash = route; }", route)
        self.page.wait_for_timeout(20)  # the event of the changed hash comes as a task of its own
        return self.settle()

    def type_in(self, name: str, value: str) -> "Reader":
        """Type into the field of that name and leave it."""
        box = self.page.locator(f'[name="{name}"]').first
        box.fill(value)
        box.blur()
        return self.settle()

    def choose(self, name: str, value: str) -> "Reader":
        """Choose in a list."""
        self.page.locator(f'select[name="{name}"]').first.select_option(value)
        return self.settle()

    def press(self, name: str, arg: str | None = None) -> "Reader":
        """Press the button with that ``data-do``, and that ``data-arg`` if given."""
        more = "" if arg is None else f'[data-arg="{arg}"]'
        self.page.locator(f'button[data-do="{name}"]{more}').first.click()
        return self.settle()

    def wait(self, expression: str) -> Any:
        """Wait until a JavaScript expression is true, and give its value."""
        return until(self.page, expression)

    def text(self, selector: str = "#page") -> str:
        return self.page.locator(selector).inner_text()

    def wait_offline(self) -> "Reader":
        """Wait until the page has proved that it works without its host."""
        until(self.page, "localStorage.getItem('ohmward.proved')")
        return self


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    found = build.find_chromium()
    own = {"executable_path": found} if found else {}
    return {**browser_type_launch_args, **own, "args": list(FLAGS)}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args: dict[str, Any]) -> dict[str, Any]:
    return {**browser_context_args, "viewport": {"width": 1280, "height": 800}}


@pytest.fixture(scope="session")
def dist() -> Path:
    """The built site."""
    build.build()
    return build.DIST


@pytest.fixture(scope="session")
def site(dist: Path) -> Iterator[str]:
    """Give the address of the built site on a well-behaved host."""
    host = start_host(dist)
    yield host.address
    host.stop()


@pytest.fixture
def make_host(dist: Path) -> Iterator[MakeHost]:
    """Give a maker of hosts: ``make_host(folder=…, under=…, types=…, headers=…, replaced=…)``."""
    made: list[Host] = []

    def make(folder: Path = dist, **oddities: Any) -> Host:
        made.append(start_host(folder, **oddities))
        return made[-1]

    yield make
    for host in made:
        host.stop()


@pytest.fixture
def stoppable_site(make_host: MakeHost) -> Host:
    """Give a host of the built site whose ``stop()`` a test may call."""
    return make_host()


@pytest.fixture
def reader(page: Page) -> Reader:
    """Give a reader who has not opened anything; every script error is kept in ``errors``."""
    person = Reader(page)

    def keep(message: ConsoleMessage) -> None:
        if message.type == "error":
            person.errors.append(message.text)

    page.on("console", keep)
    page.on("pageerror", lambda error: person.errors.append(str(error)))
    return person


@pytest.fixture
def page_ready(reader: Reader, site: str) -> Reader:
    """Give a reader at the page with the engine ready."""
    return reader.open(site)

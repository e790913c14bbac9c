"""Runs inside Pyodide at build time: micropip works out what a requirement needs.

It sees local wheels only: make.mjs answers every fetch of ``shelf:`` from the folder of wheels
and refuses all others.
"""

import importlib
import json
import sys
import zipfile
from pathlib import Path


def bring_tool(wheels: str) -> None:
    """Make micropip importable."""
    [tool] = Path(wheels).glob("micropip-*.whl")
    zipfile.ZipFile(tool).extractall("/tool")
    sys.path.append("/tool")


async def frozen(requirement: str) -> str:
    """Resolve and install the requirement; give {name: [version, sha256]} as micropip froze it."""
    micropip = importlib.import_module("micropip")  # there only inside Pyodide, once it is brought
    await micropip.install(requirement, index_urls="shelf:/{package_name}")
    packages = json.loads(micropip.freeze())["packages"]
    return json.dumps({name: [each["version"], each["sha256"]] for name, each in packages.items()})

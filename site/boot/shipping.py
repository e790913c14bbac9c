"""Packs what make.mjs made, and the runtime, for the browser: ``shipping.py MADE RUNTIME``.

Everything big is shipped compressed, since not every host compresses, and is named ``.bin``: with
``.gz`` some hosts would declare an encoding, and the browser would unpack it unasked. boot.mjs
names each file with its size and hash, so that the worker uses no other.
"""

import hashlib
import json
import shutil
import sys
from pathlib import Path
from typing import Final

import deflate

SHIPPED: Final = {
    "wasm": "pyodide.asm.wasm",
    "glue": "pyodide.asm.mjs",
    "snapshot": "snapshot.difference",
    "data": "data.parcel",
    "stdlib": "stdlib.zip",
    "packages": "packages.parcel",
    "later": "later.parcel",
}
SCRIPTS: Final = ("pyodide.mjs", "pyodide.asm.mjs")
SMALLEST: Final = 12  # libdeflate's slowest level


def ship(made: Path, runtime: Path) -> None:
    """Leave in MADE only what is served."""
    files = {}
    for key, source in SHIPPED.items():
        path = made / source
        content = (path if path.exists() else runtime / source).read_bytes()
        path.unlink(missing_ok=True)
        packed = bytes(deflate.gzip_compress(content, SMALLEST))
        name = f"{key}.bin"
        (made / name).write_bytes(packed)
        sha256 = hashlib.sha256(packed).hexdigest()
        files[key] = {"name": name, "size": len(packed), "sha256": sha256}
    facts = made / "boot.json"
    boot = json.loads(facts.read_bytes()) | {"files": files}
    facts.unlink()
    text = json.dumps(boot, separators=(",", ":"))
    (made / "boot.mjs").write_text(f"export default {text};\n", encoding="utf-8", newline="\n")
    for script in SCRIPTS:
        shutil.copyfile(runtime / script, made / script)


if __name__ == "__main__":
    ship(Path(sys.argv[1]), Path(sys.argv[2]))

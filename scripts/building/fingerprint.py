"""Has anything changed since the site was built?"""

import hashlib
import os
from collections.abc import Iterator
from pathlib import Path

INPUTS = ("calc", "docs", "scripts", "mkdocs.yml", "package-lock.json", "requirements.txt")
STAMP = "site-built-from"


def of_inputs(root: Path) -> str:
    """Return a hash over everything the site is made from."""
    digest = hashlib.sha256(os.environ.get("SITE_URL", "").encode())
    for path in _files(root):
        digest.update(f"\n{path.relative_to(root)}\n".encode())
        digest.update(path.read_bytes())
    return digest.hexdigest()


def _files(root: Path) -> Iterator[Path]:
    for name in INPUTS:
        top = root / name
        found = [top] if top.is_file() else sorted(top.rglob("*"))
        yield from (path for path in found if path.is_file() and "__pycache__" not in path.parts)


def stamped(cache: Path, made_from: str) -> bool:
    """Return whether the site was last built from inputs with this hash."""
    stamp_file = cache / STAMP
    return stamp_file.is_file() and stamp_file.read_text() == made_from


def stamp(cache: Path, made_from: str) -> None:
    """Record what the site was built from."""
    (cache / STAMP).write_text(made_from)


def forget(cache: Path) -> None:
    """Forget what the site was built from, before it is replaced."""
    (cache / STAMP).unlink(missing_ok=True)


def short_hash(data: bytes) -> str:
    """Return a hash short enough for a file name."""
    return hashlib.sha256(data).hexdigest()[:12]


def of_folder(folder: Path) -> str:
    """Return a short hash over the names and contents of a folder."""
    digest = hashlib.sha256()
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            digest.update(f"\n{path.relative_to(folder)}\n".encode())
            digest.update(path.read_bytes())
    return digest.hexdigest()[:12]

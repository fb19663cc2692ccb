"""A brotli and a gzip copy beside every file that gains from it, for servers that hand them out.

Results are kept by content, so that a second build compresses only what changed.
"""

import gzip
import os
import shutil
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from hashlib import sha256
from pathlib import Path

import brotli

SUFFIXES = (".css", ".html", ".ics", ".js", ".json", ".mjs", ".pack", ".svg", ".txt", ".wasm", ".xml", ".zip")
WORTH_IT_BYTES = 300
LARGE_BYTES = 1_500_000
BEST_QUALITY = 11
QUICK_QUALITY = 9
"""A tenth larger at a tenth of the time: for megabytes, and for pages, which change with every release.

Not for those that shared links lead to.
"""
LINKED_TO = b'class="rb-calculator"'


def compress(site: Path, cache: Path) -> None:
    """Write the compressed copies of a built site's files."""
    cache.mkdir(parents=True, exist_ok=True)
    paths = [path for path in site.rglob("*")
             if path.suffix in SUFFIXES and path.stat().st_size >= WORTH_IT_BYTES]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        used = set().union(*pool.map(lambda path: _compress_file(path, cache), paths))
    for kept in cache.iterdir():
        if kept not in used:
            kept.unlink()


def _compress_file(path: Path, cache: Path) -> set[Path]:
    data = path.read_bytes()
    key = sha256(data).hexdigest()
    quick = (path.suffix == ".html" and LINKED_TO not in data) or len(data) > LARGE_BYTES
    return {_copy(path, data, cache / (key + suffix), method, quick) for suffix, method in METHODS.items()}


def _copy(path: Path, data: bytes, kept: Path, method: Callable[[bytes, bool], bytes], quick: bool) -> Path:
    if not kept.exists():
        kept.write_bytes(method(data, quick))
    if kept.stat().st_size < len(data):
        shutil.copyfile(kept, path.with_name(path.name + kept.suffix))
    return kept


def _brotli(data: bytes, quick: bool) -> bytes:
    return bytes(brotli.compress(data, quality=QUICK_QUALITY if quick else BEST_QUALITY))


def _gzip(data: bytes, quick: bool) -> bytes:  # noqa: ARG001 (it is quick as it is)
    return gzip.compress(data, compresslevel=9, mtime=0)


METHODS = {".br": _brotli, ".gz": _gzip}

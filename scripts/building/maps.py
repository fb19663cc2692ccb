"""Takes mentions of source maps out of what libraries bring: the site serves no maps."""

import re
from pathlib import Path

MENTION = re.compile(rb"\n?(?://# sourceMappingURL=[^\n]*|/\*# sourceMappingURL=.*?\*/)\n?")
SUFFIXES = (".js", ".mjs", ".css")


def forget(folder: Path) -> None:
    """Remove the mentions from every script and style sheet below a folder."""
    for path in folder.rglob("*"):
        if path.suffix in SUFFIXES:
            code = path.read_bytes()
            without = MENTION.sub(b"\n", code)
            if without != code:
                path.write_bytes(without)

"""What a phone needs to put the site on its home screen: a web app manifest and icons.

On the home screen the browser of many a phone keeps what the site stores, and so the bows.
"""

import json
from pathlib import Path

from scripts.building import icons

MANIFEST = "site.webmanifest"
LOGO = "assets/images/favicon.svg"
GROUND = "#2b2520"
"""The colour behind the logo."""
SAFE = 0.8
"""A phone that cuts icons to its own shape leaves a circle of this share (W3C, Web Application Manifest)."""
ICONS = (
    ("assets/images/icon-180.png", 180, 1.0, None),
    ("assets/images/icon-192.png", 192, 1.0, "any"),
    ("assets/images/icon-512.png", 512, 1.0, "any"),
    ("assets/images/icon-512-cut.png", 512, SAFE, "maskable"),
)
"""File, side in pixels, scale of the logo, and its purpose; without one a page's head names it."""


def write(site: Path) -> None:
    """Put the manifest and its icons into a built site."""
    for name, size, scale, _ in ICONS:
        (site / name).write_bytes(icons.png(site / LOGO, size, scale))
    text = json.dumps(manifest(), indent=1, ensure_ascii=False)
    (site / MANIFEST).write_text(text + "\n", encoding="utf-8")


def manifest() -> dict[str, object]:
    """Return the manifest; its addresses are relative to it, so that the site may live in any folder."""
    return {
        "id": "./", "name": "Rebrace", "short_name": "Rebrace",
        "description": "The bench book with working calculators, and the records of your bows.",
        "lang": "en", "dir": "ltr", "start_url": "./bows/", "scope": "./", "display": "standalone",
        "background_color": GROUND, "theme_color": GROUND,
        "icons": [{"src": LOGO, "sizes": "any", "type": "image/svg+xml"}, *(
            {"src": name, "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}
            for name, size, _, purpose in ICONS if purpose)],
    }

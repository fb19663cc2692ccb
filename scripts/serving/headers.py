"""The headers of every file of the site: said here once, for our own server and for the hosts of others."""

import re

IMMUTABLE = re.compile(r"/assets/(?:(?:css|fonts|javascripts|js|search)-[0-9a-f]{12}/"
                       r"|engine/.*-[0-9a-f]{12}[./])")
"""Addresses with a hash of what they hold: kept for good."""
FOR_GOOD = "max-age=315360000, public, immutable"
ASKED_AFTER = "no-cache"
"""Asked after each time, which is not the same as fetched each time."""
TYPES = {".mjs": "text/javascript", ".js": "text/javascript", ".wasm": "application/wasm",
         ".pack": "application/octet-stream",
         ".webmanifest": "application/manifest+json"}
SCRIPTS = (".mjs", ".js")
SCRIPT_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"
"""A worker takes its policy from its own response."""
PAGE_POLICY = "frame-ancestors 'none'"
"""The rest of a page's policy stands in the page; this part counts only in a header."""
UNUSED_POWERS = ("accelerometer", "camera", "display-capture", "geolocation", "gyroscope", "magnetometer",
                 "microphone", "midi", "payment", "serial", "usb")
"""What no script of ours asks a device for; a picture chosen in a form needs none of them."""
ALWAYS = (
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("Permissions-Policy", ", ".join(f"{each}=()" for each in UNUSED_POWERS)),
)
"""On every response, whatever its status."""


def of_address(address: str) -> list[tuple[str, str]]:
    """Return the headers of what stands at an address of the site, but its type and length.

    Args:
        address: from the site's root, with a slash in front.
    """
    policy = SCRIPT_POLICY if address.endswith(SCRIPTS) else PAGE_POLICY
    kept = FOR_GOOD if IMMUTABLE.match(address) else ASKED_AFTER
    return [*ALWAYS, ("Content-Security-Policy", policy), ("Cache-Control", kept)]

"""What an error says, held to the letter."""

import re


def whole(*parts: str) -> str:
    """Return the pattern of a whole sentence; between two parts of it stands what a test leaves open."""
    return r"\A" + ".+".join(re.escape(part) for part in parts) + r"\Z"

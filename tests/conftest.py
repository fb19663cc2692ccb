"""Settings for all tests."""

import pytest
from hypothesis import settings

# Time is measured in scripts/bench, not in tests; and a run tries the same cases as the one before.
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")

SHARED = ("tests/pages/", "tests/engines/", "tests/site/", "tests/book/")
"""Rooms whose files prepare something dear once, such as a browser, an engine's answers or all pages."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Keep a file of such a room on one worker, so that what it prepares is made once."""
    for item in items:
        file = item.nodeid.split("::")[0]
        if file.startswith(SHARED):
            item.add_marker(pytest.mark.xdist_group(file))

"""Settings for all tests."""

from hypothesis import settings

# Time is measured in scripts/bench, not in tests; and a run tries the same cases as the one before.
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")

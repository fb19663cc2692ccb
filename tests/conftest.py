"""Settings for all tests."""

from hypothesis import settings

settings.register_profile("untimed", deadline=None)  # time is measured in scripts/bench, not in tests
settings.load_profile("untimed")

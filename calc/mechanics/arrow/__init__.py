"""The arrow: its shaft at rest and in vibration, and what leaves the string."""

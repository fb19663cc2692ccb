"""One record a bow: what was read, done and agreed, as entries that are only ever added to."""

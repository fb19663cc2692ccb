"""Published reference tables as data, each with its source."""

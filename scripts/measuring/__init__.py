"""How fast is it? Measurements of the built site in a real browser; medians, no verdicts."""

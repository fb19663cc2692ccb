"""Building, serving, testing and measuring the site; nothing here computes."""

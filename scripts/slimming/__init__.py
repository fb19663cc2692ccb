"""Which functions of the small engine's interpreter can a calculator call? Asked once a release of it."""

"""One module a calculator: its declaration, its compute function, its worked example."""

"""What several calculators ask of, make of and say about one bow."""

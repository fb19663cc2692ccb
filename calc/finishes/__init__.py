"""What several calculators ask of and say about one finish."""

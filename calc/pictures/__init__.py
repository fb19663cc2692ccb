"""Places on a board, read from points that are marked in a photograph of it."""

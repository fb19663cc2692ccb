"""Numbers without a meaning of their own: curves through points, straight lines through readings."""

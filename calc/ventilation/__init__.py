"""What is said of vapour and of the air of a room."""

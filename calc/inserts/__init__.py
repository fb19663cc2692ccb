"""What is said of holes, inserts and screws."""

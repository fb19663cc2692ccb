"""Decision paths: a question at a time to an end that says what to do, and where the book goes on."""

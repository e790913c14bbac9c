"""Protection: what a fuse or breaker may be marked, between its load and its conductor."""

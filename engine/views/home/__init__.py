"""Home: the answer sentences, the first questions, the quick sums."""

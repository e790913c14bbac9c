"""Energy: what a day costs, and the bank that pays it."""

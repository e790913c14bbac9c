"""Shore power and all that is alternating current: what the dock gives, and how it is guarded."""

"""Conductors: sizes, resistance, carrying capacity, drop, and the least size that will do."""

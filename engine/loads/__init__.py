"""Loads: what uses power, in which way of living, and what a day of it costs."""

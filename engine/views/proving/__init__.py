"""Proving: what to look at and what to measure next."""

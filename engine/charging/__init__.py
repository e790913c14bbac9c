"""Charging: what each source gives, and what a bank takes of it."""

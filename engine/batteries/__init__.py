"""Batteries: what each chemistry gives, at a rate, at a temperature, and at what volts."""

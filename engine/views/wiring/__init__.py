"""Wiring: the DC circuits and the inverter."""

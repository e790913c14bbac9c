"""Feeders: the tree of runs from the bank to the loads, and the volts and currents in it."""

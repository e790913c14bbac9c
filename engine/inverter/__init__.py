"""Inverter: watts from the bank for watts out, sag, surge, and how long it can go on."""

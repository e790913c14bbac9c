"""Ohmward's engine: one plan of one boat's electrics, and every answer that follows from it.

Pure Python. The same code runs natively and in the browser; it reads no clock, file, network
or random number, and knows nothing of the page that shows its words.
"""

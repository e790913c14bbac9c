"""What follows in time: charge by the quarter hour, what was lacking, and how likely it is."""

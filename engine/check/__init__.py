"""What follows from a plan at rest: one file per question asked of it."""

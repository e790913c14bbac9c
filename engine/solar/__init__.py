"""The sun: where it stands, what the air lets through, and what a panel makes of it."""

"""The plan: what the owner states, as typed, and nothing that follows from it."""

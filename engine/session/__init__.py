"""The session: what events do to the open plan, and what the page should then show."""

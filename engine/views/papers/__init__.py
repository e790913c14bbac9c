"""Papers: send and receive, backup, print, about and limits."""

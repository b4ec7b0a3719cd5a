"""Pages of a measuring session, in their order."""

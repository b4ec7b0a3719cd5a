"""Pages for recorded clips."""

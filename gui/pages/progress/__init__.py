"""Pages for history, home programme and events."""

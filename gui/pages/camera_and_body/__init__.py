"""Pages for lens, level, body and agreement."""

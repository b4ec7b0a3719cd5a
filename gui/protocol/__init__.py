"""Rules of a session: its plan, the red flags, the return to the starting place."""

"""One recorded clip to one measurement, and observations that are kept and read again."""

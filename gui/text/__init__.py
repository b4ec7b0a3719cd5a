"""Words, sentences and languages of the window."""

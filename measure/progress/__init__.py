"""Change over weeks: series, trend line, weekly verdicts, comparison, home programme, prompts."""

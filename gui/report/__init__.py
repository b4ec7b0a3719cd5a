"""The report as a file or on paper."""

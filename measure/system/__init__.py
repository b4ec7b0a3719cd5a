"""What the operating system offers: paths, atomic files, safe archives, JSON, clock, versions."""

"""Model files: catalogue, fetching, assembly and cache."""

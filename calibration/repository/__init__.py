"""Where lenses, levels, bodies, placements and corrections are kept."""

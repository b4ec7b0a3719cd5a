"""The window: pages, widgets, painting and PDF. No formulas live here."""

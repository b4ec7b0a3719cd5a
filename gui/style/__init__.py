"""Colours, fonts and style sheet.

Public names:

    appearance: Appearance
    fonts: add_bundled_fonts, ensure_fonts
    palette: Scheme
"""

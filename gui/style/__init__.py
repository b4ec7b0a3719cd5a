"""Colours, fonts and style sheet.

Public names:

    appearance: Appearance
    focus_ring: INSET_PX, paint_link_focus, paint_ring, shows_ring
    fonts: add_bundled_fonts, add_typeface, ensure_fonts, window_font
    measures: BAR_PX, BODY_PX, BUTTON_PADDING_PX, BUTTON_RADIUS_PX, CARD_PADDING_PX,
        CARD_RADIUS_PX, CONTENT_PX, DISPLAY, DISPLAY_GROWTH, FIELD_RADIUS_PX, GAP_PX, HEAD,
        HEAD_GROWTH, LARGE_ENOUGH_PX, LINE, MARGIN_PX, SIGN_PADDING_PX, SMALL, TEXT_EDGE_PX, TITLE,
        TITLE_GROWTH
    palette: Scheme
    style_sheet: grown
"""

"""Sizes of the window: four of type, steps of space, width of the content, corners.

Type grows with the text size of the settings, space does not, to leave room for it.
"""

#: Size of running text, device-independent pixels at 100 %. [technical]
BODY_PX = 18
#: The other three sizes of type, relative to running text: what steps back, the heading of a
#: section or a leading sentence, the heading of a page. [technical]
SMALL = 15 / BODY_PX
TITLE = 23 / BODY_PX
DISPLAY = 36 / BODY_PX
#: Size of a number that a page is about, relative to running text: larger than its heading; it
#: grows as headings do. [technical]
NUMBER = 56 / BODY_PX
#: Height of a line of text, relative to the type. [technical]
LINE = 1.3
#: Size of the words in the head of the window, relative to running text: between running text and
#: a section's heading, for all of them stand in one row. [technical]
HEAD = 20 / BODY_PX
#: How much of the growth of text the headings of sections and of pages take part in: they are
#: large already, and what they head needs the room. [technical]
TITLE_GROWTH, DISPLAY_GROWTH = 0.7, 0.45
#: How much of the growth of text the head of the window takes part in where the window is wide
#: enough for it, so that it stays one low row. [technical]
HEAD_GROWTH = 0.4
#: Up to this size running text is set larger on pages that say little; steps beside a camera's
#: picture, read while standing, are never smaller, pixels. [technical]
LARGE_ENOUGH_PX = 30

#: The unit of space between things, device-independent pixels. [technical]
GAP_PX = 8
#: Space beside and above the content of a page, pixels. [technical]
MARGIN_PX = 3 * GAP_PX
#: Widest column that is read with ease, pixels; content is centred in wider windows. [technical]
CONTENT_PX = 960
#: Width of a scroll bar, pixels. [technical]
BAR_PX = 14
#: Width of the bar at the left edge of a page of text that has the keyboard, pixels. [technical]
TEXT_EDGE_PX = 3
#: Round corners of cards, of things to press, and of what is let into them, pixels. [technical]
CARD_RADIUS_PX = 14
BUTTON_RADIUS_PX = 10
FIELD_RADIUS_PX = 8
#: Space inside a card, pixels. [technical]
CARD_PADDING_PX = 24
#: Space inside a button above and beside its word, pixels. [technical]
BUTTON_PADDING_PX = (10, 22)
#: Space inside a sign that something is done, above and beside its words, pixels. [technical]
SIGN_PADDING_PX = (3, 0)

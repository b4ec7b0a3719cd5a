"""The style sheet of the standard widgets, made from a palette and a text size."""

from gui.style.measures import (
    BAR_PX,
    BODY_PX,
    BUTTON_PADDING_PX,
    BUTTON_RADIUS_PX,
    CARD_PADDING_PX,
    CARD_RADIUS_PX,
    DISPLAY,
    DISPLAY_GROWTH,
    FIELD_RADIUS_PX,
    GAP_PX,
    HEAD,
    LARGE_ENOUGH_PX,
    LINE,
    NUMBER,
    SIGN_PADDING_PX,
    SMALL,
    TEXT_EDGE_PX,
    TITLE,
    TITLE_GROWTH,
)
from gui.style.palette import Palette, colours, mixed

#: Room that Qt keeps for a ring beside the words of a cell, which those of a head lack, pixels.
#: [technical]
_CELL_FOCUS_PX = 3
#: Room that Qt keeps between the edge of a field to type into and its text, pixels. [technical]
_IN_FIELD_PX = 2
#: Share of the arm's colour in the ground of a chosen row. [technical]
_TINT = 0.14
#: Share of a control's edge over a hairline where many stand in a row. [technical]
_SOFT = 0.4
#: Size of the ring before a choice in a list, and of the space after it, relative to running text.
#: [technical]
_MARK, _AFTER_MARK = 1.2, 0.5

_TEMPLATE = """
QMainWindow, QDialog, QStackedWidget, QScrollArea, QScrollArea > QWidget > QWidget#page {{
    background: {ground}; border: none; }}
QScrollArea[role="clear"], QScrollArea[role="clear"] > QWidget > QWidget#page {{
    background: transparent; }}
QLabel {{ background: transparent; }}
QLabel[role="display"] {{ font-size: {display}px; font-weight: 700; }}
QLabel[role="number"] {{ font-size: {number}px; font-weight: 700; }}
QLabel[role="title"] {{ font-size: {title}px; font-weight: 700; }}
QLabel[role="lead"] {{ font-size: {title}px; }}
QLabel[role="strong"] {{ font-weight: 700; }}
QLabel[role="quiet"] {{ color: {quiet}; }}
QLabel[role="small"], QLabel[role="notice"] {{ color: {quiet}; font-size: {small}px; }}
QLabel[role="notice"] {{ color: {ink}; }}
QLabel[role="who"] {{ color: {quiet}; padding-bottom: 3px; }}
QLabel[role="alarm"] {{ color: {alarm}; font-size: {title}px; font-weight: 700; }}
QLabel[role="alarm-text"] {{ color: {alarm}; }}
QLabel[role="far-step"] {{ font-size: {far}px; }}
QLabel[role="far-wrong"] {{ color: {hold}; font-size: {far}px; font-weight: 700; }}
QLabel[role="far-good"] {{ color: {arm}; font-size: {far}px; font-weight: 700; }}
QLabel[role="far-right"] {{ color: {arm}; font-weight: 700; }}
QLabel[role="tag"] {{ background: {arm}; color: {on_arm}; font-weight: 700;
    border-radius: {field_radius}px; padding: 0 12px; }}
QLabel[role="saved"] {{ color: {arm}; font-weight: 700; padding: {pad_sign}px {padx_sign}px; }}
QLabel[role="fault"] {{ color: {alarm}; font-weight: 700; }}
QLabel[role="lacking"] {{ color: {hold}; }}
QLabel[role="key"] {{ background: {raised}; border: 1px solid {edge}; border-bottom-width: 3px;
    border-radius: 6px; padding: 1px 8px; min-width: {text}px; }}
QLabel[role="step"], QLabel[role="step-here"] {{ font-size: {far}px; }}
QLabel[role="step-here"] {{ font-weight: 700; }}
QWidget[short="true"] QLabel[role=""] {{ font-size: {short}px; }}
QWidget[short="some"] QLabel[role=""] {{ font-size: {some}px; }}
QFrame[role="card"] {{ background: {raised}; border: 1px solid {line};
    border-radius: {card_radius}px; }}
QFrame[role="sunken-card"] {{ background: {sunken}; border: none;
    border-radius: {card_radius}px; }}
QFrame[role="notice-card"] {{ background: {raised}; border: 1px solid {line};
    border-radius: {card_radius}px; }}
QFrame[role="notice-bar"] {{ color: {hold}; background: transparent; border: none; }}
QFrame[role="lacking-card"] {{ background: {raised}; border: 2px solid {hold};
    border-radius: {card_radius}px; }}
QFrame[role="alarm-card"] {{ background: {raised}; border: 2px solid {alarm};
    border-radius: {card_radius}px; }}
QFrame[role="notice-rule"] {{ background: {hold}; border: none; border-radius: 3px; }}
QFrame[role="alarm-fill"] {{ background: {alarm}; border: none;
    border-radius: {card_radius}px; }}
QFrame[role="alarm-fill"] QLabel {{ color: {ground}; }}
QFrame[role="message"] {{ background: {raised}; border: 2px solid {edge};
    border-radius: {card_radius}px; }}
QFrame[role="hair"] {{ background: {line}; border: none; }}

QPushButton {{ background: {raised}; border: 1px solid {edge}; border-radius: {radius}px;
    padding: {pad}px {padx}px; min-height: {line_px}px; }}
QPushButton:hover {{ background: {sunken}; }}
QPushButton:disabled {{ color: {quiet}; border: 1px dashed {edge}; background: transparent; }}
QPushButton:checked {{ background: {arm}; color: {on_arm}; border-color: {arm}; }}
QPushButton[role="main"] {{ background: {arm}; color: {on_arm}; border-color: {arm};
    font-weight: 700; }}
QPushButton[role="main"]:hover {{ border-color: {ink}; }}
QPushButton[role="main"]:disabled {{ background: {sunken}; color: {quiet};
    border: 1px dashed {edge}; }}
QPushButton[role="link"] {{ border: none; background: transparent; color: {arm};
    text-decoration: underline; padding: {pad}px 0; text-align: left; }}
QPushButton[role="line-link"] {{ border: none; background: transparent; color: {arm};
    text-decoration: underline; padding: 0; }}
QPushButton[role="bare"] {{ border: none; background: transparent;
    padding: {pad}px; }}
QPushButton[role="bare"]:hover {{ background: {sunken}; }}
QPushButton[role="cell"] {{ background: {ground}; border: 1px solid {ground}; text-align: left;
    border-radius: {field_radius}px; margin: 2px 0; padding: 3px 5px; }}
QPushButton[role="cell"]:hover {{ background: {sunken}; }}
QPushButton[role="cell"]:checked {{ background: {tint}; color: {ink}; border-color: {arm}; }}
QPushButton[role="narrow"] {{ padding: {pad}px; }}
QPushButton[role="choice"] {{ background: transparent; border: none; text-align: left;
    padding: 4px 0 4px {pad_mark}px; }}
QPushButton[role="choice"]:hover {{ background: {sunken}; }}
QPushButton[role="choice"]:checked {{ background: transparent; color: {ink}; }}
QPushButton[role="field"] {{ border-radius: {field_radius}px; text-align: left;
    padding: {pad}px {pad_arrow}px {pad}px {pad_line}px; }}
QPushButton[role="loss"] {{ border: 2px solid {alarm}; color: {alarm};
    padding: {pad_g}px {padx_g}px; }}
QPushButton[role="lacking"] {{ border: 2px solid {hold}; padding: {pad_g}px {padx_g}px; }}
QPushButton[role="tile"] {{ text-align: left; }}
QPushButton[role="tile"]:checked {{ background: {raised}; color: {ink};
    border: 2px solid {arm}; padding: {pad_g}px {padx_g}px; }}
QPushButton[role="topic"] {{ border: 1px solid {line}; border-radius: {card_radius}px; }}
QPushButton[role="word"] {{ background: transparent; border: none; border-radius: 0;
    border-bottom: 3px solid transparent; padding: {pad_f}px 4px; color: {quiet}; }}
QPushButton[role="word"]:hover {{ border-bottom-color: {line}; }}
QPushButton[role="word"]:checked, QPushButton[here="true"] {{
    background: transparent; color: {ink}; font-weight: 700;
    border-bottom-color: {arm}; }}
QPushButton[role="large"] {{ font-size: {title}px; }}
QPushButton[role="scale"] {{ font-size: {title}px; padding: {pad}px 0px; min-width: 1px;
    border-color: {soft}; }}
QPushButton[role="scale"]:checked {{ border-color: {arm}; }}
QPushButton[role="large-main"] {{ background: {arm}; color: {on_arm}; border-color: {arm};
    font-size: {title}px; font-weight: 700; min-height: {large_px}px; }}

QPushButton[role="large-second"] {{ font-size: {title}px; min-height: {large_px}px; }}

QPushButton::menu-indicator {{ image: none; width: 0; }}

QTextBrowser[role="paper"] {{ background: #ffffff; color: #000000; border: none;
    border-radius: {card_radius}px; }}
QLineEdit, QPlainTextEdit, QTextBrowser {{ background: {raised}; color: {ink};
    border: 1px solid {edge}; border-radius: {field_radius}px; padding: {pad}px;
    selection-background-color: {arm}; selection-color: {on_arm}; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextBrowser:focus {{
    border: 3px solid {arm}; padding: {pad_f}px; }}
QLineEdit[role="wrong"] {{ border: 2px solid {alarm}; padding: {pad_g}px; }}
QLineEdit[role="wrong"]:focus {{ border: 3px solid {alarm}; padding: {pad_f}px; }}
QFrame[role="joined"] {{ background: {raised}; border: 1px solid {edge};
    border-radius: {field_radius}px; }}
QFrame[role="joined"] QPushButton {{ background: transparent; border: none;
    padding: {pad_g}px; }}
QFrame[role="joined"] QPushButton:hover {{ background: {sunken}; }}
QFrame[role="joined"] QLineEdit {{ background: transparent; border: none; padding: {pad_g}px; }}
QFrame[role="joined"] QLineEdit:focus {{ border: 3px solid {arm}; padding: {pad_j}px; }}

QTextBrowser[role="text"] {{ background: {ground}; border: none;
    border-left: {text_edge}px solid transparent; border-radius: 0; padding: 0; }}
QTextBrowser[role="text"]:focus {{ border: none; border-left: {text_edge}px solid {arm};
    padding: 0; }}

QListWidget {{ background: {raised}; border: 1px solid {line}; outline: none; }}
QListWidget[role="open"] {{ border: none; }}
QListWidget::item {{ padding: {pad}px {pad_list}px; border: none; color: {ink};
    border-radius: {field_radius}px; }}
QListWidget::item:selected {{ background: {arm}; color: {on_arm}; }}

QTableView {{ background: {raised}; border: 1px solid {line}; outline: none; }}
QTableView[role="open"] {{ border: none; }}
QTableView[role="clear"] {{ background: transparent; border: none;
    selection-background-color: transparent; }}
QTableView::item {{ padding: 4px {pad}px; border-bottom: 1px solid {line}; color: {ink}; }}
QTableWidget::item:selected {{ background: {tint}; color: {ink}; }}
QCalendarWidget QTableView {{ border: none; }}
QCalendarWidget QTableView::item {{ padding: 0; border: none; }}
QCalendarWidget QTableView::item:selected {{ background: {arm}; color: {on_arm}; }}
QCalendarWidget QWidget#qt_calendar_navigationbar {{ background: {sunken}; }}
QCalendarWidget QToolButton {{ background: transparent; color: {ink}; border: none;
    border-radius: {field_radius}px; padding: 4px {pad}px; }}
QCalendarWidget QToolButton:hover, QCalendarWidget QToolButton:focus {{ background: {line}; }}
QCalendarWidget QToolButton::menu-indicator {{ image: none; width: 0; }}

QHeaderView {{ background: {raised}; border: none; }}
QHeaderView::section {{ background: {raised}; color: {quiet}; border: none;
    border-bottom: 2px solid {line}; padding: 4px {pad}px 4px {pad_head}px; font-weight: 700; }}
QHeaderView[role="edged"], QHeaderView[role="edged"]::section {{ background: transparent; }}
QHeaderView[role="flush"]::section:first {{ padding-left: 0; }}
QHeaderView[role="edged"]::section:first {{ padding-left: {card_pad}px; }}

QMenuBar {{ background: {ground}; color: {quiet}; }}
QMenuBar::item {{ background: transparent; padding: 4px 10px; }}
QMenuBar::item:selected {{ background: {sunken}; color: {ink}; }}
QMenu {{ background: {raised}; border: 1px solid {edge}; }}
QMenu::item {{ padding: 6px 28px; color: {ink}; }}
QMenu::item:selected {{ background: {arm}; color: {on_arm}; }}
QMenu::item:disabled {{ color: {quiet}; }}
QMenu::separator {{ height: 1px; background: {line}; margin: 4px 8px; }}
QToolTip {{ background: {raised}; color: {ink}; border: 1px solid {edge}; padding: 4px; }}

QPlainTextEdit, QLineEdit {{ placeholder-text-color: {quiet}; }}
QSlider {{ min-height: 34px; }}
QSlider::groove:horizontal {{ height: 6px; background: {line}; border-radius: 3px; }}
QSlider::sub-page:horizontal {{ background: {arm}; border-radius: 3px; }}
QSlider::handle:horizontal {{ background: {raised}; border: 3px solid {arm}; width: 20px;
    margin: -10px 0; border-radius: 13px; }}
QSlider::handle:horizontal:focus {{ background: {arm}; }}
QProgressBar {{ background: {sunken}; border: none; border-radius: 4px; height: 8px;
    text-align: center; color: transparent; }}
QProgressBar::chunk {{ background: {arm}; border-radius: 4px; }}
QScrollBar:vertical {{ background: transparent; width: {bar}px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: {bar}px; margin: 0; }}
QScrollBar::handle {{ background: {edge}; border-radius: 5px; margin: 2px; min-height: 30px;
    min-width: 30px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
"""


def grown(px: float, share: float, percent: int) -> float:
    """Return a size of type that takes part in a share of the growth of text, pixels."""
    return px * (1 + share * (percent / 100 - 1))


def style_sheet(palette: Palette, percent: int) -> str:
    """Return the style sheet for a palette at a text size of 100 to 200 %."""
    body = BODY_PX * percent / 100
    high, wide = BUTTON_PADDING_PX
    sizes = {
        "soft": mixed(palette.line, palette.edge, _SOFT),
        "tint": mixed(palette.raised, palette.arm, _TINT),
        "text": round(body),
        "small": round(body * SMALL),
        "title": round(grown(BODY_PX * TITLE, TITLE_GROWTH, percent)),
        "display": round(grown(BODY_PX * DISPLAY, DISPLAY_GROWTH, percent)),
        "number": round(grown(BODY_PX * NUMBER, DISPLAY_GROWTH, percent)),
        "some": round(max(body, BODY_PX * HEAD)),
        "short": round(max(body, min(body * TITLE, LARGE_ENOUGH_PX))),
        "far": round(max(body, LARGE_ENOUGH_PX)),
        "card_radius": CARD_RADIUS_PX,
        "radius": BUTTON_RADIUS_PX,
        "field_radius": FIELD_RADIUS_PX,
        "bar": BAR_PX,
        "text_edge": TEXT_EDGE_PX,
        "pad": high,
        "padx": wide,
        "pad_g": high - 1,
        "pad_sign": SIGN_PADDING_PX[0],
        "padx_sign": SIGN_PADDING_PX[1],
        "pad_line": high + _IN_FIELD_PX,
        "pad_arrow": 2 * wide,
        "padx_g": wide - 1,
        "pad_f": high - 2,
        "pad_j": high - 4,
        "pad_mark": round(body * _MARK) + round(body * _AFTER_MARK),
        "pad_list": CARD_PADDING_PX - GAP_PX,
        "pad_head": high + _CELL_FOCUS_PX,
        "card_pad": CARD_PADDING_PX,
        "line_px": round(body * LINE),
        "large_px": round(2 * body * LINE),
    }
    return _TEMPLATE.format(**colours(palette), **sizes)

"""The style sheet of the standard widgets, made from a palette and a text size."""

from gui.style.palette import BODY_PX, LEAD, NOTICE, SMALL, TITLE, Palette, colours

_TEMPLATE = """
* {{ font-size: {text}px; }}
QWidget {{ color: {ink}; }}
QMainWindow, QDialog, QStackedWidget, QScrollArea, QScrollArea > QWidget > QWidget#page {{
    background: {ground}; border: none; }}
QLabel {{ background: transparent; }}
QLabel[role="title"] {{ font-size: {title}px; font-weight: 600; }}
QLabel[role="lead"] {{ font-size: {lead}px; }}
QLabel[role="quiet"] {{ color: {quiet}; }}
QLabel[role="notice"] {{ font-size: {notice}px; }}
QLabel[role="small"] {{ color: {quiet}; font-size: {small}px; }}
QLabel[role="alarm"] {{ color: {alarm}; font-size: {title}px; font-weight: 600; }}
QFrame[role="card"] {{ background: {raised}; border: 1px solid {line}; border-radius: 8px; }}
QFrame[role="alarm-card"] {{ background: {raised}; border: 3px solid {alarm}; border-radius: 8px; }}
QFrame[role="hair"] {{ background: {line}; border: none; }}

QPushButton {{ background: {raised}; border: 2px solid {edge}; border-radius: 8px;
    padding: {pad}px {padx}px; min-height: {line_px}px; }}
QPushButton:hover {{ background: {sunken}; }}
QPushButton:focus {{ border: 3px solid {arm}; padding: {pad_f}px {padx_f}px; }}
QPushButton:disabled {{ color: {quiet}; border: 2px dashed {line}; }}
QPushButton:checked {{ background: {arm}; color: {on_arm}; border-color: {arm}; }}
QPushButton:checked:focus {{ border-color: {ink}; }}
QPushButton[role="main"] {{ background: {arm}; color: {on_arm}; border-color: {arm};
    font-weight: 600; }}
QPushButton[role="main"]:hover, QPushButton[role="main"]:focus {{ border-color: {ink}; }}
QPushButton[role="main"]:disabled {{ background: {sunken}; color: {quiet};
    border: 2px dashed {edge}; }}
QPushButton[role="link"] {{ border: none; background: transparent; color: {arm};
    text-decoration: underline; padding: {pad}px 4px; text-align: left; }}
QPushButton[role="link"]:focus {{ border: 2px solid {arm}; }}
QPushButton[role="tile"] {{ text-align: left; padding: {padx}px; }}
QPushButton[role="word"] {{ background: transparent; border: none; border-radius: 0;
    border-bottom: 4px solid transparent; font-size: {lead}px; padding: {pad}px 4px; }}
QPushButton[role="word"]:hover {{ border-bottom-color: {line}; }}
QPushButton[role="word"]:focus {{ border: 2px solid {arm};
    border-bottom: 4px solid {line}; padding: {pad_f}px 2px; }}
QPushButton[role="word"]:checked {{ background: transparent; color: {ink};
    border-bottom-color: {arm}; }}
QPushButton[role="large"] {{ font-size: {lead}px; }}

QPushButton::menu-indicator {{ image: none; width: 0; }}

QLineEdit, QPlainTextEdit, QTextBrowser {{ background: {raised}; color: {ink};
    border: 2px solid {edge}; border-radius: 6px; padding: {pad}px;
    selection-background-color: {arm}; selection-color: {on_arm}; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextBrowser:focus {{ border-color: {arm}; }}

QListWidget {{ background: {raised}; border: 1px solid {line}; outline: none; }}
QListWidget::item {{ padding: {pad}px; border-bottom: 1px solid {line}; color: {ink}; }}
QListWidget::item:selected {{ background: {arm}; color: {on_arm}; }}
QListWidget:focus {{ border: 2px solid {arm}; }}

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
QScrollBar:vertical {{ background: transparent; width: 14px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 14px; margin: 0; }}
QScrollBar::handle {{ background: {edge}; border-radius: 5px; margin: 2px; min-height: 30px;
    min-width: 30px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
"""


def style_sheet(palette: Palette, percent: int) -> str:
    """Return the style sheet for a palette at a text size of 100 to 200 %."""
    body = BODY_PX * percent / 100
    sizes = {
        "text": round(body),
        "title": round(body * TITLE),
        "lead": round(body * LEAD),
        "small": round(body * SMALL),
        "notice": round(body * NOTICE),
        "pad": 8,
        "padx": 18,
        "pad_f": 7,
        "padx_f": 17,
        "line_px": round(body * 1.3),
    }
    return _TEMPLATE.format(**colours(palette), **sizes)

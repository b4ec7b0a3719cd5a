"""Checks of texts and ratings that records hold."""

import datetime as dt
import re
import unicodedata

from measure.errors import InputError
from measure.message import TranslatableMessage

#: Longest name, characters: fits a file name in every alphabet, and a table's column.
#: [technical]
LONGEST_NAME = 60
#: Longest note, characters: a page of text. [technical]
LONGEST_NOTE = 4000

_PARTIAL_DATE = re.compile(r"[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?")
#: Join or part letters in several scripts, without printing anything themselves.
_JOINERS = re.compile("[\u200c\u200d]")

#: C0 and C1 controls but tab and line ends, half characters, and U+FFFE, U+FFFF.
_NO_TEXT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def check_rating(*ratings: int | None) -> None:
    """Raise InputError unless every rating is None or a whole number from 0 to 10."""
    for rating in ratings:
        if rating is not None and not 0 <= rating <= 10:
            raise InputError(
                TranslatableMessage(
                    "Pain is rated from 0 (none) to 10 (worst imaginable), not {rating}.",
                    {"rating": str(rating)},
                )
            )


def check_note(text: str) -> None:
    """Raise InputError when `text` is longer than 4000 characters or is not all text.

    Control characters other than tab and line ends are no text: neither health records nor
    spreadsheets can carry them.
    """
    if len(text) > LONGEST_NOTE:
        raise InputError(
            TranslatableMessage(
                "A note can have {most} characters; this has {count}.",
                {"most": str(LONGEST_NOTE), "count": str(len(text))},
            )
        )
    if _NO_TEXT.search(text):
        raise InputError(
            TranslatableMessage("The note contains characters that are not text. Type it again.")
        )


def check_partial_date(text: str) -> None:
    """Raise InputError unless `text` is a year, a year and month, or a whole date."""
    if not _PARTIAL_DATE.fullmatch(text):
        raise InputError(
            TranslatableMessage(
                "{text} is not a date like 2026, 2026-03 or 2026-03-14.", {"text": repr(text[:40])}
            )
        )
    try:
        dt.date.fromisoformat((text + "-01-01")[:10])
    except ValueError:
        raise InputError(
            TranslatableMessage("There is no such date as {text}.", {"text": text})
        ) from None


PSEUDONYM = TranslatableMessage("A pseudonym")


def checked_name(text: str, what: TranslatableMessage = PSEUDONYM) -> str:
    """Return a name in its one spelling: NFC, single blanks, no blanks around it.

    Parameters
    ----------
    what
        What is named, for errors.

    Raises
    ------
    InputError
        When nothing is left, it is longer than 60 characters, or it holds characters that do
        not print (line breaks, direction marks).
    """
    name = " ".join(unicodedata.normalize("NFC", text).split())
    if not name:
        raise InputError(
            TranslatableMessage("{what} needs at least one character.", {"what": what})
        )
    if len(name) > LONGEST_NAME:
        raise InputError(
            TranslatableMessage(
                "{what} can have {most} characters; this has {count}.",
                {"what": what, "most": str(LONGEST_NAME), "count": str(len(name))},
            )
        )
    if not _JOINERS.sub("", name).isprintable():
        raise InputError(
            TranslatableMessage("{what} can contain printable characters only.", {"what": what})
        )
    return name

"""What a report is to hold, and in which language."""

import datetime as dt
from dataclasses import dataclass

from measure.progress.wording import Translate, english

#: Height of the plots over time where there is room, points. [technical]
TALLEST_PLOT = 73.0
#: Longest question that is printed, characters. [technical]
LONGEST_QUESTION = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportChoices:
    """How a person or a clinician wants a report.

    Attributes
    ----------
    since
        Day from which on the box at the top tells what changed; None for the latest visit or
        event.
    question
        What the person wants to ask the clinician, in their own words.
    details
        With the second page: before and after events, everyday tasks, refusals, how it was
        measured and how to read it.
    landscape
        True for a page that is wider than high.
    plot_height
        Height of the plots over time, points.
    reading_px
        Size of running text for reading on a screen, pixels: wide tables become a line for each
        value. None for paper.
    language
        Code of the language of `tr`, such as "en".
    tr
        Returns a text in the report's language.
    """

    since: dt.date | None = None
    question: str = ""
    details: bool = False
    landscape: bool = False
    plot_height: float = TALLEST_PLOT
    reading_px: float | None = None
    language: str = "en"
    tr: Translate = english

    def __post_init__(self) -> None:
        question = " ".join(self.question.split())[:LONGEST_QUESTION]
        object.__setattr__(self, "question", question)

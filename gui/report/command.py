"""`thawline report`: a person's report for a clinic visit, as HTML or PDF."""

import argparse
import sys
from pathlib import Path

from measure.cli.events import a_day

#: Codes of the languages of a report, named here so that asking for help loads no Qt.
LANGUAGE_CODES = ("en", "es")


def configure(parser: argparse.ArgumentParser) -> None:
    """Write a report for a clinic visit: one page, or with more detail.

    The report opens with a box of a few lines: what has changed on the affected side since the
    latest clinic visit or event, how it compares with the other side, pain, exercises, points to
    discuss, and the person's own question. Then come both sides with their intervals, and charts.
    More pages add events, everyday tasks, what was not measured, how it was measured and how to
    read it. The file ending decides the format: .html for a browser, also without internet, .pdf
    for paper. An existing file is not overwritten.

    exit codes:
      0  done
      1  the disk could not be read or written
      2  no one of that name, or the file cannot be written under that name

    examples:
      thawline report Rosa --to rosa.pdf
      thawline report Rosa --to rosa.html --details
      thawline report Rosa --to rosa.pdf --since 2026-09-12 --question "May I garden again?"
      thawline report Rosa --to rosa.pdf --landscape --language es
      thawline report Rosa --to exercises.pdf --exercises --language es
    """
    parser.add_argument("person", metavar="PERSON", help="the pseudonym")
    parser.add_argument(
        "--to", type=Path, required=True, metavar="FILE", help="the new file: .html or .pdf"
    )
    parser.add_argument(
        "--since", type=a_day, metavar="DATE", help="in the box, say what changed since this day"
    )
    parser.add_argument(
        "--question", default="", metavar="TEXT", help="a question from the person to the clinician"
    )
    parser.add_argument(
        "--exercises",
        action="store_true",
        help="instead of the report, write the person's exercise sheet with drawings (.pdf)",
    )
    parser.add_argument("--details", action="store_true", help="add the pages with more detail")
    parser.add_argument("--landscape", action="store_true", help="landscape pages")
    parser.add_argument(
        "--language",
        choices=LANGUAGE_CODES,
        default="en",
        help="language of the report (default: en)",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    from gui.report.files import write_report
    from gui.report.handout_file import plan_to_print, write_handout
    from gui.report.language import translate_into
    from measure.cli.open_store import open_store
    from measure.report.caveats import NOTICE
    from measure.report.choices import ReportChoices

    with open_store() as store:
        person = store.find_person(arguments.person)
        history = store.history(person.id)
        today = store.now().day
    if arguments.exercises:
        plan = plan_to_print(history, today)
        write_handout(person, plan, arguments.language, arguments.to)
        print(f"{arguments.to} is written.")
        return 0
    choices = ReportChoices(
        since=arguments.since,
        question=arguments.question,
        details=arguments.details,
        landscape=arguments.landscape,
        language=arguments.language,
        tr=translate_into(arguments.language),
    )
    lacking = write_report(history, today, arguments.to, choices)
    if lacking:
        print(
            f"The PDF's font has not these characters, so they may be missing: {lacking}\n"
            "The HTML report shows them.",
            file=sys.stderr,
        )
    print(f"{arguments.to} is written.{' It holds demo data.' if person.demo else ''}")
    print(NOTICE)
    return 0

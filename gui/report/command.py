"""`thawline report`: a person's report for a clinic visit, as HTML or PDF."""

import argparse
import sys
from pathlib import Path


def configure(parser: argparse.ArgumentParser) -> None:
    """Write a report of one or two pages for a clinic visit.

    Who, what was measured and how, first and last readings with their intervals, both sides,
    curves, pain, exercises, everyday tasks, refusals, and the software behind it. The ending
    of the file decides: .html for a page that any browser shows without a network, .pdf for
    paper. A file that is there already is left as it is.

    exit codes:
      0  done
      1  the disk could not be read or written
      2  no one of that name, or the file cannot be written under that name

    examples:
      thawline report Rosa --to rosa.pdf
      thawline report Rosa --to rosa.html
    """
    parser.add_argument("person", metavar="PERSON", help="the pseudonym")
    parser.add_argument(
        "--to", type=Path, required=True, metavar="FILE", help="the new file: .html or .pdf"
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    from gui.report.files import write_report
    from measure.cli.open_store import open_store
    from measure.report.wording import NOTICE

    with open_store() as store:
        person = store.find_person(arguments.person)
        history = store.history(person.id)
        today = store.now().day
    lacking = write_report(history, today, arguments.to)
    if lacking:
        print(
            f"The PDF's font has not these characters, so they may be missing: {lacking}\n"
            "The HTML report shows them.",
            file=sys.stderr,
        )
    print(f"{arguments.to} is written.{' It holds demo data.' if person.demo else ''}")
    print(NOTICE)
    return 0

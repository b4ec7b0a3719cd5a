"""`thawline repeatability`: test-retest repeatability of one person's sessions."""

import argparse


def configure(parser: argparse.ArgumentParser) -> None:
    """Show how well a person's sessions repeat: typical error, drift, smallest change.

    Use it for a shoulder that is not expected to change much. Only sessions done and measured
    like the latest one count. From 8 sessions on, the person's own scatter is used; before that, a
    typical one. This is repeatability, not agreement: an instrument that always reads 10 degrees
    too high repeats perfectly.

    examples:
      thawline repeatability Bramble
    """
    parser.add_argument("person", metavar="PERSON", help="the pseudonym")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the paragraphs; return 0 also where there are no readings yet."""
    from calibration.agreement.retest import repeatability_report
    from measure.cli.open_store import open_store

    with open_store() as store:
        history = store.history(store.find_person(arguments.person).id)
    print(repeatability_report(history))
    return 0

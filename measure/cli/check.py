"""The command `thawline check`: findings about this computer, in words or as JSON."""

import argparse
import json
from importlib.metadata import version

from measure.diagnostics.checks import Finding, check_machine, ready


def configure(parser: argparse.ArgumentParser) -> None:
    """Check that this computer has everything Thawline needs, and how to fix what is missing.

    Checks Python, packages, system libraries, the pose model, the data folder, free space, the
    display and the camera. Nothing is changed, downloaded or sent, and no camera is opened.

    exit codes:
      0  clips can be measured here
      1  something that measuring needs is missing
      2  wrong use

    examples:
      thawline check
      thawline check --json
    """
    parser.add_argument("--json", action="store_true", help="print the findings as JSON")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    findings = check_machine()
    if arguments.json:
        print(_as_json(findings))
    else:
        print(_in_words(findings))
    return 0 if ready(findings) else 1


def _as_json(findings: list[Finding]) -> str:
    return json.dumps(
        {
            "software": {"thawline": version("thawline")},
            "ready": ready(findings),
            "findings": [
                {
                    "name": finding.name,
                    "present": finding.present,
                    "purpose": finding.purpose,
                    "found": finding.result,
                    "cure": finding.cure,
                }
                for finding in findings
            ],
        },
        indent=2,
    )


def _in_words(findings: list[Finding]) -> str:
    lines = []
    for finding in findings:
        if finding.present:
            lines.append(f"ok       {finding.name}: {finding.result}")
        else:
            lines.append(f"MISSING  {finding.name} (for {finding.purpose}): {finding.result}")
            lines.append(f"         {finding.cure}")
    lacking = sorted({finding.purpose.value for finding in findings if not finding.present})
    if not lacking:
        lines.append("\nNothing is missing.")
    elif ready(findings):
        lines.append(f"\nClips can be measured. Something is missing for: {', '.join(lacking)}.")
    else:
        lines.append("\nClips cannot be measured here yet.")
    return "\n".join(lines)

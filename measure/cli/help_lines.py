"""Help lines: one sentence for each command, so that `thawline --help` loads none of them.

Each is the first line of the docstring of the command's ``configure``; a test holds the two equal.
"""

# One sentence a line, however long.
# ruff: noqa: E501

HELP_LINES = {
    "agreement": "Compare camera and goniometer readings from a table.",
    "app": "Open the window: measure, see progress, review clips, set up the camera.",
    "backup": "Copy everything saved about everyone to one new file.",
    "calibrate": "Calibrate the camera's lens and level, the body's lengths, and corrections.",
    "check": "Check that this computer has everything Thawline needs, and how to fix what is missing.",
    "demo": "Read the sample clips and compare them with the true values, or load the demo story.",
    "events": "List, add or delete events between sessions: an injection, another camera.",
    "export": "Write everything saved about one person to a new file. Nothing is ever overwritten.",
    "goals": "List, add, rate or end what a person wants to do again, in their own words.",
    "import": "Import a person's history from a file written by: thawline export --format json",
    "model": "Download, assemble, verify and show the pose model.",
    "people": "List, add, edit, show or delete the people who are measured here, by pseudonym.",
    "plan": "Show, set or end a programme of exercises, and log what was done.",
    "privacy": "Show what this program saves on this computer, where, and how to delete it.",
    "progress": "Print a person's progress: first and last readings, change, trend and verdict.",
    "repeatability": "Show how well a person's sessions repeat: typical error, drift, smallest change.",
    "replay": "Measure shoulder motion in one recorded clip, or in many.",
    "report": "Write a report for a clinic visit: one page, or with more detail.",
    "restore": "Replace all data here with a backup, even if the data are damaged.",
    "sessions": "Print a person's sessions: each movement with its interval, or why it was not measured.",
}

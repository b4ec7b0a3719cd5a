"""Every command but the model's, in an order in which each has what it needs."""

from pathlib import Path

#: Without clips and cameras; `{folder}` is an empty folder.
_COMMANDS = (
    "demo --story",
    "people",
    "people show demo-Bramble",
    "people add Yarrow",
    "sessions demo-Bramble",
    "progress demo-Bramble",
    "events demo-Bramble",
    "plan demo-Bramble",
    "report demo-Bramble --to {folder}/report.html",
    "report demo-Bramble --to {folder}/report.pdf",
    "export demo-Bramble --format json --to {folder}/all.json",
    "export demo-Bramble --format csv --to {folder}/all.csv",
    "export demo-Bramble --format fhir --to {folder}/fhir.json",
    "import {folder}/all.json",
    "backup {folder}/copy.sqlite",
    "restore {folder}/copy.sqlite",
    "calibrate lens sheet {folder}/board.pdf",
    "calibrate level lines --size 640x480 --line 120,40:118,450 --line 530,38:534,452",
    "calibrate body tape --person demo-Bramble --trunk 49 --upper-arm 30 --forearm 25.5",
    "calibrate setup write {folder}/setup.json --person demo-Bramble",
    "privacy",
)


def orders(folder: Path) -> list[list[str]]:
    """Return the arguments of each command; files go to `folder`."""
    return [command.format(folder=folder).split() for command in _COMMANDS]

"""`thawline calibrate lens`: print the board, make lens profiles, list and remove them."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from measure.cli.open_store import open_store

if TYPE_CHECKING:
    from calibration.lens.capture import LensCapture
    from measure.domain.acquisition import LensProfile


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Print the board, make a lens profile from a clip or pictures of it, list profiles."""
    sheet = ways.add_parser("sheet", help="write the board to print, to true scale")
    sheet.add_argument("file", type=Path, metavar="FILE.pdf", help="PDF, or PNG")
    sheet.add_argument("--paper", choices=["a4", "letter"], default="a4")
    sheet.set_defaults(run=_sheet)
    clip = ways.add_parser("clip", help="make a profile from a clip of the board")
    clip.add_argument("source", type=Path, metavar="CLIP")
    clip.add_argument("--quarter-turns", type=int, choices=range(4), default=0)
    clip.add_argument("--mirrored", action="store_true", help="the clip shows a mirror image")
    clip.set_defaults(run=_clip)
    pictures = ways.add_parser("pictures", help="make a profile from a folder of photographs")
    pictures.add_argument("source", type=Path, metavar="FOLDER")
    pictures.set_defaults(run=_pictures)
    for parser in (clip, pictures):
        parser.add_argument(
            "--camera", required=True, metavar="NAME", help="as the system names it"
        )
        parser.add_argument("--try", dest="only_try", action="store_true", help="save nothing")
    listed = ways.add_parser("list", help="list the saved profiles")
    listed.set_defaults(run=_list)
    forget = ways.add_parser("forget", help="remove a camera's profiles")
    forget.add_argument("--camera", required=True, metavar="NAME")
    forget.set_defaults(run=_forget)


def _sheet(arguments: argparse.Namespace) -> int:
    from calibration.lens.board_sheet import PAPERS, RULER_MM, save_board_sheet

    save_board_sheet(arguments.file, PAPERS[arguments.paper])
    print(
        f"Wrote {arguments.file}. Print it at 100 %; the line on it must measure "
        f"{RULER_MM:.0f} mm. Then film the board: hold it still for a moment in each corner, at "
        "each side and in the middle of the picture, near and far, and tilted each way."
    )
    return 0


def _clip(arguments: argparse.Namespace) -> int:
    from tqdm import tqdm

    from calibration.lens.capture import capture_clip

    with tqdm(
        desc="looking for the board",
        unit=" s",
        file=sys.stderr,
        disable=not sys.stderr.isatty(),
        bar_format="{desc}: {n:.0f} s of the clip",
        leave=False,
    ) as drawn:

        def tick(time_s: float) -> None:
            drawn.update(time_s - drawn.n)

        capture = capture_clip(
            arguments.source,
            arguments.camera,
            quarter_turns=arguments.quarter_turns,
            already_mirrored=arguments.mirrored,
            tick=tick,
        )
    return _finish(capture, arguments)


def _pictures(arguments: argparse.Namespace) -> int:
    from calibration.lens.capture import capture_folder

    return _finish(capture_folder(arguments.source, arguments.camera), arguments)


def _finish(capture: "LensCapture", arguments: argparse.Namespace) -> int:
    """Print the result and store the profile; return 0 also for a refusal."""
    fit = capture.fit()
    print(fit.sentence)
    print("Where the board's corners were seen (# yes, . no):")
    for row in fit.coverage.cells:
        print("  " + "".join("#" if seen else "." for seen in row))
    if capture.left_out:
        print(f"{capture.left_out} pictures of another size were left out.")
    if fit.profile is not None:
        print(
            f"Focal length {fit.profile.focal_px[0]:.1f} pixels (give or take "
            f"{fit.focal_error:.1%}), "
            f"worst view {fit.worst_view_px:.2f} pixels."
        )
        if not arguments.only_try:
            with open_store() as store:
                store.save_lens(fit.profile)
            print(f"Saved for {fit.profile.camera_name} at {_size(fit.profile)}.")
    return 0


def _list(arguments: argparse.Namespace) -> int:
    from calibration.lens.fit import horizontal_field_of_view_deg

    with open_store() as store:
        profiles = store.lenses()
    for profile in profiles:
        print(
            f"{profile.camera_name}, {_size(profile)}: "
            f"{horizontal_field_of_view_deg(profile):.0f} degrees wide, "
            f"error {profile.reprojection_px:.2f} pixels, {profile.views} views"
        )
    if not profiles:
        print("No lens profiles yet. Start with: thawline calibrate lens sheet board.pdf")
    return 0


def _forget(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        gone = store.delete_lenses(arguments.camera)
    print(f"{gone} profile{'s' * (gone != 1)} removed.")
    return 0


def _size(profile: "LensProfile") -> str:
    return f"{profile.width_px} x {profile.height_px} pixels"

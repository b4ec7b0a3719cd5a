"""`thawline calibrate level`: the camera's roll and tilt from plumb lines or a standing person."""

import argparse
import datetime as dt
from pathlib import Path

from calibration.cli.arguments import parse_line, parse_size, stored_lens
from measure.cli.open_store import open_store


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Measure how the camera is turned, from upright lines or from someone standing."""
    lines = ways.add_parser(
        "lines", help="from plumb lines or door frames, each given by two points"
    )
    lines.add_argument(
        "--size", type=parse_size, required=True, metavar="WxH", help="of the picture"
    )
    lines.add_argument(
        "--line",
        type=parse_line,
        action="append",
        required=True,
        metavar="X,Y:X,Y",
        help="upper and lower point, pixels from the upper left; two lines well apart also "
        "give the tilt",
    )
    lines.add_argument("--camera", metavar="NAME", help="use its lens profile; save the roll")
    lines.add_argument(
        "--fixed", action="store_true", help="the camera is fixed: keep using the roll after today"
    )
    lines.set_defaults(run=_lines)
    person = ways.add_parser("person", help="a check, from a clip of someone standing upright")
    person.add_argument("clip", type=Path, metavar="CLIP")
    person.add_argument("--camera", metavar="NAME", help="use its lens profile")
    person.add_argument("--stature", type=float, metavar="METRES")
    person.add_argument("--model", type=Path, metavar="FILE", help="a pose bundle of your own")
    person.set_defaults(run=_person)


def _lines(arguments: argparse.Namespace) -> int:
    from calibration.placement.level import orientation_from_plumb_lines
    from calibration.placement.viewpoint import PinholeView
    from measure.domain.calibration_records import CameraLevel

    width, height = arguments.size
    lens = stored_lens(arguments.camera, width, height)
    orientation = orientation_from_plumb_lines(
        arguments.line, PinholeView(width_px=width, height_px=height, lens=lens)
    )
    print(
        f"The camera is turned by {_way(orientation.roll_deg, 'clockwise', 'anticlockwise')}, "
        f"give or take {orientation.roll_half_deg:.1f}."
    )
    if orientation.tilt_deg is not None and orientation.tilt_half_deg is not None:
        print(
            f"It is tilted by {_way(orientation.tilt_deg, 'upwards', 'downwards')}, give or take "
            f"{orientation.tilt_half_deg:.1f}."
        )
    else:
        print("One line, or lines close together, cannot give the tilt.")
    if lens is None:
        print("The lens is not calibrated; a typical field of view was assumed.")
    if arguments.camera is not None:
        level = CameraLevel(
            camera_name=arguments.camera,
            roll_deg=orientation.roll_deg,
            half_deg=orientation.roll_half_deg,
            day=dt.date.today(),
            fixed=arguments.fixed,
        )
        with open_store() as store:
            store.save_level(level)
        print(f"Saved for {arguments.camera}{'' if arguments.fixed else ', for today only'}.")
    return 0


def _person(arguments: argparse.Namespace) -> int:
    from calibration.body.clip_track import track_from_clip
    from calibration.placement.standing import WithUncertainty, estimate_from_standing
    from calibration.placement.viewpoint import PinholeView

    track = track_from_clip(arguments.clip, own_model=arguments.model)
    lens = stored_lens(arguments.camera, track.width_px, track.height_px)
    view = PinholeView(width_px=track.width_px, height_px=track.height_px, lens=lens)
    estimate = estimate_from_standing(track, view, arguments.stature)
    if isinstance(estimate, str):
        print(estimate)
        return 0

    def line(name: str, rough: WithUncertainty | None, unit: str) -> str:
        if rough is None:
            return f"{name}: unknown, because the legs were not seen."
        return f"{name}: {rough.value:.1f} {unit}, give or take {rough.half:.1f}."

    print("As a rough check, if the person stands upright:")
    print(line("Turned clockwise by", estimate.roll_deg, "degrees"))
    print(line("Tilted upwards by", estimate.tilt_deg, "degrees"))
    print(line("Distance", estimate.distance_m, "m"))
    print(line("Camera height", estimate.height_m, "m"))
    return 0


def _way(angle_deg: float, positive: str, negative: str) -> str:
    shown = round(abs(angle_deg), 1)
    if shown == 0:
        return "0.0 degrees"
    return f"{shown:.1f} degrees {positive if angle_deg > 0 else negative}"

"""`thawline calibrate body`: a person's lengths and marks."""

import argparse
import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

from calibration.cli.arguments import add_person, parse_point, stored_lens
from measure.cli.open_store import open_store, person_id_of

if TYPE_CHECKING:
    from calibration.body.lengths import BodyLengths
    from measure.domain.calibration_records import BodyRecord, BodySource
    from measure.domain.tracks import Track


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Find a person's arm lengths and shoulder width, and mark C7 and the pelvis."""
    poses = ways.add_parser("poses", help="from clips of two poses facing the camera")
    poses.add_argument("neutral", type=Path, metavar="NEUTRAL", help="standing, arms hanging")
    poses.add_argument(
        "raised",
        type=Path,
        nargs="?",
        metavar="RAISED",
        help="arms out to the sides, no further than is comfortable",
    )
    poses.set_defaults(run=_poses)
    marks = ways.add_parser("marks", help="C7 and pelvis, marked in a clip of the back")
    marks.add_argument("clip", type=Path, metavar="CLIP", help="standing still, back to the camera")
    marks.add_argument("--c7", type=parse_point, required=True, metavar="X,Y")
    marks.add_argument(
        "--spines",
        type=parse_point,
        nargs=2,
        required=True,
        metavar="X,Y",
        help="the two dimples above the buttocks",
    )
    marks.set_defaults(run=_marks)
    for parser in (poses, marks):
        parser.add_argument("--camera", metavar="NAME", help="use its lens profile")
        parser.add_argument("--model", type=Path, metavar="FILE", help="a pose bundle of your own")
    tape = ways.add_parser("tape", help="typed in from a tape measure, in centimetres")
    tape.add_argument("--trunk", type=float, required=True, metavar="CM", help="hip to shoulder")
    tape.add_argument("--upper-arm", type=float, metavar="CM")
    tape.add_argument("--forearm", type=float, metavar="CM")
    tape.add_argument("--shoulder-width", type=float, metavar="CM")
    tape.set_defaults(run=_tape)
    show = ways.add_parser("show", help="show what is saved")
    show.set_defaults(run=_show)
    add_person(poses, marks, tape, show)


def _poses(arguments: argparse.Namespace) -> int:
    from calibration.body.lengths import lengths_from_poses
    from measure.domain.calibration_records import BodySource

    person_id = person_id_of(arguments.person)
    neutral = _ideal_track(arguments.neutral, arguments)
    raised = _ideal_track(arguments.raised, arguments) if arguments.raised else None
    lengths = lengths_from_poses(neutral, raised)
    if isinstance(lengths, str):
        print(lengths)
        return 0
    return _keep(person_id, lengths, BodySource.POSES)


def _tape(arguments: argparse.Namespace) -> int:
    from calibration.body.lengths import lengths_from_tape
    from measure.domain.calibration_records import BodySource

    lengths = lengths_from_tape(
        trunk_cm=arguments.trunk,
        upper_arm_cm=arguments.upper_arm,
        forearm_cm=arguments.forearm,
        shoulder_width_cm=arguments.shoulder_width,
    )
    return _keep(person_id_of(arguments.person), lengths, BodySource.TAPE)


def _marks(arguments: argparse.Namespace) -> int:
    import numpy as np

    from calibration.body.clip_track import track_from_clip
    from calibration.body.landmarks_by_hand import locate_back_landmarks
    from calibration.body.record import save_back_landmarks
    from measure.kinematics.camera_geometry import undistort_points, undistort_track
    from measure.kinematics.neutral_pose import median_points

    person_id = person_id_of(arguments.person)
    track = track_from_clip(arguments.clip, own_model=arguments.model)
    marked = np.array([arguments.c7, *arguments.spines])
    lens = stored_lens(arguments.camera, track.width_px, track.height_px)
    if lens is not None:
        track, marked = undistort_track(track, lens), undistort_points(marked, lens)
    c7, first, second = ((float(x), float(y)) for x, y in marked)
    landmarks = locate_back_landmarks(median_points(track), c7, (first, second))
    with open_store() as store:
        record = save_back_landmarks(
            store, person_id, landmarks.c7_height, landmarks.iliac_spines, dt.date.today()
        )
    _print_record(record)
    return 0


def _show(arguments: argparse.Namespace) -> int:
    from calibration.body.record import body_record_warnings

    with open_store() as store:
        record = store.body(store.find_person(arguments.person).id)
    if record is None:
        print("Nothing is saved about this person's body.")
        return 0
    _print_record(record)
    for warning in body_record_warnings(record, dt.date.today()):
        print(f"Not used until measured again: {warning}")
    return 0


def _ideal_track(clip: Path, arguments: argparse.Namespace) -> "Track":
    from calibration.body.clip_track import track_from_clip
    from measure.kinematics.camera_geometry import undistort_track

    track = track_from_clip(clip, own_model=arguments.model)
    lens = stored_lens(arguments.camera, track.width_px, track.height_px)
    return track if lens is None else undistort_track(track, lens)


def _keep(person_id: str, lengths: "BodyLengths", source: "BodySource") -> int:
    from calibration.body.record import save_body_lengths

    for note in lengths.notes:
        print(f"Note: {note}")
    with open_store() as store:
        record = save_body_lengths(store, person_id, lengths.body, source, dt.date.today())
    _print_record(record)
    print(f"The lengths may be wrong by up to {lengths.share_error:.0%}.")
    return 0


def _print_record(record: "BodyRecord") -> None:
    names = {
        "upper_arm": "Upper arm",
        "forearm": "Forearm",
        "shoulder_width": "Shoulder width",
        "c7_height": "C7 above mid-hip",
        "iliac_spines": "Iliac spines above mid-hip",
    }
    print("As shares of the trunk (mid-hip to mid-shoulder):")
    for field, name in names.items():
        value = getattr(record.body, field)
        print(f"  {name}: {'unknown' if value is None else f'{value:.2f}'}")
    if record.lengths_day is not None:
        print(f"  Lengths from {record.lengths_from}, {record.lengths_day.isoformat()}.")
    if record.marks_day is not None:
        print(f"  Marks from {record.marks_day.isoformat()}.")

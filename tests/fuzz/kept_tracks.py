"""A small file of kept tracks, made from a stick figure without any clip."""

from pathlib import Path
from tempfile import TemporaryDirectory

from measure.clips.inputs import ClipEntry
from measure.clips.observation import ClipObservation
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.pose.jobs import ClipInfo
from measure.system.versions import software
from tests.support.stick_figure import elevation_track, raise_and_hold

PASSES = ("full", "full mirrored", "heavy", "heavy mirrored")


def kept_tracks() -> bytes:
    """Return the file's contents."""
    track = elevation_track(
        raise_and_hold(95.0), Movement.ABDUCTION, Side.LEFT, View.FRONT, trunk_px=110
    )
    end_s = float(track.time_s[-1])
    observation = ClipObservation(
        movement=Movement.ABDUCTION,
        side=Side.LEFT,
        view=View.FRONT,
        model="heavy",
        facts=ClipInfo(
            width_px=track.width_px,
            height_px=track.height_px,
            frames_read=len(track),
            frames_expected=len(track),
            frames_unreadable=0,
            duration_s=end_s,
            measured_fps=7.5,
            backend="script",
            rotation_deg=0,
            sample_aspect=1.0,
        ),
        coarse=track,
        model_hashes={"heavy": "0" * 64},
        passes=PASSES,
        software=software(),
        fine=dict.fromkeys(PASSES, track),
        windows=((0.0, end_s),),
    )
    entry = ClipEntry(clip=Path("raise.mp4"), movement=Movement.ABDUCTION, side=Side.LEFT)
    with TemporaryDirectory() as folder:
        path = Path(folder) / "kept.npz"
        save_observation(path, entry, observation)
        return path.read_bytes()


def use_tracks(path: Path) -> None:
    """Read the file, and the reading that follows from it."""
    _, observation = load_observation(path)
    measurement_from_observation(observation, Setup())

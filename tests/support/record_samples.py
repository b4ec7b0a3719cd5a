"""Records of the allotment garden for tests: small, whole, and the same every time."""

import datetime as dt
import hashlib

from measure.domain.acquisition import BodySetup, CameraSetup, Correction, LensProfile, Setup
from measure.domain.calibration_records import (
    BodyRecord,
    BodySource,
    CameraLevel,
    Placement,
    StoredCorrection,
    StoredStudy,
)
from measure.domain.error_sizes import StudyError
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.home_programme_records import (
    ComparedWithLast,
    ExerciseLog,
    NextMorning,
    Plan,
    PlannedExercise,
)
from measure.domain.landmarks import Side
from measure.domain.measurements import LevelBand, Measurement, Provenance, Status, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import Reason
from measure.domain.records import (
    AssessmentCondition,
    Assistance,
    BodyPosition,
    Event,
    EventKind,
    LimitingFactor,
    MeasurementRecord,
    Onset,
    Pain,
    Person,
    SessionRecord,
)
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome, ScreeningRecord
from measure.domain.session_facts import (
    ClinicianMethod,
    ClinicianValue,
    ExerciseTiming,
    SessionState,
)
from measure.system.clock import Timestamp


def some_id(name: str) -> str:
    """Return the same identifier for the same name."""
    return hashlib.sha256(name.encode("utf-8", "replace")).hexdigest()[:32]


class FixedClock:
    """A clock that tests set, and that people may set back."""

    def __init__(self, utc: str = "2026-04-01T08:00:00+00:00", offset_min: int = 120) -> None:
        self.utc = dt.datetime.fromisoformat(utc)
        self.offset_min = offset_min
        self.seconds = 1000.0

    def now(self) -> Timestamp:
        return Timestamp(utc=self.utc, offset_min=self.offset_min, zone="Europe/Vienna")

    def monotonic_s(self) -> float:
        return self.seconds


def moment(utc: str, offset_min: int = 120, zone: str = "Europe/Vienna") -> Timestamp:
    return Timestamp(utc=dt.datetime.fromisoformat(utc), offset_min=offset_min, zone=zone)


def person(name: str = "Rosa", **changes: object) -> Person:
    values: dict[str, object] = {
        "id": some_id(name),
        "pseudonym": name,
        "affected": (Side.LEFT,),
        "dominant": Side.RIGHT,
        "since": "2026-01",
        "onset": Onset.GRADUAL,
    }
    return Person(**(values | changes))  # type: ignore[arg-type]


def session(who: Person, number: int = 1, **changes: object) -> SessionRecord:
    start = dt.datetime(2026, 4, 1, 8, tzinfo=dt.UTC) + dt.timedelta(days=number)
    values: dict[str, object] = {
        "id": some_id(f"session {number} of {who.id}"),
        "person_id": who.id,
        "started": Timestamp(utc=start, offset_min=120, zone="Europe/Vienna"),
        "pain": Pain(rest=1, night=4, worst_24h=6),
        "note": "After planting beans.",
        "duration_s": 312.5,
        "finished": True,
    }
    return SessionRecord(**(values | changes))  # type: ignore[arg-type]


def trial(value: float | None = 91.25, **changes: object) -> Trial:
    values: dict[str, object] = {
        "value": value,
        "low": None if value is None else value - 8.5,
        "high": None if value is None else value + 8.5,
        "start_s": 1.5,
        "end_s": 9.25,
        "hold_start_s": 4.0,
        "hold_end_s": 6.5,
        "spread": None if value is None else 0.75,
    }
    return Trial(**(values | changes))  # type: ignore[arg-type]


REFUSED_TRIAL = trial(
    None,
    hold_start_s=None,
    hold_end_s=None,
    flags=(Reason.TRUNK_LEAN, Reason.SHRUG),
    refused_for=(Reason.TRUNK_LEAN,),
)

LENS = LensProfile(
    camera_name="Laptop camera",
    width_px=1280,
    height_px=720,
    focal_px=(1002.5, 1001.25),
    centre_px=(640.0, 360.5),
    distortion=(0.1, -0.2, 0.0, 0.001, 0.0),
    reprojection_px=0.375,
    views=18,
)

SETUP = Setup(
    camera=CameraSetup(
        name="Laptop camera",
        lens=LENS,
        roll_deg=-1.5,
    ),
    body=BodySetup(upper_arm=0.6, forearm=0.5),
    correction=Correction(bias_deg=2.0, gain=0.01, centre_deg=90.0, pairs=40, study="garden"),
)

PROVENANCE = Provenance(
    model="heavy",
    model_hashes={"heavy": "59e4" * 16, "full": "e9a5" * 16},
    passes=("heavy", "heavy mirrored"),
    software={"thawline": "0.1.0", "mediapipe": "1.2.3"},
    source={"frames": "450 of 452", "fps": "29.9"},
    setup=SETUP,
)


def measurement(**changes: object) -> Measurement:
    values: dict[str, object] = {
        "movement": Movement.FLEXION,
        "side": Side.LEFT,
        "view": View.SIDE,
        "status": Status.READING,
        "unit": Unit.DEGREES,
        "value": 91.25,
        "low": 83.0,
        "high": 99.5,
        "best": 93.5,
        "against_vertical": 90.5,
        "trials": (trial(91.25), trial(93.5), REFUSED_TRIAL, trial(90.75)),
        "reasons": (Reason.SPREAD_TRIALS,),
        "provenance": PROVENANCE,
    }
    return Measurement(**(values | changes))  # type: ignore[arg-type]


REACH = measurement(
    movement=Movement.HAND_BEHIND_BACK,
    view=View.BACK,
    unit=Unit.FRACTION,
    value=0.5,
    low=0.375,
    high=0.625,
    best=0.5,
    against_vertical=None,
    trials=(trial(0.5, low=0.375, high=0.625, spread=0.03125),),
    reasons=(Reason.FEW_TRIALS,),
    level=LevelBand(low="L3", high="T12", band="upper lumbar"),
)

REFUSAL = measurement(
    movement=Movement.EXTERNAL_ROTATION,
    view=View.OBLIQUE,
    status=Status.REFUSED,
    value=None,
    low=None,
    high=None,
    best=None,
    against_vertical=None,
    trials=(REFUSED_TRIAL,),
    reasons=(Reason.TRUNK_LEAN, Reason.FEW_TRIALS),
)


def record(
    of: SessionRecord, number: int = 1, found: Measurement | None = None, **changes: object
) -> MeasurementRecord:
    values: dict[str, object] = {
        "id": some_id(f"measurement {number} of {of.id}"),
        "session_id": of.id,
        "person_id": of.person_id,
        "taken": Timestamp(
            utc=of.started.utc + dt.timedelta(minutes=number), offset_min=120, zone="Europe/Vienna"
        ),
        "measurement": found or measurement(),
        "conduct": AssessmentCondition(help=Assistance.OTHER_HAND, posture=BodyPosition.SITTING),
        "pain_during": 5,
        "stopped_by": LimitingFactor.STIFFNESS,
        "overridden": (Reason.SHRUG,),
    }
    return MeasurementRecord(**(values | changes))  # type: ignore[arg-type]


def event(who: Person, **changes: object) -> Event:
    values: dict[str, object] = {
        "id": some_id(f"event of {who.id}"),
        "person_id": who.id,
        "day": dt.date(2026, 4, 20),
        "kind": EventKind.INJECTION,
        "side": Side.LEFT,
        "note": "Told to rest for a week.",
    }
    return Event(**(values | changes))  # type: ignore[arg-type]


def plan(who: Person, **changes: object) -> Plan:
    values: dict[str, object] = {
        "id": some_id(f"plan of {who.id}"),
        "person_id": who.id,
        "first_day": dt.date(2026, 4, 2),
        "exercises": (
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=3, hold_s=0
            ),
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.TOWEL), times_a_day=2, hold_s=10
            ),
        ),
        "pain_limit": 3,
        "chosen_by": "physiotherapist",
    }
    return Plan(**(values | changes))  # type: ignore[arg-type]


def exercise_log(who: Person, **changes: object) -> ExerciseLog:
    values: dict[str, object] = {
        "id": some_id(f"stretch of {who.id}"),
        "person_id": who.id,
        "exercise": Exercise(listed=ListedExercise.PENDULUM),
        "done": moment("2026-04-03T06:30:00+00:00"),
    }
    return ExerciseLog(**(values | changes))  # type: ignore[arg-type]


def own_plan(who: Person) -> Plan:
    """A plan that follows with everything that a plan can hold."""
    return plan(
        who,
        id=some_id(f"second plan of {who.id}"),
        first_day=dt.date(2026, 4, 16),
        exercises=(
            PlannedExercise(
                exercise=Exercise(own_name="Door lean"),
                repetitions=10,
                hold_s=15,
                times_a_day=3,
                sides=(Side.LEFT,),
                note="Lean in a doorway, the hand on its frame.",
            ),
        ),
        review=dt.date(2026, 5, 14),
    )


def own_exercise_log(who: Person) -> ExerciseLog:
    """An exercise that was done, with everything that can be said about it."""
    return exercise_log(
        who,
        id=some_id(f"own exercise of {who.id}"),
        exercise=Exercise(own_name="Door lean"),
        done=moment("2026-04-17T06:30:00+00:00"),
        pain=3,
        compared=ComparedWithLast.EASIER,
        repetitions=6,
    )


def next_morning(who: Person) -> NextMorning:
    return NextMorning(
        id=some_id(f"morning of {who.id}"),
        person_id=who.id,
        day=dt.date(2026, 4, 17),
        eased=False,
    )


def goal(who: Person, **changes: object) -> Goal:
    values: dict[str, object] = {
        "id": some_id(f"goal of {who.id}"),
        "person_id": who.id,
        "words": "Put on a jacket",
        "first_day": dt.date(2026, 4, 2),
    }
    return Goal(**(values | changes))  # type: ignore[arg-type]


def goal_rating(who: Person, **changes: object) -> GoalRating:
    values: dict[str, object] = {
        "id": some_id(f"rating of {who.id}"),
        "person_id": who.id,
        "goal_id": goal(who).id,
        "day": dt.date(2026, 4, 2),
        "rating": 3,
    }
    return GoalRating(**(values | changes))  # type: ignore[arg-type]


def full_session(who: Person) -> SessionRecord:
    """A session that says everything a session can say."""
    return session(
        who,
        3,
        state=SessionState(timing=ExerciseTiming.AFTER, pain_relief=True),
        clinician_values=(
            ClinicianValue(
                movement=Movement.FLEXION,
                side=Side.LEFT,
                method=ClinicianMethod.PASSIVE,
                value_deg=105.0,
            ),
            ClinicianValue(
                movement=Movement.FLEXION,
                side=Side.LEFT,
                method=ClinicianMethod.GONIOMETER,
                value_deg=98.5,
            ),
        ),
    )


def screening(who: Person, number: int = 1, **changes: object) -> ScreeningRecord:
    values: dict[str, object] = {
        "id": some_id(f"screening {number} of {who.id}"),
        "person_id": who.id,
        "day": dt.date(2026, 4, number),
        "occasion": ScreeningOccasion.BEFORE,
        "outcome": ScreeningOutcome.CLEAR,
    }
    return ScreeningRecord(**(values | changes))  # type: ignore[arg-type]


def body(who: Person, **changes: object) -> BodyRecord:
    values: dict[str, object] = {
        "person_id": who.id,
        "body": BodySetup(
            upper_arm=0.6, forearm=0.5, shoulder_width=0.75, c7_height=1.25, iliac_spines=0.125
        ),
        "lengths_from": BodySource.TAPE,
        "lengths_day": dt.date(2026, 4, 1),
        "marks_day": dt.date(2026, 4, 2),
    }
    return BodyRecord(**(values | changes))  # type: ignore[arg-type]


def place(who: Person, **changes: object) -> Placement:
    values: dict[str, object] = {
        "person_id": who.id,
        "movement": Movement.FLEXION,
        "side": Side.LEFT,
        "camera_name": "Laptop camera",
        "width_px": 1280,
        "height_px": 720,
        "trunk_px": 250.5,
        "width_over_trunk": 0.125,
        "lean_deg": -0.5,
        "shoulder_width": None,
        "roll_deg": -1.5,
        "taken": dt.date(2026, 4, 1),
    }
    return Placement(**(values | changes))  # type: ignore[arg-type]


LEVEL = CameraLevel(
    camera_name="Laptop camera", roll_deg=-1.5, half_deg=0.25, day=dt.date(2026, 4, 1)
)
STUDY = StoredStudy(
    camera_name="Laptop camera",
    movement=Movement.FLEXION,
    error=StudyError(
        sd_deg=3.5, bias_deg=2.0, bias_half_deg=1.25, pairs=40, people=20, study="garden"
    ),
)
CORRECTION = StoredCorrection(
    camera_name="Laptop camera",
    movement=Movement.FLEXION,
    correction=Correction(
        bias_deg=2.0,
        gain=0.01,
        centre_deg=90.0,
        pairs=40,
        study="garden",
        lowest_deg=40.0,
        highest_deg=150.0,
    ),
    switched_on=True,
)

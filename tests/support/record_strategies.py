"""Hypothesis strategies for records: everything the store and the exports must carry."""

import datetime as dt
import unicodedata

from hypothesis import strategies as st

from measure.domain.acquisition import BodySetup, CameraSetup, Correction, LensProfile, Setup
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
from measure.domain.measurements import LevelBand, Measurement, Provenance, Reference, Status, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import Reason
from measure.domain.records import (
    AgeBand,
    AssessmentCondition,
    Assistance,
    BodyPosition,
    Event,
    EventKind,
    History,
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

_CONTROLS = "".join(map(chr, [*range(0x20), *range(0x7F, 0xA0)])) + "\ufffe\uffff"

numbers = st.floats(allow_nan=False, allow_infinity=False, width=64)
ids = st.binary(min_size=16, max_size=16).map(bytes.hex)
texts = st.text(
    st.characters(exclude_categories=["Cs"], exclude_characters=_CONTROLS.replace("\n", "")),
    max_size=40,
)
ratings = st.none() | st.integers(0, 10)
sides = st.sampled_from(Side)
reasons = st.lists(st.sampled_from(Reason), max_size=3, unique=True).map(tuple)
moments = st.builds(
    Timestamp,
    utc=st.datetimes(dt.datetime(1971, 1, 1), dt.datetime(2199, 1, 1), timezones=st.just(dt.UTC)),
    offset_min=st.integers(-840, 840),
    zone=st.sampled_from(["Europe/Vienna", "America/St_Johns", ""]),
)
days = st.dates(dt.date(1971, 1, 1), dt.date(2199, 1, 1))


def _is_name(text: str) -> bool:
    name = " ".join(unicodedata.normalize("NFC", text).split())
    return bool(name) and name.isprintable() and len(name) <= 60


names = st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=30).filter(
    _is_name
)
conducts = st.builds(
    AssessmentCondition, help=st.sampled_from(Assistance), posture=st.sampled_from(BodyPosition)
)
lenses = st.builds(
    LensProfile,
    camera_name=texts,
    width_px=st.integers(1, 10_000),
    height_px=st.integers(1, 10_000),
    focal_px=st.tuples(numbers, numbers),
    centre_px=st.tuples(numbers, numbers),
    distortion=st.tuples(*[numbers] * 5),
    reprojection_px=numbers,
    views=st.integers(0, 100),
)
setups = st.builds(
    Setup,
    camera=st.builds(
        CameraSetup,
        name=st.none() | texts,
        lens=st.none() | lenses,
        roll_deg=st.none() | numbers,
        already_mirrored=st.booleans(),
        quarter_turns=st.integers(0, 3),
    ),
    body=st.builds(BodySetup, upper_arm=st.none() | numbers, c7_height=st.none() | numbers),
    correction=st.none()
    | st.builds(
        Correction,
        bias_deg=numbers,
        gain=numbers,
        centre_deg=numbers,
        pairs=st.integers(0, 999),
        study=texts,
    ),
)
provenances = st.builds(
    Provenance,
    model=st.sampled_from(["lite", "full", "heavy", "own"]),
    model_hashes=st.dictionaries(st.sampled_from(["full", "heavy"]), texts, max_size=2),
    passes=st.lists(texts, max_size=2).map(tuple),
    software=st.dictionaries(texts, texts, max_size=2),
    source=st.dictionaries(texts, texts, max_size=2),
    setup=setups,
)


@st.composite
def trials(draw: st.DrawFn) -> Trial:
    refused_for = draw(reasons)
    value = draw(numbers) if not refused_for else draw(st.none() | numbers)
    return Trial(
        value=value,
        low=draw(st.none() | numbers),
        high=draw(st.none() | numbers),
        start_s=draw(numbers),
        end_s=draw(numbers),
        hold_start_s=draw(st.none() | numbers),
        hold_end_s=draw(st.none() | numbers),
        flags=draw(reasons),
        refused_for=refused_for,
        spread=draw(st.none() | numbers),
    )


@st.composite
def measurements(draw: st.DrawFn) -> Measurement:
    refused = draw(st.booleans())
    why = draw(reasons)
    return Measurement(
        movement=draw(st.sampled_from(Movement)),
        side=draw(sides),
        view=draw(st.sampled_from(View)),
        status=Status.REFUSED if refused else Status.READING,
        unit=draw(st.sampled_from(Unit)),
        value=None if refused else draw(numbers),
        low=None if refused else draw(numbers),
        high=None if refused else draw(numbers),
        trials=tuple(draw(st.lists(trials(), max_size=4))),
        reasons=why or ((Reason.NO_HOLD,) if refused else ()),
        provenance=draw(provenances),
        best=draw(st.none() | numbers),
        against_vertical=draw(st.none() | numbers),
        reference=draw(st.sampled_from(Reference)),
        level=draw(st.none() | st.builds(LevelBand, low=texts, high=texts, band=texts)),
    )


people = st.builds(
    Person,
    id=ids,
    pseudonym=names,
    affected=st.lists(sides, max_size=2).map(tuple),
    dominant=st.none() | sides,
    since=st.none() | st.sampled_from(["2025", "2025-11", "2025-11-30"]),
    onset=st.none() | st.sampled_from(Onset),
    age_band=st.none() | st.sampled_from(AgeBand),
    diabetes=st.none() | st.booleans(),
    thyroid=st.none() | st.booleans(),
    demo=st.booleans(),
)
exercises = st.sampled_from(ListedExercise).map(lambda each: Exercise(listed=each)) | names.map(
    lambda each: Exercise(own_name=each)
)
planned = st.builds(
    PlannedExercise,
    exercise=exercises,
    times_a_day=st.integers(1, 12),
    hold_s=st.integers(0, 120),
    repetitions=st.none() | st.integers(1, 50),
    sides=st.lists(sides, max_size=2).map(tuple),
    note=texts,
)


#: A new identifier each time.
fresh = st.uuids(version=4).map(lambda each: each.hex)


@st.composite
def home_programmes(
    draw: st.DrawFn, person_id: str
) -> tuple[list[Plan], list[ExerciseLog], list[NextMorning]]:
    """A few plans of a person, exercises that were done, and mornings after."""
    plans = draw(
        st.lists(
            st.builds(
                Plan,
                id=fresh,
                person_id=st.just(person_id),
                first_day=days,
                exercises=st.lists(planned, max_size=3, unique_by=lambda each: each.exercise).map(
                    tuple
                ),
                pain_limit=st.integers(0, 10),
                chosen_by=texts,
                review=st.none() | st.just(dt.date.max),
                primary=st.lists(st.sampled_from(Movement), max_size=3, unique=True).map(tuple),
            ),
            max_size=2,
        )
    )
    logs = draw(
        st.lists(
            st.builds(
                ExerciseLog,
                id=fresh,
                person_id=st.just(person_id),
                exercise=exercises,
                done=moments,
                pain=ratings,
                compared=st.none() | st.sampled_from(ComparedWithLast),
                repetitions=st.none() | st.integers(0, 50),
            ),
            max_size=2,
        )
    )
    mornings = draw(
        st.lists(
            st.builds(
                NextMorning,
                id=fresh,
                person_id=st.just(person_id),
                day=days,
                eased=st.booleans(),
            ),
            max_size=2,
        )
    )
    return plans, logs, mornings


session_states = st.builds(
    SessionState,
    timing=st.none() | st.sampled_from(ExerciseTiming),
    pain_relief=st.none() | st.booleans(),
)
clinician_values = st.lists(
    st.builds(
        ClinicianValue,
        movement=st.sampled_from([Movement.FLEXION, Movement.EXTERNAL_ROTATION]),
        side=sides,
        method=st.sampled_from(ClinicianMethod),
        value_deg=st.floats(-90, 200),
    ),
    max_size=3,
    unique_by=lambda value: value.key,
)


@st.composite
def goals_with_ratings(draw: st.DrawFn, person_id: str) -> tuple[list[Goal], list[GoalRating]]:
    """A few goals of a person, and ratings of them."""
    goals = draw(
        st.lists(
            st.builds(
                Goal,
                id=fresh,
                person_id=st.just(person_id),
                words=names,
                first_day=days,
                last_day=st.none() | st.just(dt.date.max),
            ),
            max_size=2,
        )
    )
    goal_ratings = [
        GoalRating(
            id=draw(fresh),
            person_id=person_id,
            goal_id=goal.id,
            day=draw(days),
            rating=draw(st.integers(0, 10)),
        )
        for goal in goals
        for _ in range(draw(st.integers(0, 2)))
    ]
    return goals, goal_ratings


@st.composite
def histories(draw: st.DrawFn) -> History:
    """A person with a few records of each kind, in the order in which the store gives them."""
    who = draw(people)
    sessions = [
        SessionRecord(
            id=draw(fresh),
            person_id=who.id,
            started=draw(moments),
            conduct=draw(conducts),
            pain=Pain(rest=draw(ratings), night=draw(ratings), worst_24h=draw(ratings)),
            note=draw(texts),
            duration_s=draw(st.none() | st.floats(0, 1e6)),
            finished=draw(st.booleans()),
            state=draw(session_states),
            clinician_values=tuple(draw(clinician_values)),
        )
        for _ in range(draw(st.integers(0, 3)))
    ]
    sessions.sort(key=lambda each: each.started.utc)
    found = []
    for session in sessions:
        group = [
            MeasurementRecord(
                id=draw(fresh),
                session_id=session.id,
                person_id=who.id,
                taken=draw(moments),
                measurement=draw(measurements()),
                conduct=draw(conducts),
                pain_during=draw(ratings),
                stopped_by=draw(st.none() | st.sampled_from(LimitingFactor)),
                overridden=draw(reasons),
            )
            for _ in range(draw(st.integers(0, 2)))
        ]
        found += sorted(group, key=lambda each: each.taken.utc)
    events = draw(
        st.lists(
            st.builds(
                Event,
                id=fresh,
                person_id=st.just(who.id),
                day=days,
                kind=st.sampled_from(EventKind),
                side=st.none() | sides,
                note=texts,
            ),
            max_size=2,
        )
    )
    plans, logs, mornings = draw(home_programmes(who.id))
    goals, goal_ratings = draw(goals_with_ratings(who.id))
    screenings = draw(
        st.lists(
            st.builds(
                ScreeningRecord,
                id=fresh,
                person_id=st.just(who.id),
                day=days,
                occasion=st.sampled_from(ScreeningOccasion),
                outcome=st.sampled_from(ScreeningOutcome),
            ),
            max_size=2,
        )
    )
    return History(
        person=who,
        sessions=tuple(sessions),
        measurements=tuple(found),
        events=tuple(sorted(events, key=lambda each: each.day)),
        plans=tuple(sorted(plans, key=lambda each: each.first_day)),
        exercises_done=tuple(sorted(logs, key=lambda each: each.done.utc)),
        next_mornings=tuple(sorted(mornings, key=lambda each: each.day)),
        goals=tuple(sorted(goals, key=lambda each: each.first_day)),
        goal_ratings=tuple(sorted(goal_ratings, key=lambda each: each.day)),
        screenings=tuple(sorted(screenings, key=lambda each: each.day)),
    )

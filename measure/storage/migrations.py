"""The store's tables, as the ordered steps that make them.

Step n brings a store of version n - 1 to version n. A step that has been released is never
changed: add another one, and keep a file of the version before it with the tests.

STRICT tables refuse a value of the wrong type, so a numpy scalar that slipped through cannot
become a BLOB. Times are text in UTC of fixed width (text order is time order) with the offset
and the zone beside it. Lists and the set-up are JSON. A missing number is NULL, and the
reasons say why. `number` keeps the order of entry: it decides between equal times.
"""

import contextlib
import os
import sqlite3
from pathlib import Path

from measure.errors import DataError
from measure.message import TranslatableMessage

#: Mark of a store in the header of its SQLite file: "Thaw" in ASCII. [technical]
APPLICATION_ID = 0x54686177

_FIRST = """
CREATE TABLE person (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    pseudonym TEXT NOT NULL CHECK (length(pseudonym) BETWEEN 1 AND 60),
    name_key TEXT NOT NULL UNIQUE,
    affected TEXT NOT NULL CHECK (json_valid(affected)),
    dominant TEXT,
    since TEXT,
    onset TEXT,
    demo INTEGER NOT NULL CHECK (demo IN (0, 1))
) STRICT;

CREATE TABLE session (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    started_utc TEXT NOT NULL CHECK (length(started_utc) = 27),
    started_offset_min INTEGER NOT NULL,
    started_zone TEXT NOT NULL,
    help TEXT NOT NULL,
    posture TEXT NOT NULL,
    pain_rest INTEGER CHECK (pain_rest BETWEEN 0 AND 10),
    pain_night INTEGER CHECK (pain_night BETWEEN 0 AND 10),
    pain_worst_24h INTEGER CHECK (pain_worst_24h BETWEEN 0 AND 10),
    note TEXT NOT NULL,
    duration_s REAL CHECK (duration_s >= 0 AND typeof(duration_s) IN ('real', 'null')),
    finished INTEGER NOT NULL CHECK (finished IN (0, 1))
) STRICT;

CREATE INDEX session_by_person ON session (person, started_utc, number);

CREATE TABLE conditions (
    number INTEGER PRIMARY KEY,
    digest TEXT NOT NULL UNIQUE CHECK (length(digest) = 64),
    model TEXT NOT NULL,
    model_hashes TEXT NOT NULL CHECK (json_valid(model_hashes)),
    passes TEXT NOT NULL CHECK (json_valid(passes)),
    software TEXT NOT NULL CHECK (json_valid(software)),
    setup TEXT NOT NULL CHECK (json_valid(setup))
) STRICT;

CREATE TABLE measurement (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    session INTEGER NOT NULL REFERENCES session (number) ON DELETE CASCADE,
    conditions INTEGER NOT NULL REFERENCES conditions (number),
    taken_utc TEXT NOT NULL CHECK (length(taken_utc) = 27),
    taken_offset_min INTEGER NOT NULL,
    taken_zone TEXT NOT NULL,
    movement TEXT NOT NULL,
    side TEXT NOT NULL,
    view TEXT NOT NULL,
    reference TEXT NOT NULL,
    status TEXT NOT NULL,
    unit TEXT NOT NULL,
    value REAL CHECK (typeof(value) IN ('real', 'null')),
    low REAL CHECK (typeof(low) IN ('real', 'null')),
    high REAL CHECK (typeof(high) IN ('real', 'null')),
    best REAL CHECK (typeof(best) IN ('real', 'null')),
    against_vertical REAL CHECK (typeof(against_vertical) IN ('real', 'null')),
    level TEXT CHECK (level IS NULL OR json_valid(level)),
    reasons TEXT NOT NULL CHECK (json_valid(reasons)),
    source TEXT NOT NULL CHECK (json_valid(source)),
    help TEXT NOT NULL,
    posture TEXT NOT NULL,
    pain_during INTEGER CHECK (pain_during BETWEEN 0 AND 10),
    stopped_by TEXT,
    overridden TEXT NOT NULL CHECK (json_valid(overridden)),
    CHECK (
        (status = 'reading' AND value IS NOT NULL AND low IS NOT NULL AND high IS NOT NULL)
        OR (status = 'refused' AND reasons <> '[]')
    )
) STRICT;

CREATE INDEX measurement_by_session ON measurement (session, taken_utc, number);

CREATE TABLE trial (
    measurement INTEGER NOT NULL REFERENCES measurement (number) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    value REAL CHECK (typeof(value) IN ('real', 'null')),
    low REAL CHECK (typeof(low) IN ('real', 'null')),
    high REAL CHECK (typeof(high) IN ('real', 'null')),
    spread REAL CHECK (typeof(spread) IN ('real', 'null')),
    start_s REAL NOT NULL CHECK (typeof(start_s) = 'real'),
    end_s REAL NOT NULL CHECK (typeof(end_s) = 'real'),
    hold_start_s REAL CHECK (typeof(hold_start_s) IN ('real', 'null')),
    hold_end_s REAL CHECK (typeof(hold_end_s) IN ('real', 'null')),
    flags TEXT NOT NULL CHECK (json_valid(flags)),
    refused_for TEXT NOT NULL CHECK (json_valid(refused_for)),
    PRIMARY KEY (measurement, position),
    CHECK (value IS NOT NULL OR refused_for <> '[]')
) STRICT, WITHOUT ROWID;

CREATE TABLE event (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    day TEXT NOT NULL CHECK (length(day) = 10),
    kind TEXT NOT NULL,
    side TEXT,
    note TEXT NOT NULL
) STRICT;

CREATE INDEX event_by_person ON event (person, day, number);
"""

_HOME_PROGRAMME = """
CREATE TABLE plan (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    first_day TEXT NOT NULL CHECK (length(first_day) = 10),
    stretches TEXT NOT NULL CHECK (json_valid(stretches)),
    pain_limit INTEGER NOT NULL CHECK (pain_limit BETWEEN 0 AND 10),
    chosen_by TEXT NOT NULL
) STRICT;

CREATE INDEX plan_by_person ON plan (person, first_day, number);

CREATE TABLE stretch_done (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    stretch TEXT NOT NULL,
    done_utc TEXT NOT NULL CHECK (length(done_utc) = 27),
    done_offset_min INTEGER NOT NULL,
    done_zone TEXT NOT NULL
) STRICT;

CREATE INDEX stretch_done_by_person ON stretch_done (person, done_utc, number);
"""

_CALIBRATION = """
CREATE TABLE lens (
    number INTEGER PRIMARY KEY,
    camera_name TEXT NOT NULL,
    width_px INTEGER NOT NULL,
    height_px INTEGER NOT NULL,
    focal_px TEXT NOT NULL CHECK (json_valid(focal_px)),
    centre_px TEXT NOT NULL CHECK (json_valid(centre_px)),
    distortion TEXT NOT NULL CHECK (json_valid(distortion)),
    reprojection_px REAL NOT NULL,
    views INTEGER NOT NULL,
    UNIQUE (camera_name, width_px, height_px)
) STRICT;

CREATE TABLE camera_level (
    number INTEGER PRIMARY KEY,
    camera_name TEXT NOT NULL UNIQUE,
    roll_deg REAL NOT NULL,
    half_deg REAL NOT NULL,
    day TEXT NOT NULL CHECK (length(day) = 10),
    fixed INTEGER NOT NULL CHECK (fixed IN (0, 1))
) STRICT;

CREATE TABLE correction (
    number INTEGER PRIMARY KEY,
    camera_name TEXT NOT NULL,
    movement TEXT NOT NULL,
    bias_deg REAL NOT NULL,
    gain REAL NOT NULL,
    centre_deg REAL NOT NULL,
    pairs INTEGER NOT NULL,
    study TEXT NOT NULL,
    lowest_deg REAL,
    highest_deg REAL,
    switched_on INTEGER NOT NULL CHECK (switched_on IN (0, 1)),
    UNIQUE (camera_name, movement)
) STRICT;

CREATE TABLE body (
    person INTEGER PRIMARY KEY REFERENCES person (number) ON DELETE CASCADE,
    upper_arm REAL,
    forearm REAL,
    shoulder_width REAL,
    c7_height REAL,
    iliac_spines REAL,
    lengths_from TEXT,
    lengths_day TEXT CHECK (length(lengths_day) = 10),
    marks_day TEXT CHECK (length(marks_day) = 10)
) STRICT;

CREATE TABLE placement (
    number INTEGER PRIMARY KEY,
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    movement TEXT NOT NULL,
    side TEXT NOT NULL,
    camera_name TEXT,
    width_px INTEGER NOT NULL,
    height_px INTEGER NOT NULL,
    trunk_px REAL NOT NULL,
    width_over_trunk REAL NOT NULL,
    lean_deg REAL NOT NULL,
    shoulder_width REAL,
    roll_deg REAL,
    taken TEXT NOT NULL CHECK (length(taken) = 10)
) STRICT;

CREATE INDEX placement_by_person ON placement (person, number);
"""

_PERSON_FACTS = """
ALTER TABLE person ADD COLUMN age_band TEXT;

ALTER TABLE person ADD COLUMN diabetes INTEGER CHECK (diabetes IN (0, 1));

ALTER TABLE person ADD COLUMN thyroid INTEGER CHECK (thyroid IN (0, 1));
"""

#: Exercises have repetitions, sides and a note, and may be a clinician's own; one that was done
#: may say how it went. What earlier plans did not say stays unsaid.
_EXERCISES = """
ALTER TABLE plan RENAME COLUMN stretches TO exercises;

ALTER TABLE plan ADD COLUMN review TEXT CHECK (length(review) = 10);

UPDATE plan SET exercises = (
    SELECT json_group_array(json_object(
        'exercise', json_object('listed', json_extract(value, '$.stretch')),
        'times_a_day', json_extract(value, '$.times_a_day'),
        'hold_s', json_extract(value, '$.hold_s')
    ))
    FROM json_each(exercises)
);

ALTER TABLE stretch_done RENAME TO exercise_done;

ALTER TABLE exercise_done RENAME COLUMN stretch TO exercise;

ALTER TABLE exercise_done ADD COLUMN own INTEGER NOT NULL DEFAULT 0 CHECK (own IN (0, 1));

ALTER TABLE exercise_done ADD COLUMN pain INTEGER CHECK (pain BETWEEN 0 AND 10);

ALTER TABLE exercise_done ADD COLUMN compared TEXT;

ALTER TABLE exercise_done ADD COLUMN repetitions INTEGER CHECK (repetitions BETWEEN 0 AND 50);

DROP INDEX stretch_done_by_person;

CREATE INDEX exercise_done_by_person ON exercise_done (person, done_utc, number);

CREATE TABLE next_morning (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    day TEXT NOT NULL CHECK (length(day) = 10),
    eased INTEGER NOT NULL CHECK (eased IN (0, 1))
) STRICT;

CREATE INDEX next_morning_by_person ON next_morning (person, day, number);
"""

_AGREEMENT_STUDY = """
CREATE TABLE agreement_study (
    number INTEGER PRIMARY KEY,
    camera_name TEXT NOT NULL,
    movement TEXT NOT NULL,
    sd_deg REAL NOT NULL,
    bias_deg REAL NOT NULL,
    bias_half_deg REAL NOT NULL,
    pairs INTEGER NOT NULL,
    people INTEGER NOT NULL,
    study TEXT NOT NULL,
    UNIQUE (camera_name, movement)
) STRICT;
"""

#: A plan may choose the movements on which verdicts rest; empty means the usual ones.
_PRIMARY_MOVEMENTS = """
ALTER TABLE plan ADD COLUMN primary_movements TEXT NOT NULL DEFAULT '[]';
"""

_GOALS = """
CREATE TABLE goal (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    words TEXT NOT NULL,
    first_day TEXT NOT NULL CHECK (length(first_day) = 10),
    last_day TEXT CHECK (length(last_day) = 10)
) STRICT;

CREATE INDEX goal_by_person ON goal (person, first_day, number);

CREATE TABLE goal_rating (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    goal INTEGER NOT NULL REFERENCES goal (number) ON DELETE CASCADE,
    day TEXT NOT NULL CHECK (length(day) = 10),
    rating INTEGER NOT NULL CHECK (rating BETWEEN 0 AND 10)
) STRICT;

CREATE INDEX goal_rating_by_goal ON goal_rating (goal, day, number);
"""

#: Answers to the safety questions belong to the person; sessions say in which state the shoulder
#: was, and carry what a clinician measured by other means.
_SCREENINGS = """
CREATE TABLE screening (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 32),
    person INTEGER NOT NULL REFERENCES person (number) ON DELETE CASCADE,
    day TEXT NOT NULL CHECK (length(day) = 10),
    occasion TEXT NOT NULL,
    outcome TEXT NOT NULL
) STRICT;

CREATE INDEX screening_by_person ON screening (person, day, number);

ALTER TABLE session ADD COLUMN exercise_timing TEXT;

ALTER TABLE session ADD COLUMN pain_relief INTEGER CHECK (pain_relief IN (0, 1));

ALTER TABLE session ADD COLUMN clinician_values TEXT NOT NULL DEFAULT '[]'
    CHECK (json_valid(clinician_values));
"""

STEPS: tuple[str, ...] = (
    _FIRST,
    _HOME_PROGRAMME,
    _CALIBRATION,
    _PERSON_FACTS,
    _EXERCISES,
    _AGREEMENT_STUDY,
    _PRIMARY_MOVEMENTS,
    _GOALS,
    _SCREENINGS,
)

#: The version that this program reads and writes.
VERSION = len(STEPS)


def statements(step: str) -> list[str]:
    """Return the single statements of a step; no statement has a semicolon inside."""
    return [part.strip() for part in step.split(";") if part.strip()]


def version_of(connection: sqlite3.Connection, path: Path) -> int:
    """Return the version of the store at `path`.

    Raises
    ------
    DataError
        When it is no such store, or one of a later version.
    """
    (application,) = connection.execute("PRAGMA application_id").fetchone()
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    if application != APPLICATION_ID or version < 1:
        raise DataError(
            TranslatableMessage(
                "{path} is not a data file of Thawline. It was left as it is. Choose a file made "
                "with: thawline backup FILE",
                {"path": str(path)},
            )
        )
    if version > VERSION:
        raise DataError(
            TranslatableMessage(
                "{path} was written by a later version of Thawline (its tables have version "
                "{version}; this version reads up to {newest}). It was left as it is. Update "
                "Thawline and try again.",
                {"path": str(path), "version": str(version), "newest": str(VERSION)},
            )
        )
    return int(version)


def migrate(connection: sqlite3.Connection, backup: Path | None = None) -> None:
    """Take the steps that the store lacks: all or none.

    Parameters
    ----------
    backup
        Where to copy the store before the first step, or None for a new store. A copy that is
        already there is kept.

    Raises
    ------
    sqlite3.Error
        When a step fails; the store is then as it was.
    DataError
        When the steps would leave rows that refer to nothing.
    """
    connection.execute("PRAGMA foreign_keys = OFF")
    connection.execute("BEGIN IMMEDIATE")
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version < VERSION:
            if backup:
                _copy_aside(connection, backup)
            for step in STEPS[version:]:
                for statement in statements(step):
                    connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {VERSION}")
            check_references(connection)
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
    finally:
        connection.execute("PRAGMA foreign_keys = ON")


def check_integrity(connection: sqlite3.Connection) -> None:
    """Read everything once.

    Raises
    ------
    sqlite3.DatabaseError
        When any part of the file is damaged.
    DataError
        When a row refers to nothing.
    """
    (verdict,) = connection.execute("PRAGMA integrity_check(1)").fetchone()
    if verdict != "ok":
        error = sqlite3.DatabaseError(verdict)
        error.sqlite_errorcode = sqlite3.SQLITE_CORRUPT
        raise error
    check_references(connection)


def check_references(connection: sqlite3.Connection) -> None:
    """Raise DataError when a row refers to another that is not there."""
    row = connection.execute("PRAGMA foreign_key_check").fetchone()
    if row:
        raise DataError(
            TranslatableMessage(
                "A row of the table {table} refers to a row of {other} that no longer exists.",
                {"table": str(row[0]), "other": str(row[2])},
            )
        )


def _copy_aside(connection: sqlite3.Connection, backup: Path) -> None:
    """Copy the store as it is to `backup`, through a second connection.

    The first one holds the write lock meanwhile, so nothing can change between copy and step.
    """
    if backup.exists():
        return
    (place,) = (row[2] for row in connection.execute("PRAGMA database_list") if row[1] == "main")
    backup.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = backup.with_name(f".{backup.name}.part")
    part.unlink(missing_ok=True)
    try:
        with contextlib.closing(sqlite3.connect(place)) as reader:
            reader.execute("VACUUM INTO ?", (os.fspath(part),))
        os.chmod(part, 0o600)
        os.replace(part, backup)
    finally:
        part.unlink(missing_ok=True)

"""Values of the field: landmarks, tracks, movements, reasons, acquisition, measurements,
records.

Public names:

    acquisition: ASSUMED_HORIZONTAL_FIELD_DEG, BodySetup, CameraSetup, Correction, KnownSetup,
        LARGEST_BIAS_DEG, LARGEST_CHANGE_DEG, LARGEST_GAIN, LARGEST_ROLL_DEG, LensProfile,
        MovementCorrection, POSSIBLE, Setup, UNKNOWN_CAMERA, check_known, check_profile,
        fit_for_picture, is_possible
    calibration_records: BodyRecord, BodySource, CameraLevel, Placement, StoredCorrection,
        StoredStudy, check_body, check_level, check_placement, check_stored_correction,
        check_stored_study
    error_sizes: ENOUGH_PAIRS, ENOUGH_PEOPLE, LARGEST_ERROR_DEG, MovementStudy, MovementTrialSd,
        StudyError
    exercise_rounds: DayOfExercises, DayPart, day_of_exercises, exercises_left, unanswered_day
    exercises: EXERCISE_FACTS, Exercise, ListedExercise
    goal_records: Goal, GoalRating, MOST_GOALS, open_goals, rate_from, ratings_of
    home_programme_records: ComparedWithLast, ExerciseLog, LEAST_PAIN_LIMIT, MOST_PRIMARY,
        MOST_REPETITIONS, MOST_TIMES_A_DAY, NextMorning, Plan, PlannedExercise
    landmarks: FloatArray, IntArray, LANDMARKS, Landmark, SIDES_EXCHANGED, Side, arm
    measurement_task: MeasurementTask
    measurements: BASIS, BASIS_SENTENCES, IntervalBasis, LevelBand, Measurement, Provenance,
        Reference, Status, Trial
    movements: Direction, EverydayTask, Family, MOVEMENTS, Movement, MovementFacts, Unit, View
    reading_scale: LEVEL_TICKS, exceeds_range, paleness, scale_holding, scale_of, share_of_scale
    reasons: GateResult, Reason, SENTENCES, causes_first, note, refuse
    record_checks: LONGEST_NAME, LONGEST_NOTE, check_rating
    records: AgeBand, AssessmentCondition, Assistance, BodyPosition, EVENT_WORDS, Event, EventKind,
        History, LimitingFactor, MeasurementRecord, Merged, OFFERED_EVENTS, Onset, Pain, Person,
        SessionRecord
    screening_records: ScreeningOccasion, ScreeningOutcome, ScreeningRecord
    session_comparison: SideDifference, difference_between, half_width, last_readings, of_session,
        readings_of_day, shown_difference, side_difference, times_read
    session_facts: ClinicianMethod, ClinicianValue, ExerciseTiming, HIGHEST_DEG, LOWEST_DEG,
        SessionState
    session_timing: follows_exercises, timing_of
    setup_changes: SetupChange, Standing, StandingLog, lasting_change, standing_of
    standing_pose: Neutral, STANDING, USUAL_SHOULDER_WIDTH, WIDTH_ERROR, facing_turn_deg,
        standing_in, standing_text
    tracks: FrameState, PoseFrame, Track
    vertebral_levels: centimetres_in, height_of, level_at, level_of, levels_in, marked_spines,
        region_of
"""

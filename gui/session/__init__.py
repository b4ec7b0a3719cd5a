"""A session in progress: engine, cues, storage, settings.

Public names:

    audio_cues: AudioCues
    beginning: SessionOutline, dose_of, first_words, new_session, only_exercises_due, record_pain,
        tasks_of
    clip_batch: ClipBatch
    clip_reader: WindowBatchReader, local_models, open_scrub_thumbnails
    engine_feed: EngineBridge
    interfaces: ClipAnalysis, ClipCurve, ClipThumbnails, ReadClip
    known_setup: SetupProvider, load_stored_setup
    known_state: CalibrationState, USEFUL_LEVEL_DEG, correction_words, lengths_words, lens_words,
        level_words, load_calibration_state, longer_edge_words, marks_words, place_words,
        turn_words
    log: SessionRecorder
    measurement_session: MeasurementSession
    person_selection: PersonSelection
    placement_check: PlacementMonitor
    preferences: Preferences
    repository: PendingMeasurement, SessionRepository
    services: Services
    settings: TEXT_SCALES, WindowSettings
    setup_check: AMISS, GOOD, SetupAspect, SideCheck, aspect_text, line_amiss, raise_sentence,
        setup_sentence, side_check_text
    tones: Tone
    undo: UndoList
"""

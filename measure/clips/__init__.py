"""One recorded clip to one measurement, and observations that are kept and read again.

Public names:

    inputs: CLIP_ENDINGS, ClipEntry, clips_named, read_manifest
    observation: ClipObservation
    observation_file: kept_files, load_observation, read_observations, save_observation
    outcome: ClipResult, ReadingSettings, internal_error, read_entry
    read: ClipReading, measurement_from_observation, read_clip
    setup_file: read_setup, write_setup
"""

"""A session in progress: engine, cues, storage, settings."""

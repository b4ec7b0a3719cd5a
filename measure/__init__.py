"""What a shoulder measurement is: geometry, movements, readings, progress, and their edges.

Nothing here imports Qt. Pure modules (geometry, statistics) do no I/O and read no clock.

Public names:

    errors: CameraError, ClipError, DataError, InputError, LONGEST_PATH, MachineError,
        ManifestError, ModelError, ModelFileError, PoseProcessError, ThawlineError, in_short,
        printable, quoting
    message: TranslatableMessage, join_messages, system_reason
"""

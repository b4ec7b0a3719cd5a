"""The same reading while it happens: engine, session, worker, trial detector and refiner.

Public names:

    engine: LiveEngine, PATIENCE_S
    events: LiveEvent, LiveEventKind, LiveFrame, Phase, SetupHint, Source
"""

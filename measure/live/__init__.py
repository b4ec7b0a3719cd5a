"""The same reading while it happens: engine, session, worker, trial detector and refiner.

Public names:

    engine: LiveEngine
    events: LiveEvent, LiveEventKind, LiveFrame, Phase, SetupHint, Source
"""

"""The command line: one module for each command of `measure`.

Public names:

    backup: configure
    check: configure
    demo: configure
    events: a_day, configure
    export: configure
    goals: configure
    import_history: configure
    main: main
    model: configure
    open_store: open_store, person_id_of
    people: configure
    plan: configure
    privacy: configure
    progress: configure
    replay: configure
    restore: configure
    sessions: configure
"""

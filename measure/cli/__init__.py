"""The command line: one module for each command of `measure`.

Public names:

    backup: configure
    check: configure
    clip_reading: exit_code, print_note, read_entries, settings_of
    demo: configure
    events: a_day, configure
    export: configure
    goals: configure
    import_history: configure
    main: NOTICE, main
    model: configure
    open_store: open_store, person_id_of
    people: configure
    plan: configure
    privacy: configure
    progress: configure
    restore: configure
    sessions: configure
    terminal_table: table
"""

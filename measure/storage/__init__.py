"""The SQLite store: schema and migrations, rows, backup, location.

Public names:

    backup: Contents, backup, inspect, restore
    location: ASIDE_NAMES, BACKUP_FOLDER_NAME, MARKER_NAME, STORE_NAME, backup_files,
        folder_unusable, private_folder, store_path
    saved_files: DURATIONS, PURPOSES, SavedFile, UNTIL_DELETED, saved_files, size_text
    store: Store
"""

"""What the operating system offers: paths, atomic files, safe archives, JSON, clock, versions.

Public names:

    atomic_files: private_descriptor, publish, safe_name, write_errors, write_json, write_new,
        write_over
    clock: Clock, SystemClock, Timestamp, check_id, new_id
    json_codec: from_data, json_reader, to_data, to_json, utc_from_text, utc_text
    paths: data_folder, log_folder, make_private, model_folder
    safe_archives: ARCHIVE_ERRORS, check_arrays
    versions: software
"""

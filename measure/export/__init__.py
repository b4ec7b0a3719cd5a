"""Files for other programs: CSV, JSON, FHIR, motion files, annotated clips.

Public names:

    annotated_clip: write_annotated
    clip_figure: draw_curve
    clip_json: document, write_results
    clip_series_csv: write_track
    fhir_codes: CodeChoices
    figure_file: save_figure
    formats: Format, export, file_name
    history_csv: DecimalSign
    history_json: read_history
    motion_files: motion_points, write_c3d, write_trc
    progress_json: progress_json
"""

"""Painters: posture figure, overlay on the picture, curves, interval band.

Public names:

    calibration_guides: Guide, paint_marking_guide
    chart_flags: flags, placed_flags, word_left_px
    chart_layout: ChartLayout, chart_words_px
    chart_marks: paint_mark, paint_number, paint_open_mark
    chart_scales: ChartRange, TickUnit, ValueScale, first_day, value_ticks
    course_chart: ChartPainter
    curves: ChartContent, CurvePoint, chart_content, conducts_of, movements_of, without_asides
    interval_band: band_opacity, paint_band, paint_guide, paint_refusal, paint_scale
    overlay: head_share, paint_figure, paint_framing
    pair_words: bold, first_width, paint_pair, pair_width, parted, parted_day
    pause_bars: paint_pause_bars
    person: ArmAngles, Body, Point3D, Pose, posed
    person_painter: PersonPainter
    reading_on_body: Reading, paint_reading_on_body
    scene: close_height, close_scale, close_width, paint_scene, paint_standing
    shown_faults: shown_fault
    shown_movements: BACK_S, OUT_S, RAISED_HAND, REST_S, STAY_S, Shown, facing_angle_deg,
        shown_exercise, shown_movement
    tabular_figures: figure_aside, paint_tabular, tabular_width
    transform: VideoTransform
"""

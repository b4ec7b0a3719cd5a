"""Painters: posture figure, overlay on the picture, curves, interval band.

Public names:

    chart_scales: ChartRange, TickUnit, first_day
    course_chart: ChartLayout, ChartPainter, paint_mark
    curves: ChartContent, CurvePoint, chart_content, conducts_of, movements_of
    interval_band: band_opacity, paint_band, paint_guide, paint_refusal, paint_scale
    overlay: paint_figure, paint_framing
    posture_figure: BodyFigure, Point2D, body_figure, facing_angle_deg
    transform: VideoTransform
"""

"""Painters: posture figure, overlay on the picture, curves, interval band.

Public names:

    curves: CurvePoint, HistoryCurve, conducts_of, curves, movements_of, unix_time_s
    interval_band: band_opacity, paint_band, paint_guide, paint_refusal, paint_scale
    overlay: paint_figure, paint_framing
    posture_figure: BodyFigure, Point2D, body_figure, facing_angle_deg
    transform: VideoTransform
"""

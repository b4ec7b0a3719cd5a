"""The drawn person: where to stand, how to move, and what a reading is on the body.

Public names:

    position_figure: PositionView, ViewPlan, facing_text, motion_wanted
    reading_figure: ReadingFigure
    standing_figure: StandingFigure
"""

"""The drawn person: where to stand, how to move, and what a reading is on the body.

Public names:

    known_sign: Known, KnownSign
    movement_tile: MovementTile, MovementTiles
    pause_sign: PauseSign
    pictured_card: PicturedCard, figure_panel, figure_tile
    position_figure: PositionView, motion_wanted
    position_pair: PositionPair
    reading_figure: ReadingFigure
    standing_figure: StandingFigure
    view_plan: ViewPlan
"""

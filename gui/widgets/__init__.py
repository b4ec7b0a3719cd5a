"""Widgets of our own, one concept a file. They show what they are given and decide nothing.

Public names:

    announcement: announce
    beside_row: BesideRow, aligned, list_card
    buttons: BUTTON_GAP_PX, ButtonRow, ElidedButton, HELD_BACK_MS, MenuButton, RingedButton,
        ShortcutButton, WrappedButton, bind_keys, button, give_role
    camera_trouble: CameraTrouble, FAR, FAR_GOOD, FAR_RIGHT, FAR_STEP, FAR_WRONG, TroubleSteps,
        paint_camera
    camera_view: CameraView
    choice_row: ChoiceRow, typed_rating
    date_field: DateField
    fitted_sentence: FittedSentence, LEAST_SHARE
    fixed_size_stack: FixedSizeStack
    fold: FADED_PX, MoreBelow, Padding
    layouts: ABOVE_GROUP, ArrangedWidget, BELOW_GROUP, Content, FlowRow, card, centred,
        clear_layout, column, fill_edge_bar, mirrored, row, separator, strip, widget_with
    message_bar: MessageBar
    page_frame: PageFoot, frame_page
    pain_scale: PainScale, QUESTION_PX, RatedQuestion, ends_words, scale_ends
    painted_widget: PaintedWidget
    plain_dialog: DIALOG_BAR_PX, DIALOG_MARGIN_PX, frame_dialog, plain_dialog
    scroll_page: back_to_top, bring_into_view, bring_to_top, scrollable
    side_by_side: LARGE_FROM_PERCENT, SideBySide
    text: ElidedLabel, NoticeBar, NumberLine, OneLineLabel, SignedLine, Steps, end_together, label,
        section_heading, tag, terms, titled
    titled_page: TitledPage
    topic_button: TopicButton, TopicGrid
    video_view: VideoView, image_of
    wrapping_check_box: WrappingCheckBox
"""

"""Pages of a measuring session, in their order.

Public names:

    camera_setup: SetupPage
    live_buttons: PlacedButtons
    measure_page: MeasurePage
    person_form: PersonForm
    screening: SafetyPage
"""

"""Pages of a measuring session, in their order.

Public names:

    camera_setup: SetupPage
    live_buttons: LiveButtons
    measure_page: MeasurePage
    person_form: PersonForm
    screening: SafetyPage
"""

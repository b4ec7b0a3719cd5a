"""Settings of the window, people and their data.

Public names:

    settings_pages: SettingsPages
"""

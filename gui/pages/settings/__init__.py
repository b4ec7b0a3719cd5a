"""Settings of the window, people and their data.

Public names:

    data_page: DataPage, data_page_title
    settings_pages: SettingsPages
"""

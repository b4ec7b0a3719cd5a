"""Pages for recorded clips.

Public names:

    clips_page: ClipsPage
"""

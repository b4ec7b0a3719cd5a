"""Pages for recorded clips.

Public names:

    clip_review: ClipsPage
"""

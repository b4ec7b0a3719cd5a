"""The demo story: four made-up people and their records.

Public names:

    story: load_story
"""

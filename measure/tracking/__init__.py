"""One person followed from frame to frame: tracklets, selection, re-identification.

Public names:

    offline: track_subject
    online: OnlineTracker, SubjectPose
"""

"""Lengths of a body, by tape or from landmarks marked by hand.

Public names:

    clip_track: track_from_clip
    landmarks_by_hand: BackLandmarks, locate_back_landmarks
    lengths: BodyLengths, TRUNK_CM, lengths_from_poses, lengths_from_tape
    record: body_record_warnings, save_back_landmarks, save_body_lengths
"""

"""From keypoints to angles and heights, their fusion, bias correction and uncertainty.

Public names:

    angles: corner_deg, direction_deg, length, mean_near_median, median_over, plane_from_pixels,
        turn_deg, wrap_deg
    camera_geometry: undistort_points, undistort_track
    fusion: FusedSeries, Mask, PassKeypoints, fuse_elevation, fuse_reach, fuse_rotation,
        keypoints_of_passes
    keypoints: ArmKeypoints
    neutral_pose: FACING_WIDTH, TRUNK_MARKS, median_points, neutral_of
    reach: sideways_of
    rotation: Rotation, elbow_angle_deg
    rotation_phases: rotation_phases
    uncertainty: difficulty, half_width, interval_basis, too_wide
"""

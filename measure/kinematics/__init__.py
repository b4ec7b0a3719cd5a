"""From keypoints to angles and heights, their fusion, bias correction and uncertainty."""

"""One person followed from frame to frame: tracklets, selection, re-identification."""

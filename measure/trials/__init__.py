"""Trials of a movement: segmentation, coarse scan, refinement, quality gates, aggregation."""

"""Trials of a movement: segmentation, coarse scan, refinement, quality gates, aggregation.

Public names:

    aggregation: USUAL_SD, aggregate_accepted_trials, aggregate_refined, aggregate_trials,
        pooled_trial_sd
    fine_passes: FinePlan, run_fine_passes
    little_movement: held_until_now
    movement_model: model_of
    refinement: RefinedTrial, refine_trial
    scan: LEAD_S, REST_EVERY, SHORT_HOLD_S, ScanResult, scan_for_trials, window_of
    segmentation: HOLD_SHARE, TrialCandidate, segment_trials
"""

"""Statistics of a course over time, on arrays: lines, bends, sudden losses, steps and limits.

Public names:

    broken_line: Bend, fit_bends
    event_effect: EffectEstimate, EffectPrior, EventEffect, FRACTION_OF_A_DEGREE, event_effect
    evidence_limits: likely_limit, review_limit, reviews_passed, stall_limit, turn_limits,
        weekly_limit
    local_trend: Ribbon, local_trend
    pain_course: high_pain, more_pain, pain_ribbons
    ratio_interval: ratio_interval
    sudden_loss: SuddenLoss, sudden_loss
    trend_line: DAYS_A_MONTH, LEAST_FOR_OWN_SPREAD, PRIOR_DAYS, RELATED_TO, Slope, evidence_of,
        fit_slope, fit_slopes, mean_variance, widening
"""

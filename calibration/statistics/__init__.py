"""Agreement and repeatability statistics: Bland-Altman, ICC, proportional bias.

Public names:

    bland_altman: FEWEST_UNITS, LimitsOfAgreement, Pairing, bland_altman
    deming: DemingLine, ErrorRatio, FEWEST_DEGREES, deming, error_ratio
    estimate: Estimate, sd_with_interval
    icc: FEWEST_SHOULDERS, Reliability, Z90, Z95, intraclass_correlation, minimal_detectable_change
    pooled_variance: pooled_variance
    proportional_bias: ProportionalBias, proportional_bias
    repeatability: ENOUGH_SESSIONS, Repeatability, RetestSession, repeatability,
        repeatability_paragraph
    variance_components: reliability_of_pairs
"""

"""Camera against goniometer: pairs, study, raters, plot, correction."""

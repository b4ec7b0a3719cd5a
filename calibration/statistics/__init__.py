"""Agreement and repeatability statistics: Bland-Altman, ICC, proportional bias."""

"""Camera against goniometer: pairs, study, raters, plot, correction.

Public names:

    pairs_table: PairTable, PairedReading, read_pairs
    plot: agreement_figure, save_agreement_figure
    report: format_studies, proposed_corrections, save_corrections, save_proposed_correction,
        save_study_errors, study_errors, write_json
    retest: repeatability_by_shoulder, repeatability_report
    stored_corrections: corrections_for, set_correction_enabled, studies_for
    study: Agreement
    trial_scatter: trial_sds_of
"""

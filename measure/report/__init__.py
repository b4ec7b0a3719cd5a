"""The report for a clinic visit: page, tables, figures and wording.

Public names:

    caveats: CAVEATS, DEMO, NOTICE
    choices: LONGEST_QUESTION, ReportChoices, TALLEST_PLOT
    headline: PROMPT_SUBJECTS
    measurement_wording: basis_sentences, interval_text, number_text, reason_codes, reason_legend,
        refusal_sentences, value_text
    own_words: METHOD_WORDS
    page: USUAL_CHOICES, report_foot, report_html, report_title
    pain_correction: PainCorrection, PainRatings, correct_pain, ratings_of, undo_correction,
        with_lines
    svg: Diagram, Draw, FONT, SPARE_FONT, Words, as_svg
    wording: WORDS, phase_words
"""

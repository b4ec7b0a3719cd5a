"""The report for a clinic visit: page, tables, figures and wording.

Public names:

    measurement_wording: basis_sentences, interval_text, number_text, reason_codes, reason_legend,
        refusal_sentences, value_text
    page: report_foot, report_html, report_title
    svg: Diagram, FONT, Words, as_svg
    wording: NOTICE, phase_words
"""

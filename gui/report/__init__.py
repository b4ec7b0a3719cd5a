"""The report as a file or on paper.

Public names:

    command: configure
    diagrams: PlacedDiagrams
    files: chosen_printer, print_report, report_bytes, report_name, with_ending, write_report
    handout: print_handout
    handout_file: write_handout
    handout_words: HandoutWords, handout_words
    language: translate_into
    pdf: page_layout
"""

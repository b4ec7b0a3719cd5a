"""The report before it is written or printed.

Public names:

    preview: ReportPreviewPage
"""

"""Values of the field: landmarks, tracks, movements, reasons, acquisition, measurements,
records.
"""

"""Files for other programs: CSV, JSON, FHIR, motion files, annotated clips."""

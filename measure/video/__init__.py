"""Clip files: container check, source, reader, frame normaliser, sampling."""

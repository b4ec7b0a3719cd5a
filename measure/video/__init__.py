"""Clip files: container check, source, reader, frame normaliser, sampling.

Public names:

    frame: FrameNormalizer, LONGEST_SIDE_PX, Picture, PixelArray, from_normalized
    reader: ClipReader, SourceFrame
    recording_time: recording_time
    sampling: COARSE_HZ, DecimationSpan, Decimator, FINE_HZ, RateSampler, SKIP, merged
    source: FrameSource, SourceFacts, open_clip
"""

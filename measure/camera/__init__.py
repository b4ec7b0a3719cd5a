"""Live cameras: capture, devices, health, faults, and playback of a clip as if it were a camera.

Public names:

    capture: CapturedFrame, LiveSource, open_camera
    devices: find_cameras
    faults: SourceFault, SourceTroubleError
    health: ExposureSettling, SourceWatch, fingerprint
    playback: ClipCamera
"""

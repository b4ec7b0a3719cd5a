"""What a shoulder measurement is: geometry, movements, readings, progress, and their edges.

Nothing here imports Qt. Pure modules (geometry, statistics) do no I/O and read no clock.
"""

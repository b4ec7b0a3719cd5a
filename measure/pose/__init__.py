"""Pose inference: the network, passes of the ensemble, jobs, worker process and supervisor."""

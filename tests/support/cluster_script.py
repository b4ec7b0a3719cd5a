"""Loaded by the workers of a test's cluster: the scripted arm in place of the networks."""

import functools
import os
from typing import Any

from measure.batch import cluster_worker
from measure.pose.supervisor import PoseProcess
from tests.support import scripted_arm


def dask_setup(worker: Any) -> None:
    """Prepare a worker before it takes work; called by the cluster."""
    cluster_worker.models_of = lambda order: scripted_arm.MODELS
    cluster_worker.PoseProcess = functools.partial(PoseProcess, command=scripted_arm.COMMAND)
    if "OTHER_NUMPY" in os.environ:
        here = cluster_worker.software()
        cluster_worker.software = lambda: {**here, "numpy": os.environ["OTHER_NUMPY"]}

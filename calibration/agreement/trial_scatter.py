"""Scatter of a person's trials within a session, pooled over their stored sessions."""

from collections import defaultdict

import numpy as np

from calibration.statistics.pooled_variance import pooled_variance
from measure.domain.error_sizes import MovementTrialSd
from measure.domain.landmarks import FloatArray
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.storage.store import Store
from measure.trials.aggregation import USUAL_SD, pooled_trial_sd

#: Steps in which a pooled scatter is given, by unit: readings share the description of their
#: set-up, and a finer one would be another for every session. [technical]
STEP = {Unit.DEGREES: 0.25, Unit.FRACTION: 0.0025}


def trial_sds_of(store: Store, person_id: str | None) -> tuple[MovementTrialSd, ...]:
    """Return the scatter of a person's trials, by movement; both sides together.

    Empty for nobody in particular, and for movements without repeated trials: there the usual
    scatter is assumed.
    """
    groups: dict[Movement, list[FloatArray]] = defaultdict(list)
    for record in () if person_id is None else store.measurements(person_id):
        if record.measurement.status is Status.READING:
            trials = [trial.value for trial in record.measurement.trials if trial.scored]
            groups[record.measurement.movement].append(np.array(trials, dtype=np.float64))
    scatters = []
    for movement in Movement:
        repeated = [group for group in groups[movement] if len(group) > 1]
        variance, degrees = pooled_variance(repeated)
        if degrees:
            unit = MOVEMENTS[movement].unit
            sd = pooled_trial_sd(variance * degrees, degrees, USUAL_SD[unit])
            step = STEP[unit]
            scatters.append(
                MovementTrialSd(movement=movement, sd=round(max(1, round(sd / step)) * step, 4))
            )
    return tuple(scatters)

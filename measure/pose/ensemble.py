"""The ensemble of passes that a reading takes: one coarse pass, then two fine ones."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from measure.domain.movements import MOVEMENTS, Movement, View
from measure.errors import ModelError
from measure.pose.jobs import InferencePass
from measure.pose_models.bundles import Bundle, bundle_path, load, obtain, own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import Progress

#: Qualities in the order in which the coarse pass prefers them.
_COARSE_ORDER = (ModelQuality.FULL, ModelQuality.LITE, ModelQuality.HEAVY)
#: Qualities in the order in which the fine passes prefer them.
_FINE_ORDER = (ModelQuality.HEAVY, ModelQuality.FULL, ModelQuality.LITE)


@dataclass(frozen=True, slots=True, kw_only=True)
class ModelSet:
    """The bundles that a reading uses.

    Attributes
    ----------
    name
        The deciding model: a quality, or "own" for a file of the person's own.
    bundles
        By quality. A file of the person's own takes the place of the full one.
    """

    name: str
    bundles: Mapping[ModelQuality, Bundle]

    @property
    def hashes(self) -> dict[str, str]:
        """SHA-256 of each bundle, by its name."""
        return {bundle.name: bundle.sha256 for bundle in self.bundles.values()}

    def coarse(self, movement: Movement, view: View | None = None) -> InferencePass:
        """Return the pass that finds the trials: the full model where it is there.

        Seen from behind it takes the back for the front and loses the hand, so the heavy one
        goes first there.
        """
        order: tuple[ModelQuality, ...] = _COARSE_ORDER
        if MOVEMENTS[movement].behind_back or view is View.BACK:
            order = (ModelQuality.HEAVY, *_COARSE_ORDER)
        return InferencePass(quality=next(quality for quality in order if quality in self.bundles))

    def fine(self) -> tuple[InferencePass, InferencePass]:
        """Return the passes that refine a trial: the best model there is, also mirrored."""
        return fine_passes(self.bundles)

    def pass_name(self, inference_pass: InferencePass) -> str:
        """Return how a pass is called in records."""
        quality = inference_pass.quality
        return inference_pass.name.replace(quality.value, self.bundles[quality].name)


def fine_passes(qualities: Collection[ModelQuality]) -> tuple[InferencePass, InferencePass]:
    """Return the passes that refine a trial: the best model there is, also mirrored."""
    quality = next(quality for quality in _FINE_ORDER if quality in qualities)
    return InferencePass(quality=quality), InferencePass(quality=quality, mirrored=True)


def models_for(
    quality: ModelQuality | None = None,
    own: Path | None = None,
    *,
    fetch: bool = True,
    progress: Progress | None = None,
    say: Callable[[str], None] = lambda sentence: None,
) -> ModelSet:
    """Return the models to read with.

    Parameters
    ----------
    quality
        None takes the heavy one, or the full one where the heavy one cannot be had.
    own
        A bundle of the person's own instead.
    fetch
        Whether bundles that are not on this computer yet are fetched.
    progress
        Called with how far a fetch is.
    say
        Called with one sentence when the full model has to do.

    Raises
    ------
    ModelError
        A bundle is neither here nor to be had.
    ModelFileError
        The bundle of the person's own is none.
    """
    if own is not None:
        return ModelSet(name="own", bundles={ModelQuality.FULL: own_bundle(own)})
    get = partial(obtain, progress=progress) if fetch else load
    if quality is None:
        try:
            return _with_heavy(get)
        except ModelError as error:
            full = ModelSet(name="full", bundles={ModelQuality.FULL: get(ModelQuality.FULL)})
            say(
                "The heavy model is missing here, so only the full one is used; its intervals are "
                f"wider. ({error})"
            )
            return full
    if quality is ModelQuality.HEAVY:
        return _with_heavy(get)
    return ModelSet(name=quality.value, bundles={quality: get(quality)})


def installed_models() -> ModelSet:
    """Return the models kept on this computer: heavy and full, or the full one alone.

    Raises
    ------
    ModelError
        Not even the full one is here, or a bundle is damaged.
    """
    full = load(ModelQuality.FULL)
    if not bundle_path(ModelQuality.HEAVY).exists():
        return ModelSet(name=ModelQuality.FULL.value, bundles={ModelQuality.FULL: full})
    bundles = {ModelQuality.FULL: full, ModelQuality.HEAVY: load(ModelQuality.HEAVY)}
    return ModelSet(name=ModelQuality.HEAVY.value, bundles=bundles)


def _with_heavy(get: Callable[[ModelQuality], Bundle]) -> ModelSet:
    heavy = get(ModelQuality.HEAVY)
    full = get(ModelQuality.FULL)
    bundles = {ModelQuality.FULL: full, ModelQuality.HEAVY: heavy}
    return ModelSet(name=ModelQuality.HEAVY.value, bundles=bundles)

"""The clip worker: jobs of clips and of frames held in memory, one after the other.

Started by :class:`measure.pose.supervisor.PoseProcess`, never by hand.
"""

import contextlib
import os
import traceback
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

from measure.domain.tracks import PoseFrame
from measure.errors import ThawlineError
from measure.pose.inference import PoseEstimator
from measure.pose.jobs import PictureJob
from measure.pose.memory import release_freed
from measure.pose.message_pipe import GarbledError, Message
from measure.pose.messages import (
    CLIP_ORDERS,
    Done,
    Failed,
    JobProgress,
    LoadModel,
    PictureBatch,
    PoseFrames,
    Ready,
    RunClip,
    RunPictures,
)
from measure.pose.worker import Worker, WorkerPipes
from measure.pose_models.catalogue import ModelQuality


def main() -> None:
    """Serve jobs until the supervisor closes the pipe or is gone."""
    pipes = WorkerPipes(CLIP_ORDERS)
    from measure.pose.network import PoseNetwork  # takes a second, and closes the way out first

    def end_if_left_open() -> None:
        if PoseNetwork.opened != PoseNetwork.closed:
            os.write(2, b"a network was left open\n")
            os._exit(3)

    ClipWorker(pipes, PoseNetwork, after_clip=end_if_left_open).serve()


class ClipWorker(Worker):
    """Runs jobs; nothing of one is kept for the next but the models.

    Parameters
    ----------
    pipes, make_estimator
        As in :class:`measure.pose.worker.Worker`.
    after_clip
        Called after each clip.
    """

    def __init__(
        self,
        pipes: WorkerPipes,
        make_estimator: Callable[..., PoseEstimator],
        *,
        after_clip: Callable[[], None] = lambda: None,
    ) -> None:
        super().__init__(pipes, make_estimator)
        self._after_clip = after_clip

    def serve(self) -> None:
        """Work for ever."""
        self.send(Ready())
        while True:
            self._take(self._pipes.orders.get())
            release_freed()

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None:
        """Send frames of a pass; called from several threads."""
        self.send(PoseFrames.of(pass_number, frames))

    def progress(self, share: float) -> None:
        """Send how much is done, 0..1."""
        self.send(JobProgress(share=share))

    def _take(self, order: Message) -> None:
        match order:
            case LoadModel():
                self.load(order)
            case RunPictures():
                job = picture_job_of(order, self._pipes.orders.get)
                self._answer(partial(self._run_pictures, job))
            case RunClip():
                with contextlib.suppress(OSError):
                    os.chdir(order.folder)  # the clip's path may be relative to it
                self._answer(partial(self._run_clip, order))
                self._after_clip()

    def _answer(self, work: Callable[[], Done]) -> None:
        try:
            done = work()
        except ThawlineError as error:
            self.send(Failed.of(error))
        except Exception as error:  # noqa: BLE001 - the top of the process
            # Where it happened, for the log; not its text, which may name the clip.
            traceback.print_tb(error.__traceback__)
            self.send(Failed.of(error))
        else:
            self.send(done)

    def _run_clip(self, order: RunClip) -> Done:
        from measure.pose.runner import run_job

        job = order.job
        return Done(info=run_job(job, self._makers_for(alone=job.alone, fine=job.fine), self))

    def _run_pictures(self, job: PictureJob) -> Done:
        from measure.pose.runner import run_picture_job

        run_picture_job(job, self._makers_for(alone=job.alone, fine=True), self)
        return Done()

    def _makers_for(
        self, *, alone: bool, fine: bool
    ) -> Mapping[ModelQuality, Callable[[], PoseEstimator]]:
        """Return makers of networks that search for one person, or for two, as the job wants."""
        options: dict[str, Any] = {"fine": fine, **({"people": 1} if alone else {})}
        return {quality: partial(make, **options) for quality, make in self._makers.items()}


def picture_job_of(order: RunPictures, next_order: Callable[[], Message]) -> PictureJob:
    """Return the job whose first order came; those with its other frames are asked for.

    Raises
    ------
    GarbledError
        If another order came between them.
    """
    pictures = list(order.job.pictures)
    for _ in range(order.batches):
        batch = next_order()
        if not isinstance(batch, PictureBatch):
            raise GarbledError("other orders came between pictures")
        pictures += batch.pictures
    return replace(order.job, pictures=tuple(pictures))


if __name__ == "__main__":
    main()

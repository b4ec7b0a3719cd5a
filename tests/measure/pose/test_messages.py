"""Messages between the pose process and its supervisor: whole, or noticed at once."""

import io
import struct
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, InputError, ModelError, PoseProcessError
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass
from measure.pose.messages import (
    GarbledError,
    Message,
    MessageKind,
    error_message,
    error_of,
    frames_message,
    frames_of,
    info_of,
    job_of,
    message_of_info,
    message_of_job,
    read_message,
    write_message,
)
from measure.pose_models.catalogue import ModelQuality


def through_pipe(*messages: Message) -> list[Message | None]:
    pipe = io.BytesIO()
    for message in messages:
        write_message(pipe, message)
    pipe.seek(0)
    return [read_message(pipe) for _ in range(len(messages) + 1)]


def pose_frame(number: int, people: int, readable: bool = True) -> PoseFrame:
    values = np.arange(people * LANDMARKS * 2, dtype=np.float64).reshape(people, LANDMARKS, 2)
    return PoseFrame(
        index=number,
        time_s=number / 30,
        points_px=values + number,
        visibility=np.full((people, LANDMARKS), 0.5),
        presence=np.full((people, LANDMARKS), np.nan),
        readable=readable,
    )


def test_values_and_arrays_arrive_as_they_were() -> None:
    sent = Message(
        kind=MessageKind.MODEL,
        values={"text": "Żółw \udcff", "none": None, "number": 1.5},
        arrays={
            "bytes": np.frombuffer(b"abc", dtype=np.uint8),
            "numbers": np.array([[1.0, np.nan], [np.inf, -0.0]]),
            "view": np.arange(6, dtype=np.int64)[::2],
            "nothing": np.empty((0, 33, 2)),
        },
    )
    got, end = through_pipe(sent)
    assert end is None
    assert got is not None
    assert (got.kind, got.values) == (sent.kind, sent.values)
    for name, array in sent.arrays.items():
        assert np.array_equal(got.arrays[name], array, equal_nan=array.dtype.kind == "f")


def test_messages_follow_each_other() -> None:
    one, two, end = through_pipe(
        Message(kind=MessageKind.READY), Message(kind=MessageKind.PROGRESS, values={"share": 0.5})
    )
    assert one is not None
    assert two is not None
    assert (one.kind, two.kind, end) == (MessageKind.READY, MessageKind.PROGRESS, None)


@given(st.binary(min_size=1, max_size=200))
def test_anything_else_is_noticed(noise: bytes) -> None:
    with pytest.raises(GarbledError):
        read_message(io.BytesIO(noise))


def test_every_cut_is_noticed() -> None:
    pipe = io.BytesIO()
    write_message(pipe, frames_message(0, [pose_frame(0, 1)]))
    whole = pipe.getvalue()
    for length in (1, 10, 19, 20, 40, len(whole) // 2, len(whole) - 1):
        with pytest.raises(GarbledError, match="inside a message"):
            read_message(io.BytesIO(whole[:length]))


def framed(text: bytes, body: bytes = b"") -> io.BytesIO:
    return io.BytesIO(struct.pack(">8sIQ", b"TLPOSE1\n", len(text), len(body)) + text + body)


@pytest.mark.parametrize(
    "text",
    [
        b"",
        b"{}",
        b"[]",
        b"not json",
        b"[" * 100_000,
        b'{"kind": "unknown", "values": {}, "arrays": {}}',
        b'{"kind": "ready", "values": {}, "arrays": {"a": ["O", [1]]}}',
        b'{"kind": "ready", "values": {}, "arrays": {"a": ["<f8", [-1]]}}',
        b'{"kind": "ready", "values": {}, "arrays": {"a": ["<f8", [99]]}}',
        b'{"kind": "ready", "values": {}, "arrays": {"a": ["<f8", ["x"]]}}',
        b'{"kind": "ready", "values": {}, "arrays": {}}',
    ],
)
def test_messages_without_sense_are_noticed(text: bytes) -> None:
    with pytest.raises(GarbledError):
        read_message(framed(text, b"12345678"))


def test_sizes_are_bounded_before_memory_is_taken() -> None:
    with pytest.raises(GarbledError, match="something else"):
        read_message(io.BytesIO(struct.pack(">8sIQ", b"TLPOSE1\n", 2, 1 << 62)))


def test_frames_arrive_as_they_were() -> None:
    sent = [pose_frame(0, 1), pose_frame(1, 0), pose_frame(2, 2), pose_frame(5, 0, readable=False)]
    message, _ = through_pipe(frames_message(3, sent))
    assert message is not None
    assert message.values["pass"] == 3
    got = frames_of(message)
    assert len(got) == 4
    for one, other in zip(got, sent, strict=True):
        assert (one.index, one.time_s, one.readable) == (other.index, other.time_s, other.readable)
        assert np.array_equal(one.points_px, other.points_px)
        assert np.array_equal(one.visibility, other.visibility)
        assert np.array_equal(one.presence, other.presence, equal_nan=True)
        assert one.points_px.shape == (len(other.points_px), LANDMARKS, 2)


@pytest.mark.parametrize("name", ["index", "people", "points_px", "visibility", "presence"])
def test_frames_that_do_not_fit_together_are_noticed(name: str) -> None:
    good = frames_message(0, [pose_frame(0, 1), pose_frame(1, 1)])
    for arrays in (
        {key: array for key, array in good.arrays.items() if key != name},
        {**good.arrays, name: good.arrays[name][:-1]},
    ):
        with pytest.raises(GarbledError):
            frames_of(Message(kind=MessageKind.FRAMES, arrays=arrays))


@pytest.mark.parametrize(
    "job",
    [
        ClipJob(clip=Path("a.mp4"), passes=(InferencePass(quality=ModelQuality.LITE),)),
        ClipJob(
            clip=Path("Żółw ü 日本 %03d.mp4"),
            passes=(
                InferencePass(quality=ModelQuality.FULL),
                InferencePass(quality=ModelQuality.HEAVY, mirrored=True),
            ),
            rate_hz=7.5,
            windows=((1.0, 2.5), (3.0, 4.0)),
            quarter_turns=3,
            already_mirrored=True,
            fine=True,
            decimation=((1.0, 1.5, 1), (0.0, 4.0, 2)),
        ),
    ],
)
def test_jobs_arrive_as_they_were(job: ClipJob) -> None:
    message, _ = through_pipe(message_of_job(job))
    assert message is not None
    assert job_of(message) == job


def test_facts_arrive_as_they_were() -> None:
    facts = ClipInfo(
        width_px=640,
        height_px=480,
        frames_read=90,
        frames_expected=None,
        frames_unreadable=10,
        duration_s=3.0,
        measured_fps=29.97,
        backend="script",
        rotation_deg=90,
        sample_aspect=4 / 3,
        notes=("One.", "Two."),
    )
    message, _ = through_pipe(message_of_info(facts))
    assert message is not None
    assert info_of(message) == facts
    assert facts.share_unreadable == 0.1


@pytest.mark.parametrize(
    ("error", "kind", "text"),
    [
        (ClipError("gone"), ClipError, "gone"),
        (ModelError("old"), ModelError, "old"),
        (PoseProcessError("hung"), PoseProcessError, "hung"),
        (InputError("odd"), PoseProcessError, "odd"),
        (KeyError("x"), PoseProcessError, "the pose process failed (KeyError: 'x')"),
    ],
)
def test_errors_keep_their_class_where_it_matters(
    error: Exception, kind: type[Exception], text: str
) -> None:
    message, _ = through_pipe(error_message(error))
    assert message is not None
    got = error_of(message)
    assert type(got) is kind
    assert str(got) == text

"""Messages between the pose process and its supervisor: whole, or noticed at once."""

import io
import struct
from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, InputError, ModelError, PoseProcessError
from measure.message import TranslatableMessage
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass, KeptPicture
from measure.pose.message_pipe import GarbledError, Message, read_message, write_message
from measure.pose.messages import (
    CLIP_ANSWERS,
    CLIP_ORDERS,
    Done,
    Failed,
    JobProgress,
    LoadModel,
    PictureBatch,
    PoseFrames,
    Ready,
    RunClip,
    model_orders,
)
from measure.pose_models.catalogue import ModelQuality
from tests.support.changed_message import changed, framed


def through_pipe(*messages: Message, decoder: Any = CLIP_ANSWERS) -> list[Any]:
    pipe = io.BytesIO()
    for message in messages:
        write_message(pipe, message)
    pipe.seek(0)
    return [read_message(pipe, decoder) for _ in range(len(messages) + 1)]


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
    model = LoadModel(quality=ModelQuality.HEAVY, content=b"\0abc" * 1000, is_last=True)
    rgb = np.arange(6 * 10 * 3, dtype=np.uint8).reshape(6, 10, 3)[:, ::2]
    batch = PictureBatch(pictures=(KeptPicture(rgb=rgb, index=3, time_s=0.1, window=2),))
    one, other, end = through_pipe(model, batch, decoder=CLIP_ORDERS)
    assert (one, end) == (model, None)
    (picture,) = other.pictures
    assert (picture.index, picture.time_s, picture.window) == (3, 0.1, 2)
    assert np.array_equal(picture.rgb, rgb)
    assert picture.rgb.dtype == np.uint8


def test_a_model_travels_in_parts() -> None:
    content = bytes(range(256)) * 10_000
    orders = list(model_orders(ModelQuality.LITE, content))
    assert len(orders) > 2
    assert b"".join(order.content for order in orders) == content
    assert [order.is_last for order in orders] == [False] * (len(orders) - 1) + [True]


def test_messages_follow_each_other() -> None:
    assert through_pipe(Ready(), JobProgress(share=0.5)) == [Ready(), JobProgress(share=0.5), None]


@given(st.binary(min_size=1, max_size=200))
def test_anything_else_is_noticed(noise: bytes) -> None:
    with pytest.raises(GarbledError):
        read_message(io.BytesIO(noise), CLIP_ANSWERS)


def test_every_cut_is_noticed() -> None:
    pipe = io.BytesIO()
    write_message(pipe, PoseFrames.of(0, [pose_frame(0, 1)]))
    whole = pipe.getvalue()
    for length in (1, 10, 15, 16, 40, len(whole) // 2, len(whole) - 1):
        with pytest.raises(GarbledError, match="inside a message"):
            read_message(io.BytesIO(whole[:length]), CLIP_ANSWERS)


def array(stated: str, shape: Any, content: bytes) -> tuple[Any, ...]:
    return stated, shape, msgspec.msgpack.Ext(1, content)


EIGHT = b"12345678"


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"not MessagePack",
        b"\x91" * 100_000,
        *map(
            msgspec.msgpack.encode,
            (
                {},
                [],
                {"kind": "unknown"},
                {"kind": "model", "quality": "lite", "content": EIGHT},
                {"kind": "progress"},
                {"kind": "progress", "share": "x"},
                {"kind": "failed", "error": "", "text": 1},
                {"kind": "failed", "error": "", "text": b"\xff"},
                {"kind": "done", "info": {"width_px": 1}},
            ),
        ),
        msgspec.msgpack.encode({"kind": "ready"}) + EIGHT,
    ],
)
def test_messages_without_sense_are_noticed(content: bytes) -> None:
    with pytest.raises(GarbledError):
        read_message(framed(content), CLIP_ANSWERS)


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        7,
        EIGHT,
        [],
        ["<f8", [1], EIGHT],
        array("<i8", [1], EIGHT),
        array("O", [1], EIGHT),
        array("<f8", [-1], EIGHT),
        array("<f8", [99], EIGHT),
        array("<f8", ["x"], EIGHT),
        array("<f8", [1.0], EIGHT),
        array("<f8", [1 << 62, 0], b""),
        array("<f8", [1] * 99, EIGHT),
        array("<f8", 1, EIGHT),
        array("<f8", [1], b"1234567"),
    ],
)
def test_arrays_without_sense_are_noticed(wrong: Any) -> None:
    message = PoseFrames.of(0, [pose_frame(0, 1)])
    right = array("<f8", [1], EIGHT)
    read_message(changed(message, lambda fields: fields.update(time_s=right)), CLIP_ANSWERS)
    with pytest.raises(GarbledError):
        read_message(changed(message, lambda fields: fields.update(time_s=wrong)), CLIP_ANSWERS)


def test_sizes_are_bounded_before_memory_is_taken() -> None:
    with pytest.raises(GarbledError, match="something else"):
        read_message(io.BytesIO(struct.pack(">8sQ", b"TLPOSE2\n", 1 << 62)), CLIP_ANSWERS)


def test_frames_arrive_as_they_were() -> None:
    sent = [pose_frame(0, 1), pose_frame(1, 0), pose_frame(2, 2), pose_frame(5, 0, readable=False)]
    message, _ = through_pipe(PoseFrames.of(3, sent))
    assert message.pass_number == 3
    got = message.frames()
    assert len(got) == 4
    for one, other in zip(got, sent, strict=True):
        assert (one.index, one.time_s, one.readable) == (other.index, other.time_s, other.readable)
        assert np.array_equal(one.points_px, other.points_px)
        assert np.array_equal(one.visibility, other.visibility)
        assert np.array_equal(one.presence, other.presence, equal_nan=True)
        assert one.points_px.shape == (len(other.points_px), LANDMARKS, 2)


@pytest.mark.parametrize("name", ["index", "people", "points_px", "visibility", "presence"])
def test_frames_that_do_not_fit_together_are_noticed(name: str) -> None:
    good = PoseFrames.of(0, [pose_frame(0, 1), pose_frame(1, 1)])
    shorter = getattr(good, name)[:-1]
    plain = array(shorter.dtype.str, shorter.shape, shorter.tobytes())
    changes: tuple[Callable[[dict[str, Any]], object], ...] = (
        lambda fields: fields.pop(name),
        lambda fields: fields.update({name: plain}),
    )
    for change in changes:
        with pytest.raises(GarbledError):
            read_message(changed(good, change), CLIP_ANSWERS)


@pytest.mark.parametrize(
    "job",
    [
        ClipJob(clip=Path("a.mp4"), passes=(InferencePass(quality=ModelQuality.LITE),)),
        ClipJob(
            clip=Path("Żółw ü 日本 \udcff %03d.mp4"),
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
    sent = RunClip(job=job, folder=Path("/a folder"))
    assert through_pipe(sent, decoder=CLIP_ORDERS) == [sent, None]


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
    assert through_pipe(Done(info=facts)) == [Done(info=facts), None]
    assert facts.share_unreadable == 0.1


@pytest.mark.parametrize(
    ("error", "kind", "text"),
    [
        (ClipError("gone"), ClipError, "gone"),
        (ClipError("Żółw \udcff"), ClipError, "Żółw \udcff"),
        (ModelError("old"), ModelError, "old"),
        (PoseProcessError("hung"), PoseProcessError, "hung"),
        (InputError("odd"), PoseProcessError, "odd"),
        (KeyError("x"), PoseProcessError, "the pose process failed (KeyError: 'x')"),
    ],
)
def test_errors_keep_their_class_where_it_matters(
    error: Exception, kind: type[Exception], text: str
) -> None:
    message, _ = through_pipe(Failed.of(error))
    got = message.exception()
    assert type(got) is kind
    assert str(got) == text


def test_an_error_to_translate_keeps_template_and_values() -> None:
    finding = TranslatableMessage("contains sound only, no pictures")
    said = TranslatableMessage(
        "The clip {clip} {finding}.", {"clip": "ż\udcff", "finding": finding}
    )
    message, _ = through_pipe(Failed.of(ClipError(said)))
    assert message.exception().message == said
    assert str(message.exception()) == str(said)

"""Assembly of a pose bundle from the two networks of the official packages.

A bundle is an uncompressed zip of a person detector and a landmark network. The pose library
accepts a float network only if it carries metadata saying how pixels become its input; the
networks of the packages lack it, so it is added here. The same networks always give the same
bytes, so a bundle is known by its SHA-256. No downloading and no folders here.
"""

import importlib.util
import io
import zipfile
from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

import flatbuffers

from measure.errors import MachineError
from measure.message import TranslatableMessage

DETECTOR_ENTRY = "pose_detector.tflite"
LANDMARKS_ENTRY = "pose_landmarks_detector.tflite"

#: Pixel ranges of the networks' inputs, (value - mean) / std for values 0..255: -1 to 1 for the
#: detector, 0 to 1 for the landmark network. [source: model cards of the pose library]
DETECTOR_PIXELS = (127.5, 127.5)
LANDMARKS_PIXELS = (0.0, 255.0)

#: Weights lie at multiples of this many bytes, in the network and in the bundle. [technical]
_ALIGNMENT = 64

_NETWORK_MARK = b"TFL3"
_METADATA_MARK = b"M001"
_METADATA_NAME = "TFLITE_METADATA"
_ZIP_EPOCH = (1980, 1, 1, 0, 0, 0)


def is_network(content: bytes) -> bool:
    """Return whether the bytes begin as a TensorFlow Lite network."""
    return content[4:8] == _NETWORK_MARK


def assemble(detector: bytes, landmarks: bytes) -> bytes:
    """Return the bundle of a detector and a landmark network as the packages hold them.

    Parameters
    ----------
    detector, landmarks
        TensorFlow Lite networks, already verified by the caller.
    """
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_STORED) as bundle:
        for name, network, (mean, std) in (
            (DETECTOR_ENTRY, detector, DETECTOR_PIXELS),
            (LANDMARKS_ENTRY, landmarks, LANDMARKS_PIXELS),
        ):
            entry = zipfile.ZipInfo(name, _ZIP_EPOCH)
            entry.create_system = 3  # the same bytes on every system
            entry.external_attr = 0o100644 << 16
            entry.extra = _padding(packed.tell() + 30 + len(name))
            bundle.writestr(entry, with_pixel_range(network, mean, std))
    return packed.getvalue()


def _padding(start: int) -> bytes:
    """Return an extra field that moves what follows byte `start` to a multiple of 64."""
    size = -(start + 4) % _ALIGNMENT
    return b"\x00\x00" + size.to_bytes(2, "little") + bytes(size)


def with_pixel_range(network: bytes, mean: float, std: float) -> bytes:
    """Return the network with metadata that its input is an RGB image, (value - mean) / std.

    A network that already carries metadata is returned as it is. Otherwise a new root table
    is put in front of the unchanged old bytes: references in this format only point forwards
    and are relative, so everything behind the new root stays valid and aligned.

    Parameters
    ----------
    network
        A TensorFlow Lite network with one subgraph and one input.
    mean, std
        For values 0..255, the same for the three channels.
    """
    schema = schema_module("schema_py_generated")
    old = schema.Model.GetRootAs(network, 0)
    entries = [old.Metadata(i) for i in range(old.MetadataLength())]
    if any(entry.Name() == _METADATA_NAME.encode() for entry in entries):
        return network

    builder, from_end = _builder_in_front_of(network)
    note = builder.CreateByteVector(_metadata(mean, std))
    schema.BufferStart(builder)
    schema.BufferAddData(builder, note)
    new_buffer = schema.BufferEnd(builder)
    name = builder.CreateString(_METADATA_NAME)
    schema.MetadataStart(builder)
    schema.MetadataAddName(builder, name)
    schema.MetadataAddBuffer(builder, old.BuffersLength())
    new_entry = schema.MetadataEnd(builder)

    buffers = [from_end(old.Buffers(i)._tab.Pos) for i in range(old.BuffersLength())]
    buffers_at = _vector(builder, [*buffers, new_buffer])
    entries_at = _vector(builder, [*(from_end(entry._tab.Pos) for entry in entries), new_entry])

    def kept(slot: int) -> int:
        """Return where the old root's field is; 0, which is not written, if it has none."""
        place = old._tab.Offset(4 + 2 * slot)
        return from_end(old._tab.Indirect(old._tab.Pos + place)) if place else 0

    schema.ModelStart(builder)
    schema.ModelAddVersion(builder, old.Version())
    schema.ModelAddOperatorCodes(builder, kept(1))
    schema.ModelAddSubgraphs(builder, kept(2))
    schema.ModelAddDescription(builder, kept(3))
    schema.ModelAddBuffers(builder, buffers_at)
    schema.ModelAddMetadataBuffer(builder, kept(5))
    schema.ModelAddMetadata(builder, entries_at)
    schema.ModelAddSignatureDefs(builder, kept(7))
    builder.Finish(schema.ModelEnd(builder), file_identifier=_NETWORK_MARK)
    return bytes(builder.Output())


def _builder_in_front_of(network: bytes) -> tuple[Any, Callable[[int], int]]:
    """Return a builder that already holds the network, and how it counts places in it.

    A builder writes from the end to the front and names places by their distance from the end.
    """
    size = len(network) + -len(network) % _ALIGNMENT
    builder = flatbuffers.Builder(size + (1 << 16))
    builder.head -= size
    builder.Bytes[builder.head : builder.head + len(network)] = network
    builder.minalign = _ALIGNMENT
    return builder, lambda place: size - place


def _vector(builder: Any, places: list[int]) -> int:
    builder.StartVector(4, len(places), 4)
    for place in reversed(places):
        builder.PrependUOffsetTRelative(place)
    return int(builder.EndVector())


def _metadata(mean: float, std: float) -> bytes:
    words = schema_module("metadata_schema_py_generated")
    picture = words.ImagePropertiesT()
    picture.colorSpace = words.ColorSpaceType.RGB
    content = words.ContentT()
    content.contentPropertiesType = words.ContentProperties.ImageProperties
    content.contentProperties = picture
    scale = words.NormalizationOptionsT()
    scale.mean, scale.std = [mean], [std]
    step = words.ProcessUnitT()
    step.optionsType = words.ProcessUnitOptions.NormalizationOptions
    step.options = scale
    tensor = words.TensorMetadataT()
    tensor.name = "image"
    tensor.content = content
    tensor.processUnits = [step]
    graph = words.SubGraphMetadataT()
    graph.inputTensorMetadata = [tensor]
    model = words.ModelMetadataT()
    model.subgraphMetadata = [graph]
    builder = flatbuffers.Builder(1024)
    builder.Finish(model.Pack(builder), file_identifier=_METADATA_MARK)
    return bytes(builder.Output())


@cache
def schema_module(name: str) -> ModuleType:
    """Return a schema module of the pose library without loading the library itself.

    The schema files are plain Python beside it. Importing them by their full name would load
    the native library, which only the pose process may do.
    """
    library = importlib.util.find_spec("mediapipe")
    folders = library.submodule_search_locations if library else None
    file = Path(next(iter(folders), "")) / "tasks" / "metadata" / f"{name}.py" if folders else None
    spec = importlib.util.spec_from_file_location(f"_pose_{name}", file) if file else None
    if file is None or not file.is_file() or spec is None or spec.loader is None:
        raise MachineError(
            TranslatableMessage(
                "The pose library mediapipe is not installed completely, so the pose model "
                "cannot be assembled. Install Thawline's packages again in a new virtual "
                "environment."
            )
        )
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module

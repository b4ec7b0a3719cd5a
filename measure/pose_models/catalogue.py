"""Catalogue of the official pose networks and bundles, by SHA-256. Values only.

The networks are those of the official packages, see :mod:`measure.pose_models.package_clients`. A
bundle put together from them has a SHA-256 of its own, which is checked at every start.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class ModelQuality(StrEnum):
    """Size of the landmark network: the larger, the steadier and the slower."""

    LITE = "lite"
    FULL = "full"
    HEAVY = "heavy"


@dataclass(frozen=True, slots=True, kw_only=True)
class Checksums:
    """SHA-256 in lower-case hexadecimal, 64 digits each.

    Attributes
    ----------
    detectors
        The person detectors of the packages.
    landmarks
        The landmark network of each quality.
    bundles
        For each quality the bundles that may be on disk, with their length in bytes: one for
        each detector it may have been put together with.
    """

    detectors: frozenset[str]
    landmarks: Mapping[ModelQuality, str]
    bundles: Mapping[ModelQuality, Mapping[str, int]]


OFFICIAL = Checksums(
    detectors=frozenset(
        {
            "a63c614bef30d35947f13be361820b1e4e3bec9cfeebf4d11216a18373108e85",
            "9ba9dd3d42efaaba86b4ff0122b06f29c4122e756b329d89dca1e297fd8f866c",
        }
    ),
    landmarks={
        ModelQuality.LITE: "f17bfbecadb61c3be1baa8b8d851cc6619c870a87167b32848ad20db306b9d61",
        ModelQuality.FULL: "e9a5c5cb17f736fafd4c2ec1da3b3d331d6edbe8a0d32395855aeb2cdfd64b9f",
        ModelQuality.HEAVY: "59e42d71bcd44cbdbabc419f0ff76686595fd265419566bd4009ef703ea8e1fe",
    },
    bundles={
        ModelQuality.LITE: {
            "3dc7ae996135697f5ed4512896e3ed1931e2a7aea3247fca61bd860edaf565aa": 5_786_294,
        },
        ModelQuality.FULL: {
            "77c5f1171ea7034c3be1817a15a71b4af52131cc6ec5d2cc84fa27cc1f112cbf": 9_407_094,
            "2b8907a27d02f5535229f996261b874cc62a358a6e866b85043dff5cf320dd83": 9_401_776,
        },
        ModelQuality.HEAVY: {
            "77051a6f6e42f593e7aed4b92f0dce74f8b7d4f0616ebda8abfb3eef0f01ef2b": 30_677_238,
        },
    },
)

"""Packages of the distribution: those of the tree, and `measure/api` under the name `thawline`.

Everything else about the project stands in pyproject.toml, which has no way to say this.
"""

from setuptools import find_packages, setup

OURS = ["measure*", "gui*", "calibration*", "sample_clips*"]

setup(
    packages=[*find_packages(include=OURS, exclude=["measure.api*"]), "thawline"],
    package_dir={"thawline": "measure/api"},
)

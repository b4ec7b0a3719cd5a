"""The accuracy bench fits nothing on people too few to leave one out."""

from pathlib import Path

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from tests.bench.accuracy_cases import Case
from tests.bench.accuracy_fit import Sample, too_few_bodies


def sample(body: int, *, elbow_deg: float = 0.0, view: View = View.FRONT) -> Sample:
    case = Case(
        name=f"trial-{body}",
        clip=Path("clip.mp4"),
        movement=Movement.ABDUCTION,
        side=Side.LEFT,
        view=view,
        split="trial",
        expected=("reading",),
        holds=((90.0, 2.0, 4.0),),
        facts={"body": body, "holds": [{"elbow_flexion_deg": elbow_deg}]},
    )
    return Sample(case=case, base=90.0, truth=90.0, terms={}, spread=0.0, notes=())


@pytest.mark.parametrize(
    ("samples", "lacking"),
    [
        ([], ()),
        ([sample(1), sample(2)], ()),
        ([sample(1), sample(1)], ("elevation abduction:front",)),
        ([sample(1), sample(2, elbow_deg=90.0)], ("elevation abduction:front",)),
        ([sample(1), sample(2), sample(3, view=View.BACK)], ("elevation abduction:back",)),
    ],
)
def test_a_body_can_be_left_out_only_where_others_remain(
    samples: list[Sample], lacking: tuple[str, ...]
) -> None:
    assert too_few_bodies(samples) == lacking

"""The accuracy bench fits nothing on people too few to leave one out."""

from pathlib import Path

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from tests.bench.accuracy_cases import Case
from tests.bench.accuracy_fit import Sample, too_few_bodies


def sample(
    body: int, *, view: View = View.BACK, movement: Movement = Movement.HAND_BEHIND_BACK
) -> Sample:
    case = Case(
        name=f"trial-{body}",
        clip=Path("clip.mp4"),
        movement=movement,
        side=Side.LEFT,
        view=view,
        split="trial",
        expected=("reading",),
        holds=((0.5, 2.0, 4.0),),
        facts={"body": body},
    )
    terms = {} if movement is Movement.ABDUCTION else {"offset": 1.0, "height": 0.5}
    return Sample(case=case, value=0.5, truth=0.5, terms=terms, spread=0.0, notes=())


@pytest.mark.parametrize(
    ("samples", "lacking"),
    [
        ([], ()),
        ([sample(1), sample(2)], ()),
        ([sample(1), sample(1)], ("reach back",)),
        ([sample(1), sample(2), sample(3, view=View.SIDE)], ("reach side",)),
        ([sample(1, movement=Movement.ABDUCTION)], ()),
    ],
)
def test_a_body_can_be_left_out_only_where_others_remain(
    samples: list[Sample], lacking: tuple[str, ...]
) -> None:
    assert too_few_bodies(samples) == lacking

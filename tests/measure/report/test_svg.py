"""Diagrams as SVG."""

import xml.etree.ElementTree as ET

from measure.report.svg import Box, Diagram, Dot, Line, Shape, Words, as_svg


def test_svg_is_well_formed_and_escaped() -> None:
    picture = Diagram(
        width=50,
        height=20,
        marks=(
            Line(x1=0, y1=0, x2=10, y2=10, dashed=True),
            Box(x=1, y=1, width=5, height=5, fill=0.5),
            Dot(x=3, y=3, size=2),
            Dot(x=3, y=3, size=2, shape=Shape.SQUARE, filled=False),
            Words(x=1, y=9, text="<&\"'>", anchor="end", bold=True),
        ),
        description='a "quoted" <picture>',
    )
    root = ET.fromstring(as_svg(picture))
    space = "{http://www.w3.org/2000/svg}"
    assert root.get("aria-label") == 'a "quoted" <picture>'
    assert [element.tag for element in root] == [
        space + name for name in ("line", "rect", "circle", "rect", "text")
    ]
    assert root[4].text == "<&\"'>"
    assert root[1].get("fill") == "#808080"
    assert root[3].get("fill") == "#ffffff"


def test_letters_that_would_join_stand_in_spans_of_their_own() -> None:
    words = Words(x=0, y=0, text="a flufflier finch")
    root = ET.fromstring(as_svg(Diagram(width=9, height=9, marks=(words,), description="")))
    assert [span.text for span in root[0]] == ["a f", "luf", "f", "lier f", "inch"]
    assert "".join(root[0].itertext()) == words.text

"""What is said under a nail's label: that its last line is a distance from the centre line."""

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.of_centre import words_under
from templates_gen.drawing.items import Line, Text

BOX = Rect(10.0, 20.0, 60.0, 40.0)
NAME = Text(10.0, 35.0, "A", 7.0, bold=True)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_label_that_ends_with_a_side_has_it_said_a_millimetre_under_it_in_its_lettering(side):
    last = Text(10.0, 22.0, f"120 mm · 4 3/4 in {side}", 3.5, "right")
    (words,) = words_under([Line(0.0, 0.0, 5.0, 0.0, 0.2), NAME, last], BOX)
    assert words == Text(10.0, 19.0, "of the centre line", 3.5, "right")


@pytest.mark.parametrize(
    "label", [[], [Line(0.0, 0.0, 5.0, 0.0, 0.2)], [NAME], [Text(0.0, 0.0, "on the centre line", 3.5)]]
)
def test_of_what_is_on_the_line_or_has_no_lettering_nothing_is_said(label):
    assert words_under(label, BOX) == []

"""Marks as layers: each is told of a sheet as far as it is drawn, and takes no room but what it gives back."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets import layers
from templates_gen.documents.sheets.layer import Drawn, Layer, SoFar, each
from templates_gen.documents.sheets.layers import LAYERS, lay, sheet_page
from templates_gen.drawing.items import Line
from tests.made import made

NAMES = ("fern-prints", "twelve, a4, nails", "uncut a4", "one piece")


def unchanged(layer: Layer) -> Layer:
    """The same layer; fails where it changes what is told of a sheet."""

    def watched(every: Sequence[SoFar]) -> Iterable[Drawn]:
        before = [_taken(so_far) for so_far in every]
        done = list(layer(every))
        assert [_taken(so_far) for so_far in every] == before
        assert len(done) == len(every)
        return done

    return watched


def _taken(so_far: SoFar) -> list[list[Rect]]:
    walls, pages = so_far.on_wall, so_far.on_page
    return [list(boxes) for boxes in (walls.taken, walls.lines, pages.taken, pages.lines)]


@pytest.mark.parametrize("name", NAMES)
def test_a_layer_takes_no_room_but_what_it_gives_back(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    done = made(name)
    monkeypatch.setattr(layers, "LAYERS", tuple(map(unchanged, LAYERS)))
    every = lay(done.plan, done.sheets, 0, done.lettering)
    for laid in every:
        given = [box for drawn in laid.drawn.values() for box in drawn.taken]
        assert given == list(laid.so_far.on_wall.taken) and len(laid.drawn) == len(LAYERS)


@pytest.mark.parametrize("name", NAMES)
def test_a_new_mark_on_every_sheet_is_one_row_and_one_function(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A stroke of 12 mm, wherever a sheet has room for it; it lies on nothing that any other layer took."""
    done = made(name)

    def stroke(so_far: SoFar) -> Drawn:
        sheet = so_far.sheet
        box = so_far.whole_page().nearest(2.0, 12.0, sheet.inner.cx, sheet.inner.cy, sheet.window)
        return Drawn((Line(box.cx, box.y0, box.cx, box.y1, 0.123),), taken=(box,)) if box else Drawn()

    monkeypatch.setattr(layers, "LAYERS", (*LAYERS, each(stroke)))
    every = lay(done.plan, done.sheets, 0, done.lettering)
    strokes = []
    for laid in every:
        *others, (_, own) = laid.drawn.items()
        taken = [box for _, drawn in others for box in (*drawn.taken, *drawn.taken_beyond)]
        assert not any(box.overlaps(other) for box in own.taken for other in taken)
        page = sheet_page(laid)
        strokes += [item for item in page.wall_items if isinstance(item, Line) and item.width == 0.123]
    assert len(strokes) == len(every)

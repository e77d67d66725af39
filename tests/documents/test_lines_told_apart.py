"""No line is taken for one of another kind from two metres: every page in coarse pixels, compared with every kind."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import numpy as np
import pytest

from templates_gen.base.record import replace
from templates_gen.drawing.items import Form, Item, Line, moved
from templates_gen.drawing.moving import moved_by
from templates_gen.drawing.shapes import TEETH, teeth
from templates_gen.drawing.sizes import BROAD, HEAVY, INNER_EDGE, MEDIUM, STRONG, WIDE
from templates_gen.drawing.strokes import CENTRE_DASH, NEXT_DASH
from templates_gen.job.paper_sizes import own_paper
from tests.every_mark import every_sheet, marks_of, on_lines
from tests.looking import PIXEL, Pixels, alike, around, drawn, form, likeness, seen, ways
from tests.made import Everything, asked, made, make

STEPS = {"tram-tickets": 3, "twelve, letter, linked": 9}
"""Every so many'th sheet is looked at here; every one of every job in tests/bench."""

UNLIKE = 0.9
"""How like two kinds of line may be at most, seen alone.  Our own choice."""

LEAST = 0.02
"""By how much more a line must look like its own kind than like any other, wherever it runs.  Our own choice."""

LONG = 24.0
"""mm of a line that are looked at: more than is seen of it.  Our own choice."""

TICK = 10.0
"""mm between two ticks of a level line: our own design."""


def lines() -> dict[str, tuple[tuple[Item, ...], float]]:
    """All kinds of long lines, a piece of each, and after how many mm each is the same again."""
    end = LONG / 2 + TICK
    ticks = (Line(x, 0, x, -4.5 if x == 0 else -2.5, WIDE) for x in (-2 * TICK, -TICK, 0.0, TICK, 2 * TICK))
    edge = Line(-end, 0, end, 0, STRONG), Line(-end, -INNER_EDGE, end, -INNER_EDGE, WIDE)
    return {
        "cut": ((Line(-end, 0, end, 0, MEDIUM), *teeth((-end, 0), (end, 0))), TEETH[2]),
        "next sheet": ((Line(-end, 0, end, 0, STRONG, NEXT_DASH),), sum(NEXT_DASH)),
        "frame": (edge, 0.0),
        "level line": ((Line(-end, 0, end, 0, BROAD), *ticks), TICK),
        "centre line": ((Line(-end, 0, end, 0, HEAVY, CENTRE_DASH),), sum(CENTRE_DASH)),
    }


def shifted(kind: str, aside: float, up: float) -> Form:
    return form(f"{kind} {aside:g} {up:g}", *moved_by(lines()[kind][0], aside, up))


@cache
def looks(kind: str, upright: bool) -> list[Pixels]:
    """How a kind of line looks that runs level or upright, either way round, wherever a pixel begins along and across
    it: 1.25 mm along (our own) and half a pixel across."""
    again = lines()[kind][1]
    steps = max(1, round(again / 1.25))
    every = [shifted(kind, step * again / steps, up) for step in range(steps) for up in (0.0, PIXEL / 2)]
    return [np.rot90(drawn(one, 1.0), turn + upright) for one in every for turn in (0, 2)]


def margins(done: Everything, step: int = 1) -> Iterator[tuple[float, str, str, str]]:
    """Of places on every long line of a job: how much more it looks like its own kind than like the likest other one,
    by the line itself and by all that is seen there, in the middle; the two kinds, and where.

    Beside another line or a ruler it is asked whether a line to cut is taken for another, or another for it, alone.
    """
    for number, (laid, page, to_page) in enumerate(every_sheet(done)):
        if number % step:
            continue
        pixels, lying = seen(done.pdf, page), abs(to_page[0]) < abs(to_page[1])
        for kind, x, y, upright, alone in on_lines(laid, [*marks_of(laid)]):
            places = around(pixels, *moved(to_page, x, y))
            like = {
                other: (likeness(places, some) + alike(places, some)) / 2
                for other in (lines() if alone or kind == "cut" else (kind, "cut"))
                if (some := looks(other, upright != lying))
            }
            own = like.pop(kind)
            other = max(like, key=lambda one: like[one])
            yield own - like[other], kind, other, f"{x:.0f}, {y:.0f} on sheet {laid.so_far.sheet.name}"


@pytest.mark.parametrize("name", STEPS)
def test_no_line_is_taken_for_one_of_another_kind(name: str) -> None:
    """Above all no edge of a frame, and neither long line, for a line to cut."""
    found = list(margins(made(name), STEPS[name]))
    assert {kind for _, kind, _, _ in found} >= {"cut", "next sheet", "frame", "level line"}
    assert [one for one in found if one[0] <= LEAST] == []


def test_no_figure_beside_a_frame_makes_a_line_to_cut_of_its_edge() -> None:
    """Large figures of a sheet that hangs by itself stood a millimetre over the edge, with a hook of the 7 on it."""
    job = asked("tile-rubbings")
    loose = make(replace(job, paper=replace(own_paper(job, "a4"), cover="nails", trim="cut")))
    edges = [one for one in margins(loose, 2) if one[1] == "frame"]
    assert len(edges) > 10 and min(edges)[0] > LEAST, min(edges)


def test_no_two_kinds_of_line_look_alike() -> None:
    """Whichever way round, and shifted along and across."""
    for kind in lines():
        own = drawn(shifted(kind, 0.0, 0.0), 1.0)
        for other in lines():
            if other != kind:
                steps = [(across / 2, up / 2) for across in range(-5, 6) for up in range(-3, 4)]
                every = [way for step in steps for way in ways(shifted(other, *step))]
                assert alike(own, every) < UNLIKE, (kind, other)


def test_one_line_more_or_less_would_be_taken_for_another() -> None:
    """A cut without teeth looks like the edge of a frame, single.  Or the tests above could not fail."""
    plain = drawn(form("plain cut", Line(-LONG, 0, LONG, 0, 0.18)), 1.0)
    assert alike(plain, ways(form("plain edge", Line(-LONG, 0, LONG, 0, 0.25)))) > UNLIKE

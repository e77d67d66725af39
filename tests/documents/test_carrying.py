"""What the schedule says of every nail: its load, its fixing, stud or not, cables, and the findings about it."""

import csv
import io

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.checks import find
from templates_gen.documents.instructions.first_pages import first_pages
from templates_gen.documents.schedule.carrying import Carried, carried, carried_rows
from templates_gen.documents.schedule.distances import nail_called
from templates_gen.documents.schedule.table import as_csv, as_data, as_text
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Fixing, Hanger, Job, Studs
from templates_gen.tolerance.holding import plan_sheets
from tests.finding_cases_behind import feature, on
from tests.jobs import frame, job

POUND = 0.45359237  # kg exactly (international yard and pound agreement, 1959)


def lines(of: Job) -> dict[str, Carried]:
    plan = plan_wall(of)
    return {line.name: line for line in carried(plan, find(plan))}


def test_a_job_that_tells_nothing_about_it_has_no_lines():
    plan = plan_wall(job())
    assert carried(plan, find(plan)) == ()
    assert "carries" not in as_text(plan, find(plan)) and "cables" not in as_text(plan, find(plan))


def test_two_fixings_share_the_weight():
    # 5 kg each, 5 x 9.80665 = 49.0 N, 5 / 0.45359237 = 11.0 lb: worked out by hand here
    rings = frame(weight=10.0, hanger=Hanger(kind="rings", left=50.0, right=50.0))
    assert {line.load for line in lines(job(rings)).values()} == {"5.0 kg · 11.0 lb (49 N)"}
    assert lines(job(rings, unit="in"))["A left"].load == "11.0 lb · 5.0 kg (49 N)"


def test_two_fixings_under_a_wire_are_pulled_to_each_other_as_well():
    # D = 400, L = 430, s = 200: each takes 0.5 W down, 0.517 W in all; W = 98.07 N: worked out by hand here
    wire = Hanger(kind="wire", apart=200.0, ring_separation=400.0, ring_depth=150.0)
    (left, right) = lines(job(frame(weight=10.0, drop=71.101, hanger=wire))).values()
    assert left.load == right.load == "5.0 kg · 11.0 lb (49 N down, 51 N with the wire's pull)"


def test_an_estimate_is_called_one_and_a_nail_without_a_drop_has_its_line():
    (line,) = lines(job(frame(drop=None, weight=2.0, estimated=True))).values()
    assert (line.name, line.load) == ("A", "est. 2.0 kg · 4.4 lb (20 N)")


def test_the_fixing_says_its_nails_and_its_rating():
    hook = Fixing(kind="hook", below=22.0, rating=20 * POUND, nails=2)
    assert lines(job(frame(weight=1.0, fixing=hook), unit="in"))["A"].fixing == (
        "hook with 2 nails, rated 20.0 lb · 9.1 kg"
    )
    assert lines(job(frame(weight=1.0)))["A"].fixing == "nail"


@pytest.mark.parametrize(
    ("more", "stud"),
    [
        ({"studs": Studs(first=2000.0, spacing=600.0, width=38.0)}, "in a stud"),  # the nail is 2000 across
        ({"studs": Studs(first=2100.0, spacing=600.0, width=38.0)}, "no stud"),
        ({"studs": Studs(first=None, spacing=600.0, width=38.0)}, "not known"),
        ({"build": "drywall"}, "not known"),
        ({"build": "masonry"}, ""),
    ],
)
def test_stud_or_not(more, stud):
    assert lines(on(**more))["A"].stud == stud


def test_a_nail_in_no_zone_is_never_called_clear_of_cables():
    assert lines(on(feature("outlet", 1960.0, 300.0)))["A"].cables == (
        "may run here: straight above or below the outlet"
    )
    assert {lines(on(wiring=rule))["A"].cables for rule in ("uk", "de", "us")} == {"look first"}
    assert lines(on(wiring="", frames=(frame(weight=1.0),)))["A"].cables == "not known, look first"


def two_of_which_one_is_in_a_zone() -> Job:
    """Rings at 1850 and 2150, an outlet under the right one; 6 kg on fixings rated for 3 kg each."""
    rings = Hanger(kind="rings", left=50.0, right=50.0)
    heavy = frame(weight=6.0, hanger=rings, fixing=Fixing(rating=3.0))
    return on(feature("outlet", 2110.0, 300.0), frames=(heavy,))


def test_each_nail_names_the_findings_about_it_by_their_numbers():
    of = two_of_which_one_is_in_a_zone()
    rules = [found.rule for found in find(plan_wall(of))]
    seen = {name: [rules[number - 1] for number in line.see] for name, line in lines(of).items()}
    assert seen == {"A left": ["rating-exceeded"], "A right": ["cable-zone", "rating-exceeded"]}


def test_the_schedule_on_a_screen_lists_the_findings_under_these_numbers():
    plan = plan_wall(two_of_which_one_is_in_a_zone())
    text = as_text(plan, find(plan))
    assert max(map(len, text.splitlines())) <= 79
    assert "see 2\n" in text and "see 1, 2\n" in text
    assert "\n  1 warn  Nail A right (facing):" in text and "\n  2 warn  Frame A: a weight of 6.0 kg" in text


def test_the_printed_pages_have_the_same_numbers_and_the_rows_that_want_thought_are_bold():
    plan = plan_wall(two_of_which_one_is_in_a_zone())
    pages = first_pages(plan, find(plan), plan_sheets(plan, plan.job.paper), None, Lettering()).pages
    texts = {item.text: item.bold for page in pages for item in page if isinstance(item, Text)}
    assert {"1 warn", "2 warn", "1, 2", "before you hang"} <= set(texts)
    assert texts["! A right (facing)"] and texts["1, 2"]
    plain = plan_wall(on(frames=(frame("B", weight=1.0),)))
    pages = first_pages(plain, (), plan_sheets(plain, plain.job.paper), None, Lettering()).pages
    assert {item.bold for page in pages for item in page if isinstance(item, Text) and item.text == "look first"} == {
        False
    }


def test_nails_of_which_the_same_is_said_share_a_row_and_each_is_in_one():
    rings = Hanger(kind="rings", left=50.0, right=50.0)
    names = ["A", "a longer name of a frame", "C", "the very last one of them", "E"]
    plan = plan_wall(on(frames=tuple(frame(name, 200.0, 300.0, weight=1.0) for name in names)))
    (row, *rows) = carried_rows(carried(plan, ()), frozenset())
    assert (row[0], [more[0] for more in rows]) == ("A, a longer name of a frame, C", ["the very last one of them, E"])
    assert {told[1:] for told in (row, *rows)} == {row[1:]}
    plan = plan_wall(on(frames=(frame("P", hanger=rings), frame("Q"), frame("R", hanger=rings))))
    assert [row[0] for row in carried_rows(_lines(plan), frozenset({"Q"}))] == [
        "P left, P right, R left, R right (facing)", "! Q",
    ]  # fmt: skip


def _lines(plan: Plan) -> tuple[Carried, ...]:
    """All nails, of which the same is to be said."""
    return tuple(
        Carried(nail.name, nail_called(nail.name, nail.frame), "", "nail", "", "look first", ()) for nail in plan.nails
    )


def test_a_machine_is_told_the_same():
    plan = plan_wall(two_of_which_one_is_in_a_zone())
    left, right = as_data(plan, find(plan))["frames"][0]["nails"]
    assert (left["think_first"], right["think_first"], left["fixing"]) == (True, True, "nail")
    one, two = csv.DictReader(io.StringIO(as_csv(plan, find(plan))))
    assert (one["zones"], two["zones"]) == ("", "straight above or below the outlet")
    # 3 kg x 9.80665 N/kg: worked out by hand here
    assert (one["think_first"], one["stud"], one["pull_n"], one["fixing"]) == ("yes", "", "29.4", "nail")

"""Slips of every usual kind, for `slips_at_random.py`: each changes a sound job's tables as a person's pen, eye or tape
would.

What is usual is our own experience, no source; none is chosen for being seen.
"""

from __future__ import annotations

import copy
import random
from collections.abc import Callable
from typing import Any

from templates_gen.base.units import INCH, MM
from tests.bench.jobs_at_random import Tables, number, other, written

Slip = Callable[[Tables, Tables, random.Random], None]
"""Changes a job's tables, and one of its frames; an error where the job has no place for the slip."""

KINDS: dict[str, Slip] = {}


class NoPlaceError(LookupError):
    """The job has nothing that this slip could be made in."""


def kind(slip: Slip) -> Slip:
    KINDS[slip.__name__.replace("_", " ")] = slip
    return slip


def unit_of(job: Tables) -> str:
    return str(job["job"]["unit"])


def needs(found: Any) -> None:
    if not found:
        raise NoPlaceError


def rings(frame: Tables) -> Tables:
    hanger = frame.get("hanger")
    needs(isinstance(hanger, dict) and hanger["kind"] == "rings")
    return frame["hanger"]


def feature(job: Tables, chance: random.Random) -> Tables:
    needs(job["wall"]["feature"])
    return chance.choice(job["wall"]["feature"])


def on_the_other_tape(place: Callable[[Tables, Tables, random.Random], tuple[Tables, list[str]]]) -> Slip:
    def slip(job: Tables, frame: Tables, chance: random.Random) -> None:
        table, names = place(job, frame, chance)
        for name in names:
            needs(name in table)
            table[name] = other(table[name], unit_of(job))

    slip.__name__ = place.__name__
    return kind(slip)


@on_the_other_tape
def a_frame_on_the_other_tape(job, frame, chance):
    return frame, ["width", "height"]


@on_the_other_tape
def a_side_on_the_other_tape(job, frame, chance):
    return frame, [chance.choice(("width", "height"))]


@kind
def all_frames_on_the_other_tape(job, frame, chance):
    for each in job["frame"]:
        each |= {name: other(each[name], unit_of(job)) for name in ("width", "height")}


@on_the_other_tape
def the_walls_width_on_the_other_tape(job, frame, chance):
    return job["wall"], ["width"]


@on_the_other_tape
def the_walls_height_on_the_other_tape(job, frame, chance):
    return job["wall"], ["height"]


@on_the_other_tape
def the_gap_on_the_other_tape(job, frame, chance):
    needs(len(job["frame"]) > 1)
    return job["group"], ["gap"]


@on_the_other_tape
def a_drop_on_the_other_tape(job, frame, chance):
    return frame, ["drop"]


@on_the_other_tape
def the_height_on_the_other_tape(job, frame, chance):
    return job["group"]["height"], [name for name in job["group"]["height"] if name != "above"]


@on_the_other_tape
def an_inset_on_the_other_tape(job, frame, chance):
    needs("left" in (frame.get("hanger") or {}) and isinstance(frame["hanger"], dict))
    return frame["hanger"], [chance.choice(("left", "right"))]


@on_the_other_tape
def a_rings_drop_on_the_other_tape(job, frame, chance):
    return rings(frame), [chance.choice(("drop_left", "drop_right"))]


def a_drop(change: Callable[[float, Tables, str, random.Random], float]) -> Slip:
    def slip(job: Tables, frame: Tables, chance: random.Random) -> None:
        needs("drop" in frame)
        drop = change(number(frame["drop"]), frame, unit_of(job), chance)
        frame["drop"] = f"{drop:.2f}" if change.__name__ == "a_tenth_of_a_drop" else written(drop, unit_of(job))

    slip.__name__ = change.__name__
    return kind(slip)


@a_drop
def a_drop_to_the_lower_edge(drop, frame, unit, chance):
    needs(frame.get("hanger") != "sawtooth")
    return number(frame["height"]) - drop


@a_drop
def a_drop_to_the_slack_wire(drop, frame, unit, chance):
    needs("hanger" not in frame)
    return drop + chance.uniform(20, 45) / MM[unit]


@a_drop
def ten_times_a_drop(drop, frame, unit, chance):
    return drop * 10


@a_drop
def a_tenth_of_a_drop(drop, frame, unit, chance):
    return drop / 10


@a_drop
def a_drop_with_a_one_before_it(drop, frame, unit, chance):
    return drop + (100 if unit == "mm" else 10)


@kind
def a_frames_sides_swapped(job, frame, chance):
    needs(abs(number(frame["width"]) / number(frame["height"]) - 1) > 0.06)
    frame["width"], frame["height"] = frame["height"], frame["width"]


@kind
def the_walls_sides_swapped(job, frame, chance):
    job["wall"] |= {"width": job["wall"]["height"], "height": job["wall"]["width"]}


@kind
def rings_an_inch_apart(job, frame, chance):
    hanger, unit = rings(frame), unit_of(job)
    hanger["drop_left"] = written(number(hanger["drop_left"]) + INCH / MM[unit], unit)


@kind
def the_right_inset_from_the_left(job, frame, chance):
    needs(isinstance(frame.get("hanger"), dict) and "right" in frame["hanger"])
    right = written(number(frame["width"]) - number(frame["hanger"]["right"]), unit_of(job))
    frame["hanger"] |= {"right": right, "seen_from": "back"}


@kind
def seen_from_the_other_side(job, frame, chance):
    needs(len(job["frame"]) > 1)
    rings(frame)["seen_from"] = "front"


@kind
def a_feature_beyond_the_wall(job, frame, chance):
    box, unit = feature(job, chance), unit_of(job)
    box["left"] = written(number(job["wall"]["width"]) - number(box["width"]) / 2, unit)


@kind
def a_feature_of_no_height(job, frame, chance):
    feature(job, chance)["height"] = 0


@kind
def a_feature_from_the_other_end(job, frame, chance):
    box, unit = feature(job, chance), unit_of(job)
    left = number(job["wall"]["width"]) - number(box["left"]) - number(box["width"])
    needs(abs(left - number(box["left"])) * MM[unit] > 150)
    box["left"] = written(left, unit)


@kind
def the_first_stud_off_the_wall(job, frame, chance):
    needs(job["wall"].get("studs"))
    job["wall"]["studs"]["first"] = written(number(job["wall"]["width"]) + 200 / MM[unit_of(job)], unit_of(job))


@kind
def a_board_of_inches(job, frame, chance):
    needs("board" in job["wall"])
    job["wall"]["board"] = "12 in" if unit_of(job) == "in" else "12 cm"


@kind
def a_nail_of_18_mm(job, frame, chance):
    job.setdefault("fixing", {"kind": "nail"})["diameter"] = "18 mm"


@kind
def a_weight_of_nothing(job, frame, chance):
    frame["weight"] = "0 kg"


@kind
def a_weight_in_grams(job, frame, chance):
    needs("weight" in frame)
    frame["weight"] = frame["weight"].split()[0] + " g"


@kind
def fixings_3_mm_apart_in_masonry(job, frame, chance):
    needs("hanger" not in frame)
    frame["hanger"], job["wall"]["build"] = {"kind": "wire", "apart": "3 mm"}, "masonry"


@a_drop
def a_twins_drop_an_inch_off(drop, frame, unit, chance):
    needs("hanger" not in frame and frame["twin"])
    return drop + 1.1 * INCH / MM[unit]


def slipped(job: Tables, name: str, chance: random.Random) -> Tables:
    """The job with one slip of a kind."""
    job = copy.deepcopy(job)
    frame = chance.choice(job["frame"])
    same = [each for each in job["frame"] if (each["width"], each["height"]) == (frame["width"], frame["height"])]
    frame["twin"] = len(same) > 1
    KINDS[name](job, frame, chance)
    del frame["twin"]
    return job

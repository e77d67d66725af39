"""Job files with stairs or frames around a feature and one thing wrong, each with what the message must name."""

from __future__ import annotations

from tests.broken_jobs import FEATURE, Case, added, swapped

STEPS = 'stairs = { run = 250, rise = 180, up = "left", nosing = [3600, 180], steps = 5, clear = 700 }'
STEP = "run = 250, rise = 180"


def with_stairs(stairs: str = STEPS, more: str = "") -> str:
    """The small job file with a stair along its wall and its frame on it."""
    wall = swapped("height = 2600", f"height = 2600\n{stairs}")
    return f'{wall}\n[group]\narrangement = "stairs"\n{more}\n'


def around(more: str, features: str = FEATURE) -> str:
    """The small job file with its frame around a feature."""
    return added(f'{features}\n[group]\narrangement = "around"\n{more}')


def step(old: str, new: str) -> str:
    """The stair with one thing changed."""
    assert STEPS.count(old) == 1, old
    return with_stairs(STEPS.replace(old, new))


STAIRS: dict[str, Case] = {
    "stairs without a stair": (with_stairs(""), ("group, arrangement", "'stairs'", "under [wall]")),
    "a step without a run": (step("run = 250, ", ""), ("wall, stairs", "a step with no run")),
    "a step and a pitch": (step("run = 250", "pitch = 36"), ("wall, stairs", "both a step and a pitch")),
    "neither step nor pitch": (step(f"{STEP}, ", ""), ("wall, stairs", "neither")),
    "a run of nothing": (step("run = 250", "run = 0"), ("wall, stairs", "a step with no run")),
    "a rise like a wall": (step("rise = 180", "rise = 1800"), ("wall, stairs", "82.1 degrees")),  # atan 7.2 = 90 − 7.9
    "a pitch straight up": (step(STEP, "pitch = 90"), ("wall, stairs, pitch", "90.0 degrees")),
    "a pitch that is level": (step(STEP, "pitch = 0"), ("wall, stairs, pitch", "0.0 degrees")),
    "a pitch and a number of steps": (
        step(STEP, "pitch = 36"),
        ("wall, stairs, steps", "steps with a pitch", "run and rise"),
    ),
    "no steps at all": (step("steps = 5", "steps = 0"), ("wall, stairs, steps", "found 0")),
    "a stair to nowhere": (step('up = "left", ', ""), ("wall, stairs", "'up' is missing", "left, right")),
    "a height from the floor on stairs": (
        with_stairs(more="height = { centre = 1500 }"),
        ("group, height", "centre", "above_nosings"),
    ),
    "a way to align that is not of stairs": (with_stairs(more='align = "left"'), ("group, align", "top, centre")),
    "rows on stairs": (with_stairs(more='rows = [["A"]]'), ("group, rows", "'stairs'")),
    "a height from nosings without stairs": (
        added("[group]\nheight = { above_nosings = 1 }"),
        ("group, height", "above_nosings", "centre, top"),
    ),
}

AROUND: dict[str, Case] = {
    "around nothing": (around('left = ["A"]'), ("group", "'around' is missing")),
    "around nothing known": (
        around('around = "bnech"\nleft = ["A"]'),
        ("group, around", "'bnech'", "did you mean 'bench'?"),
    ),
    "around one of two": (
        around('around = "bench"\nabove = ["A"]', FEATURE.replace('name = "bench"\n', "") * 2).replace(
            'around = "bench"', 'around = "furniture"'
        ),
        ("group, around", "2 features"),
    ),
    "no frame around": (around('around = "bench"'), ("group, around", "frame A is missing")),
    "a frame twice around": (around('around = "bench"\nleft = ["A"]\nright = ["A"]'), ("group, around", "'A' twice")),
    "a height around a feature": (
        around('around = "bench"\nleft = ["A"]\nheight = { centre = 1500 }'),
        ("group, height", "'around'"),
    ),
    "another centre around a feature": (
        around('around = "bench"\nleft = ["A"]\ncentre_on = 900'),
        ("group, centre_on", "900"),
    ),
    "a side without a feature": (added('[group]\nabove = ["A"]'), ("group, above", "'row'")),
}

PLACES = STAIRS | AROUND

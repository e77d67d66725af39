"""Answers become the text of a job file, with a comment beside what the first of each kind means."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.toml import field
from templates_gen.cli.interview.question import Tables
from templates_gen.job.hangers import HANGERS
from templates_gen.job.tables.contents import table_of
from templates_gen.job.tables.field import fields_of

HEAD = """\
# A job for templates-gen, made by its command start.  Change what you like; # begins a comment.
# Lengths are written as people write them: "14 3/8", "1' 2 3/8\\"", "36.5 cm"; without a unit they are in the
# one below.  A line with # before a field is not filled in: remove the # and put in your value.
"""


def job_text(tables: Tables) -> str:
    """The job file of these tables: values as they were typed, comments for a person.

    Read again, it is the same tables.
    """
    lines, metric = [HEAD], tables["job"]["unit"] != "in"
    wall = {name: value for name, value in tables["wall"].items() if name != "feature"}
    for name, table in (("job", tables["job"]), ("wall", wall)):
        lines += [f"[{name}]", *_fields(name, table, metric), ""]
    for number, feature in enumerate(tables["wall"].get("feature", [])):
        lines += ["[[wall.feature]]", *_fields("feature", feature, metric, first=number == 0), ""]
    lines += ["[group]", *_fields("group", tables["group"], metric), ""]
    for number, frame in enumerate(tables["frame"]):
        lines += ["[[frame]]", *_fields("frame", frame, metric, first=number == 0), ""]
    for name in ("fixing", "paper"):
        lines += [f"[{name}]", *_fields(name, tables[name], metric), ""]
    return "\n".join(lines)


def _fields(kind: str, table: Tables, metric: bool, first: bool = True) -> Iterator[str]:
    """The lines of one table; of the first of its kind with comments and what it leaves open.

    A comment stands above its field: behind it, TOML editors would move it about.
    """
    for name, declared in fields_of(table_of(kind)).items():
        words = declared.words
        example = (words.metric if metric else "") or words.example
        if name in table:
            yield from _explained(field(name, table[name]), words.means if first else "")
        elif name == "drop":
            yield from _unmeasured(table, f"# drop = {example}", words.means if first else "")
        elif words.offered and first:
            yield from _explained([f"# {name} = {example}"], words.means)


def _unmeasured(frame: Tables, example: str, means: str) -> Iterator[str]:
    """What is still to be measured of a frame; within a table in a line there is no place for a remark."""
    hanger = frame["hanger"]
    wanted = () if isinstance(hanger, str) else HANGERS[hanger["kind"]].own_drops
    if not wanted:
        yield from _explained([example], "; ".join(filter(None, ["not measured yet", means])))
        return
    missing = [name for name in wanted if name not in hanger]
    if missing:
        yield f"# not measured yet: {' and '.join(missing)} of the hanger, down from the top edge, seen from behind"


def _explained(lines: list[str], means: str) -> list[str]:
    return [f"# {means}", *lines] if means else lines

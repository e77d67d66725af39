"""What the page asks to be done becomes changes of the job file's text."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.desk.arrange import arrange, moved_feature, moved_frame, placed_as
from templates_gen.desk.fields import check_alone, typed
from templates_gen.desk.folder import within
from templates_gen.desk.frames import added_frames, copied_frame, pasted_frames, removed_frame, renamed_frame, taken_in
from templates_gen.desk.messages import GoneError
from templates_gen.desk.new_features import new_feature
from templates_gen.desk.opened import Read, hash_of
from templates_gen.desk.places import feature_number, resolved
from templates_gen.job.changes import Change, Place, inside
from templates_gen.job.reading.framing import MIRRORED
from templates_gen.job.reading.other_words import two_sides

Doing = Callable[[Read, Mapping[str, Any]], Sequence[Change]]


def changes(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """The changes that one request of the page comes to.

    Raises InputError for what cannot be done, GoneError for what refers to something that is not there any more.
    """
    doing = DOINGS.get(str(data.get("do")))
    if doing is None:
        raise InputError("", f"found {data.get('do')!r}, which the desk cannot do", "load the page again")
    try:
        return doing(read, data)
    except (LookupError, TypeError, ValueError, AttributeError, ArithmeticError) as error:
        problem = f"the page asked for something incomplete ({type(error).__name__}: {error})"
        raise InputError("", problem, "load the page again") from None


def _set(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """One or more values at their places; what is typed empty is taken out."""
    made: list[Change] = []
    for one in data["sets"]:
        place = resolved(read, one["at"])
        value = typed(place, one.get("value"))
        if place == ("paper", "font") and value and not within(read.path.parent, str(value), "paper, font").is_file():
            raise InputError(
                "paper, font", f"found {value!r}, which is no file beside the job file", "copy it there first"
            )
        if place[0] == "frame" and place[-1] == "id":
            made += renamed_frame(read, place, value)
        elif place[0] == "wall" and place[-1] == "name" and place[1] == "feature":
            made += [Change(place, value), *_feature_renamed(read, place, value)]
        elif place[-1] == "width" and isinstance(value, str) and (sides := two_sides(value)):
            made += [Change(place, sides[0]), Change((*place[:-1], "height"), sides[1])]
        else:
            made.append(_within_table(read, place, value))
    return made


def _fits(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """No change: whether what was typed can be read, of a field that is saved together with others later."""
    place = resolved(read, data["at"])
    check_alone(place, typed(place, data.get("value")), read.job.unit)
    return []


def _within_table(read: Read, place: Place, value: Any) -> Change:
    """A field of a table that is written as a word alone, such as a hanger or a fixing, makes it a table."""
    *way, last = place
    owner = at(read, tuple(way))
    if isinstance(owner, str) and len(way) > 1:
        table = {"kind": owner} if last == "kind" or value is not None else None
        return Change(tuple(way), {**table, str(last): value} if table else owner)
    return Change(place, value)


def at(read: Read, place: Place) -> Any:
    """What the job file has at a place; None where it has nothing."""
    found: Any = read.raw
    for part in place:
        try:
            found = found[part]
        except (KeyError, IndexError, TypeError):
            return None
    return found


def _feature_renamed(read: Read, place: Place, value: Any) -> list[Change]:
    """Whatever is centred on the feature, above it or around it goes by its new name."""
    number = place[2]
    old = read.job.wall.features[int(number)].name
    group = read.raw.get("group", {})
    uses: list[tuple[Place, Any]] = [(("group", name), group.get(name)) for name in ("centre_on", "around")]
    uses += [(("group", *way), inside(group, way)) for way in (("height", "above"), ("centre_on", "over"))]
    return [Change(where, value) for where, used in uses if used == old and value]


def _add_feature(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """Something on the wall, of a usual size for its kind, where such a thing usually is."""
    table = new_feature(read, str(data["kind"]), data.get("values", {}))
    place = ("wall", "feature", len(read.raw.get("wall", {}).get("feature", [])))
    return [Change(place, {key: typed((*place, key), value) for key, value in table.items()})]


def _measure(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """What was measured on a frame from behind, put where the job file has it, which may see it from the front."""
    name, frame = str(data["name"]), resolved(read, ["frame", data["frame"]])
    table = at(read, frame)
    if name in ("drop", "weight", "width", "height"):
        return [Change((*frame, name), typed((*frame, name), data.get("value")))]
    own = table.get("hanger")
    shared = at(read, ("frame_type", table.get("type", ""), "hanger"))
    seen = next((one["seen_from"] for one in (own, shared) if isinstance(one, Mapping) and "seen_from" in one), None)
    field = MIRRORED[name] if seen == "front" and name in MIRRORED else name
    place = (*frame, "hanger", field)
    made = [_within_table(read, place, typed(place, data.get("value")))]
    if name in MIRRORED and seen is None:
        kept = made[0].value if isinstance(made[0].value, Mapping) else None
        told = Change((*frame, "hanger"), {**kept, "seen_from": "back"}) if kept else None
        made = [told] if told else [*made, Change((*frame, "hanger", "seen_from"), "back")]
    return made


def _put_right(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """What the job says of a frame from now on, after its nails were moved; measures are as seen from the front."""
    made: list[Change] = []
    for name, value in data.get("measures", {}).items():
        made += _measure(read, {"frame": data["frame"], "name": MIRRORED.get(name, name), "value": str(value)})
    if fixing := data.get("fixing"):
        place = (*resolved(read, ["frame", data["frame"]]), "fixing")
        made.append(Change(place, typed(place, fixing)))
    return made


def _remove(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """A frame, a feature, or any other value taken out."""
    if data["at"][0] == "frame" and len(data["at"]) == 2:
        return removed_frame(read, str(data["at"][1]))
    return [Change(resolved(read, data["at"]), None)]


def _confirm(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """What was asked about is right."""
    known = list(read.raw.get("job", {}).get("confirmed", []))
    new = [str(one) for one in data["confirm"] if one not in known]
    return [Change(("job", "confirmed"), [*known, *new])]


def _cure(read: Read, data: Mapping[str, Any]) -> Sequence[Change]:
    """The changes that a finding carries; the text they were made for has to be this one."""
    if data.get("text") != hash_of(read.text):
        raise GoneError
    return [Change(tuple(one["place"]), one["value"]) for one in data["changes"]]


DOINGS: Mapping[str, Doing] = {
    "set": _set,
    "fits": _fits,
    "add feature": _add_feature,
    "add frame": added_frames,
    "paste frames": pasted_frames,
    "copy frame": copied_frame,
    "take in frames": taken_in,
    "remove": _remove,
    "confirm": _confirm,
    "cure": _cure,
    "arrange": arrange,
    "measure": _measure,
    "put right": _put_right,
    "move frame": moved_frame,
    "move feature": lambda read, data: moved_feature(read, data, feature_number(read, data["feature"])),
    "place": placed_as,
}
"""What the page may ask for, by the word that it asks with."""

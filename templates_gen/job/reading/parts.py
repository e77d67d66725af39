"""What a frame is made of, from its tables: print, mat, moulding, glazing and backing."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.geometry import Size
from templates_gen.base.units import as_found
from templates_gen.job.frame_sizes import Mat, Moulding, contents_size, contents_within, outside_size, window_size
from templates_gen.job.reading.typed import read_length, read_table
from templates_gen.job.tables.frame import MatTable, MouldingTable, PartTable
from templates_gen.job.tables.quantities import Length
from templates_gen.job.weights import BACKINGS, GLAZINGS, USUAL, WOODS, Parts, Sheet

THICKEST = {"glass": 12.0, "acrylic": 12.0}
"""mm.  Thicker glazing is taken for a slip of the unit or the point.  Common practice, no source: 2 to 6 mm is used."""

THICKEST_BACKING = 30.0
"""mm, likewise."""


def build_parts(given: Mapping[str, Any], unit: str, where: str) -> Parts:
    """The parts of a frame; bare numbers are in `unit`.  Raises InputError for one that is incomplete or impossible."""
    return Parts(
        printed=_print(given["print"], unit, f"{where}, print"),
        mat=_mat(given["mat"], unit, f"{where}, mat"),
        moulding=_moulding(given["moulding"], f"{where}, moulding"),
        glazing=_sheet(given["glazing"], GLAZINGS, unit, f"{where}, glazing"),
        backing=_sheet(given["backing"], BACKINGS, unit, f"{where}, backing"),
    )


def worked_out(parts: Parts) -> Size | None:
    """The outside size that print, mat and moulding come to; None when it takes more to know it."""
    if parts.printed is None or parts.moulding is None:
        return None
    return outside_size(contents_size(parts.printed, parts.mat), parts.moulding)


def check_parts(parts: Parts, outside: Size, where: str) -> None:
    """Raises InputError when a frame with this outside is smaller than its print, or when the moulding or the mat
    leaves nothing to see of it."""
    _check_print(parts.printed, outside, where)
    moulding = parts.moulding
    if moulding is None:
        return
    if 2 * moulding.face >= min(outside):
        size = f"{outside[0]:g} × {outside[1]:g} mm"
        raise InputError(f"{where}, moulding, face", f"found {as_found(moulding.face)}, too wide for a frame of {size}")
    if parts.mat and min(window_size(contents_within(outside, moulding), parts.mat)) <= 0:
        raise InputError(f"{where}, mat", "leaves no window in a frame of this size")


def _check_print(printed: Size | None, outside: Size, where: str) -> None:
    if printed is None or all(frame >= inner for frame, inner in zip(outside, printed, strict=True)):
        return
    sizes = [f"{size[0]:g} × {size[1]:g} mm (width × height)" for size in (outside, printed)]
    turned = outside[0] >= printed[1] and outside[1] >= printed[0]
    hint = "one of them has width and height the other way round" if turned else "measure both again"
    raise InputError(where, f"the outside of {sizes[0]} is smaller than its print of {sizes[1]}", hint)


def _print(value: object, unit: str, where: str) -> Size | None:
    found = value
    if isinstance(value, str):  # a spreadsheet's cell
        value = re.split(r"\s*[x×]\s*", value.strip().lower())
    if value is None:
        return None
    if not isinstance(value, (list, tuple)) or len(value) != 2:
        raise InputError(where, f'found {found!r}, expected its width and height, such as ["8", "10"] or "8 x 10"')
    width, height = (float(side) if isinstance(side, float) else read_length(side, unit, where) for side in value)
    if not width or not height:
        raise InputError(where, "found 0, expected more than nothing")
    return width, height


def _mat(value: object, unit: str, where: str) -> Mat | None:
    if value is None:
        return None
    table = read_table(value if isinstance(value, Mapping) else {"width": value}, MatTable, unit, where)
    sides = [table.width if side is None else side for side in (table.top, table.right, table.bottom, table.left)]
    if None in sides:
        raise InputError(where, "expected 'width', or all of 'top', 'right', 'bottom' and 'left'")
    top, right, bottom, left = (float(side or 0) for side in sides)
    mat = Mat(sides=(top, right, bottom, left))
    return mat if table.overlap is None else Mat(sides=mat.sides, overlap=table.overlap)


def _moulding(table: MouldingTable | None, where: str) -> Moulding | None:
    if table is None:
        return None
    if not table.face:
        problem = "expected 'face': how wide the moulding is, seen from the front"
        raise InputError(where, problem, 'such as  face = "1 1/4"')
    wood = {"wood": _known(table.wood, [*WOODS, "mdf"], f"{where}, wood")} if table.wood else {}
    moulding = Moulding(**table.given | wood)
    if not moulding.rabbet < moulding.face:
        expected = f"less than the face of {as_found(moulding.face)}"
        raise InputError(f"{where}, rabbet", f"found {as_found(moulding.rabbet)}, expected {expected}")
    if not moulding.allowance < 2 * moulding.rabbet:
        found = f"found {as_found(moulding.allowance)}"
        raise InputError(f"{where}, allowance", f"{found}: the contents would fall through")
    if moulding.depth is not None and not (moulding.rabbet_depth or 0.0) < moulding.depth:
        raise InputError(f"{where}, rabbet_depth", "found a rabbet as deep as the moulding, expected less")
    return moulding


def _sheet(value: str | PartTable | None, kinds: Mapping[str, float], unit: str, where: str) -> Sheet | None:
    if value is None:
        return None
    if isinstance(value, PartTable):
        name, thickness = value.kind, value.thickness
    else:
        words = re.match(r"[a-z]+(?:\s+[a-z]+)*", value.strip(), re.IGNORECASE)
        name = words[0] if words else value
        rest = value.strip()[len(name) :].strip(" ,:")
        thickness = Length(read_length(rest, unit, where)) if rest else None
    name = _known(name, ["none", *kinds], where)
    if name == "none":
        return Sheet("none", 0.0)
    thick = USUAL[name] if thickness is None else float(thickness)
    if not 0 < thick <= THICKEST.get(name, THICKEST_BACKING):
        usual = f"{USUAL[name]:g} mm"
        raise InputError(where, f"found {as_found(thick)}, expected a thickness with its unit, such as {usual}")
    return Sheet(name, thick)


def _known(name: str, known: list[str], where: str) -> str:
    plain = " ".join(name.lower().split())
    if plain not in known:
        raise InputError(where, f"found {name!r}, expected one of {', '.join(known)}", did_you_mean(plain, known))
    return plain

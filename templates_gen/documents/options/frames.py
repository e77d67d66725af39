"""The frames of an option as they will hang, small: with their pictures, or with their names."""

from __future__ import annotations

import string
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain, count, product

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.record import Record
from templates_gen.documents.proof.frames import frame_items, picture_items, window
from templates_gen.documents.proof.view import View
from templates_gen.drawing.blocks import named_in
from templates_gen.drawing.items import Item, Pixels, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H18, H25, H35, HAIR, MEDIUM

AIR = 0.7
"""mm of a frame that its name leaves free.  Our own design, no source."""

NAMES = ((H5, True), (H35, True), (H25, True), (H18, True), (H18, False))
"""Heights of a frame's name, and whether it is bold, the best first.  Our own design, no source."""

LARGE = 20
"""The scale, 1 to this, down to which frames have a wider line.  Our own design, no source."""


class Shown(Record, frozen=True):
    """What is in the frames, by their ids: pictures, and of those without one the name or the sign that stands for it;
    and the key to these signs."""

    pictures: Mapping[str, Pixels]
    names: Mapping[str, str]

    @property
    def key(self) -> str:
        """What every sign stands for, in one line; "" where every name is in its frame."""
        return " · ".join(f"{sign}: {name}" for name, sign in self.names.items() if sign != name)


def shown_in(plans: Sequence[tuple[Plan, View]], pictures: Mapping[str, Pixels], lettering: Lettering) -> Shown:
    """What is in the frames of all these options: a name is whole, or there is a sign for it in every option."""
    blank = [hung.frame.id for hung in plans[0][0].frames if hung.frame.id not in pictures]
    whole = {hung.frame.id: True for hung in plans[0][0].frames}
    for plan, view in plans:
        for hung in plan.frames:
            name = _named(hung, hung.frame.id, view, lettering)
            whole[hung.frame.id] &= name is not None and name.text == hung.frame.id
    signs = _signs(whole)
    return Shown(pictures, {name: name if whole[name] else next(signs) for name in blank})


def _signs(taken: Iterable[str]) -> Iterator[str]:
    """Short signs that no frame's name begins with: a, b, … then aa, ab, … then numbers."""
    ids = [name.casefold() for name in taken]
    letters = string.ascii_lowercase
    pairs = (one + two for one, two in product(letters, letters))
    numbers = map(str, count(1))
    every = chain(letters, pairs, numbers)
    return (sign for sign in every if not any(name.startswith(sign) for name in ids))


def small_frame(hung: Hung, view: View, shown: Shown, lettering: Lettering) -> Iterator[Item]:
    """A frame with its picture, or with its name or sign."""
    pixels = shown.pictures.get(hung.frame.id)
    yield from frame_items(hung, view, MEDIUM if view.scale <= LARGE else HAIR)
    yield from picture_items(hung, view, pixels)
    if pixels is None and (name := _named(hung, shown.names[hung.frame.id], view, lettering)):
        yield name


def _named(hung: Hung, name: str, view: View, lettering: Lettering) -> Text | None:
    return named_in(view.rect(window(hung)).grown(-AIR / 2), name, NAMES, lettering)

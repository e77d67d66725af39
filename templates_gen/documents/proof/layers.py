"""Plan, view and pictures become a finished proof: one page in layers, each a form of its own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.of_job import of_job
from templates_gen.documents.proof.dimensions import both_lines, chains, dimension_items, extension_lines
from templates_gen.documents.proof.features import names, outline, stair_items
from templates_gen.documents.proof.figure import WORDS, figure
from templates_gen.documents.proof.frames import frame_items, labels, picture_items
from templates_gen.documents.proof.pitch import pitch_height, pitch_on_page
from templates_gen.documents.proof.titles import band_items, band_of
from templates_gen.documents.proof.view import View, proof_view, wall_items
from templates_gen.documents.proof.zones import clear_of, legend, nail_items, zone_items
from templates_gen.drawing.items import POINT, Form, Item, Line, Page, Pixels, Template, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H18
from templates_gen.tiling.long_lines import pieces

FLOOR = 4.0
"""mm that the floor line goes on beyond the wall.  Our own design, no source."""

AIR = 0.3
"""mm kept free around lettering, which is small here.  Our own design, no source."""

OFF_LINE, NEAR = 0.6, 4.0
"""mm that lettering keeps from lines, and that the words of the figure are away from it at most.  Our own design, no
source."""


TITLE = "title"
"""The layer with all that is not the wall and its dimensions."""

PIECE = 2.0
"""mm of a slanting line that lettering keeps off at a time.  Our own design, no source."""


class Asked(Record, frozen=True):
    """What the proof shows besides the wall: a line to sign on, and nails with the zones where cables may run."""

    sign: bool = False
    zones: bool = False


def view_of(plan: Plan, asked: Asked, lettering: Lettering) -> View:
    """The view that leaves room for the band with all that is asked for.  Raises InputError for too small a paper."""
    notes = legend(plan) if asked.zones else ()
    return proof_view(plan, lambda width: band_of(plan, asked.sign, notes, width, lettering))


def draw_proof(plan: Plan, view: View, pictures: Mapping[str, Pixels], asked: Asked, lettering: Lettering) -> Template:
    """The proof, with the pictures of the frames that have one, by frame id.

    A template of one page; every layer is a form, from the back to the front.  Raises InputError for a character that
    no font has.
    """
    box = Rect(0.0, 0.0, view.page.width * POINT, view.page.height * POINT)
    layers = _layers(plan, view, pictures, asked, lettering)
    forms = tuple(Form(name, box, items) for name, items in layers.items() if items)
    job = plan.job
    page = Page(label="proof", title=job.title, page_items=tuple(Use(form.name, 0.0, 0.0) for form in forms))
    return of_job(job, "proof", view.page, [page], forms)


def _layers(
    plan: Plan, view: View, pictures: Mapping[str, Pixels], asked: Asked, lettering: Lettering
) -> dict[str, tuple[Item, ...]]:
    """The items of every layer, the rearmost first.  Lettering is placed where it is least free first."""
    height_of_pitch = pitch_height(plan, view)
    rows = [*chains(plan, view), *([height_of_pitch] if height_of_pitch else [])]
    pitch = pitch_on_page(plan, view, height_of_pitch)
    lines = (*(line for row in rows for line in extension_lines(row, view)), *both_lines(plan, view))
    room = Room(view.page.printable, AIR)
    room.lines += [_about(line) for line in lines]
    room.lines += [box.grown(OFF_LINE) for line in pitch for box in pieces((line.x0, line.y0, line.x1, line.y1), PIECE)]
    person, figure_items = figure(plan, view)
    told = tuple(labels(plan.frames, view, pictures, room, lettering))
    dimensions = [item for row in rows for item in dimension_items(row, plan, view, room, lettering)]
    room.take(person)
    within = Room(view.rect(plan.job.wall.rect), AIR)  # what names things on the wall stays on it
    within.taken, within.lines = room.taken, room.lines
    height = _figure_label(plan, person, within, lettering)
    features = [(feature, view.rect(feature.rect)) for feature in plan.job.wall.features]
    named = tuple(names(features, within, lettering))
    lettered = [item for item in (*height, *told, *named) if isinstance(item, Text)]
    hatching = tuple(zone_items(plan, view)) if asked.zones else ()
    furniture = [(feature, rect) for feature, rect in features if feature.kind == "furniture"]
    others = [(feature, rect) for feature, rect in features if feature.kind != "furniture"]
    return {
        "lines": (*lines, *pitch),
        "wall": tuple(wall_items(plan.job.wall, view, FLOOR)),
        "stairs": tuple(stair_items(plan.job.wall, view)),
        "features": _all(outline(*item) for item in others),
        "furniture": _all(outline(*item) for item in furniture),
        "figure": tuple(figure_items),
        "frames": _all(frame_items(hung, view) for hung in plan.frames),
        "pictures": _all(picture_items(hung, view, pictures.get(hung.frame.id)) for hung in plan.frames),
        "zones": (*hatching, *clear_of(hatching, lettered, lettering)),
        "nails": tuple(nail_items(plan, view)) if asked.zones else (),
        "names": tuple(lettered),
        "dimensions": tuple(dimensions),
        TITLE: tuple(band_items(plan, view, lettering)),
    }


def _all(parts: Iterable[Iterable[Item]]) -> tuple[Item, ...]:
    return tuple(item for part in parts for item in part)


def _about(line: Line) -> Rect:
    (x0, x1), (y0, y1) = sorted((line.x0, line.x1)), sorted((line.y0, line.y1))
    return Rect(x0, y0, x1, y1).grown(OFF_LINE)


def _figure_label(plan: Plan, person: Rect, room: Room, lettering: Lettering) -> tuple[Text, ...]:
    """How tall the figure is, beside its head."""
    words = Text(0.0, 0.0, WORDS[plan.job.unit], H18)
    about = person.grown(lettering.box(words).width + NEAR)
    found = placed_near(words, person.cx, person.y1, about, room, lettering)
    return (found,) if found else ()

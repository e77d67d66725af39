"""Where the pictures of a proof are: whole, in the middle of what moulding and mat leave to see."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.proof.frames import window
from templates_gen.documents.proof.layers import Asked, draw_proof, view_of
from templates_gen.documents.proof.making import make_proof
from templates_gen.drawing.items import Picture, Pixels
from templates_gen.drawing.lettering import Lettering
from tests.jobs import frame, job
from tests.quarters import QUARTERS, alike, colours, quarters, saved


def picture_of(pixels: Pixels, **more: object) -> tuple[Picture, tuple[float, float, float, float]]:
    """The picture as it is drawn, and the frame's window on the page (mm)."""
    plan, lettering = plan_wall(job(frame("A", 400.0, 500.0, **more))), Lettering()
    view = view_of(plan, Asked(), lettering)
    template = draw_proof(plan, view, {"A": pixels}, Asked(), lettering)
    items = next(form.items for form in template.forms if form.name == "pictures")
    (item,) = (item for item in items if isinstance(item, Picture))
    place = view.rect(window(plan.frames[0]))
    return item, (place.x0, place.y0, place.x1, place.y1)


@pytest.mark.parametrize(("width", "height"), [(400, 300), (300, 400), (400, 500), (1000, 10)])
def test_a_picture_is_fitted_whole_into_the_middle_of_the_opening(width: int, height: int) -> None:
    item, (x0, y0, x1, y1) = picture_of(Pixels(b"", width, height, False), face=20.0, mat=(50.0, 50.0, 60.0, 50.0))
    box = item.box
    assert box.width / box.height == pytest.approx(width / height)
    assert (box.cx, box.cy) == pytest.approx(((x0 + x1) / 2, (y0 + y1) / 2))
    # one side of it fills the opening; worked out by hand here: 400 - 2 * 20 - 2 * 50 by 500 - 40 - 110, at 1:20
    assert (x1 - x0, y1 - y0) == pytest.approx((260 / 20, 350 / 20))
    touching = [box.width == pytest.approx(x1 - x0), box.height == pytest.approx(y1 - y0)]
    assert any(touching) and box.width <= x1 - x0 + 1e-9 and box.height <= y1 - y0 + 1e-9


def test_a_mat_that_leaves_nothing_and_a_frame_of_a_millimetre_are_drawn() -> None:
    item, (x0, y0, x1, y1) = picture_of(Pixels(b"", 4, 5, False), mat=(300.0, 300.0, 300.0, 300.0))
    assert x1 > x0 and y1 > y0 and item.box.width > 0
    assert make_proof(job(frame("A", 1.0, 1.0), frame("B", 1.0, 900.0))).content


def test_the_picture_shows_in_the_png_where_it_is(tmp_path: Path) -> None:
    path = saved(tmp_path, "a.png", quarters(300, 400))
    content = make_proof(job(frame("A", 400.0, 500.0, image=str(path))), "png", dots=200).content
    plan, lettering = plan_wall(job(frame("A", 400.0, 500.0))), Lettering()
    view = view_of(plan, Asked(), lettering)
    place, page = view.rect(window(plan.frames[0])), Image.open(io.BytesIO(content))
    assert page.info["dpi"] == pytest.approx((200, 200), abs=0.01)
    size = 200 / 25.4
    part = page.crop((round(place.x0 * size), round(page.height - place.y1 * size),
                      round(place.x1 * size), round(page.height - place.y0 * size)))  # fmt: skip
    assert alike(colours(part), QUARTERS)

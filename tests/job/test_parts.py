"""What a frame is made of, as the job file says it: every way of writing it, and the frame that comes of it."""

import pytest

from templates_gen.base.errors import InputError
from templates_gen.job.model import Frame
from templates_gen.job.reading.building import read_job
from tests.running import MINIMAL

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)
PLAIN = "width = 300\nheight = 200\n"


@pytest.fixture
def read(tmp_path):
    """The frame of a job with these fields instead of its width and height."""

    def from_fields(fields: str, unit: str = "mm") -> Frame:
        path = tmp_path / "job.toml"
        text = MINIMAL.replace(PLAIN, fields + "\n").replace('unit = "mm"', f'unit = "{unit}"')
        assert fields in text
        path.write_text(text, encoding="utf-8")
        return read_job(path).frames[0]

    return from_fields


STICK = 'moulding = { face = "1 1/4", rabbet = "1/4", allowance = "1/8", wood = "ash", depth = "3/4" }\n'


def test_the_outside_is_worked_out_from_print_and_moulding(read):
    # 16 x 20 in gives 18 1/8 x 22 1/8 (common practice of framers): worked out by hand here
    frame = read(f'print = ["16", 20]\n{STICK}', "in")
    assert (frame.width / INCH, frame.height / INCH) == pytest.approx((18.125, 22.125))
    assert frame.worked_out == (frame.width, frame.height)


@pytest.mark.parametrize(
    "mat",
    ["2", '"2"', "{ width = 2 }", "{ top = 2, right = 2, bottom = 2, left = 2 }", '{ width = "2", overlap = "1/4" }'],
)
def test_one_number_or_four_sides_are_a_mat(read, mat):
    # 16 - 1/2 + 4 + 2 1/8 = 21 5/8, 20 - 1/2 + 4 + 2 1/8 = 25 5/8: worked out by hand here
    frame = read(f"print = [16, 20]\nmat = {mat}\n{STICK}", "in")
    assert (frame.width / INCH, frame.height / INCH) == pytest.approx((21.625, 25.625))


def test_a_mat_may_be_deeper_at_its_foot_and_cover_less(read):
    # 16 - 1/4 + 4 + 2 1/8 = 21 7/8, 20 - 1/4 + 2 + 3 + 2 1/8 = 26 7/8: worked out by hand here
    frame = read(f'print = [16, 20]\nmat = {{ width = 2, bottom = 3, overlap = "1/8" }}\n{STICK}', "in")
    assert (frame.width / INCH, frame.height / INCH) == pytest.approx((21.875, 26.875))


def test_a_given_side_wins_over_the_one_worked_out(read):
    frame = read(f"width = 18\nprint = [16, 20]\n{STICK}", "in")
    assert (frame.width / INCH, frame.height / INCH) == pytest.approx((18.0, 22.125))
    assert frame.worked_out[0] / INCH == pytest.approx(18.125)


def test_rabbet_and_allowance_have_their_usual_sizes(read):
    # 1/4 and 1/8 in: common practice of framers
    usual = read('print = [16, 20]\nmoulding = { face = "1 1/4" }', "in")
    assert usual.width / INCH == pytest.approx(18.125)
    assert (usual.weight, usual.weight_is, usual.lacking) == (None, "unknown", ())


@pytest.mark.parametrize("written", ["glass 2 mm", "Glass  2mm", "glass, 2 mm", "glass"])
def test_glazing_in_words(read, written):
    words = read(f'print = [16, 20]\nglazing = "{written}"\nbacking = "none"\n{STICK}', "in")
    table = read(
        f'print = [16, 20]\nglazing = {{ kind = "glass", thickness = "2 mm" }}\nbacking = "none"\n{STICK}', "in"
    )
    assert words.weight == pytest.approx(table.weight)
    assert (words.glazing, words.weight_is) == ("glass", "estimated")


def test_a_thickness_is_read_in_inches_too(read):
    one, two = (
        read(f'print = [16, 20]\nglazing = "{glass}"\nbacking = "none"\n{STICK}', "in").weight
        for glass in ("glass 1/8", "glass 3.175 mm")
    )
    assert one == pytest.approx(two)


def test_a_weight_that_was_weighed_wins_over_any_estimate(read):
    frame = read(f'print = [16, 20]\nweight = "5 lb"\nglazing = "glass"\nbacking = "none"\n{STICK}', "in")
    assert frame.weight == pytest.approx(5 * 0.45359237)  # kg exactly (international yard and pound agreement, 1959)
    assert (frame.weight_is, frame.lacking) == ("given", ())


def test_a_known_outside_is_enough_for_an_estimate(read):
    built = read(f'print = [16, 20]\nglazing = "glass"\nbacking = "foam board"\n{STICK}', "in")
    known = read(f'width = "18 1/8"\nheight = "22 1/8"\nglazing = "glass"\nbacking = "foam board"\n{STICK}', "in")
    assert built.weight == pytest.approx(known.weight)
    assert known.worked_out is None


def test_what_an_estimate_still_needs_is_named(read):
    frame = read('width = 300\nheight = 200\nglazing = "acrylic 2 mm"')
    assert (frame.weight_is, frame.glazing) == ("unknown", "acrylic")
    assert frame.lacking == ("backing", "moulding.face", "moulding.wood", "moulding.depth")


def test_a_spreadsheet_gives_a_print_in_one_cell_and_the_rest_by_columns(tmp_path):
    (tmp_path / "frames.csv").write_text(
        "id,print,mat,moulding.face,moulding.wood,moulding.depth,glazing,backing\n"
        'A,16 x 20,2,1 1/4,ash,3/4,glass 2 mm,none\nB,"16×20 in",,1 1/4,,,,\n'
    )
    (tmp_path / "job.toml").write_text('[job]\nframes = "frames.csv"\nunit = "in"\n[wall]\nwidth = 99\nheight = 96\n')
    one, two = read_job(tmp_path / "job.toml").frames
    assert (one.width / INCH, two.width / INCH) == pytest.approx((21.625, 18.125))
    assert (one.weight_is, two.weight_is) == ("estimated", "unknown")


SOME = "print = [300, 200]\n"
WRONG = {
    "no outside and no moulding": (SOME, ("'width' is missing", "'moulding'")),
    "a print of one number": ("print = [300]\nmoulding = { face = 30 }", ("print", "found")),
    "a print of nothing": ("print = [300, 0]\nmoulding = { face = 30 }", ("print", "found 0")),
    "a print that is no size": ('print = "large"\nmoulding = { face = 30 }', ("print", "'large'", "8 x 10")),
    "a moulding without a face": (SOME + "moulding = { rabbet = 6 }", ("moulding", "'face'")),
    "a rabbet as wide as the face": (SOME + "moulding = { face = 6, rabbet = 6 }", ("moulding, rabbet", "6 mm")),
    "an allowance wider than the lips": (
        SOME + "moulding = { face = 30, rabbet = 2, allowance = 4 }", ("moulding, allowance", "fall through"),
    ),
    "a rabbet as deep as the moulding": (
        SOME + "moulding = { face = 30, depth = 20, rabbet_depth = 20 }", ("moulding, rabbet_depth",),
    ),
    "a face wider than half the frame": (PLAIN + "moulding = { face = 100 }", ("moulding, face", "300 × 200 mm")),
    "an unknown wood": (
        PLAIN + 'moulding = { face = 30, wood = "walnutt" }', ("moulding, wood", "did you mean 'walnut'?"),
    ),
    "a mat with a side missing": (SOME + "mat = { top = 50 }\nmoulding = { face = 30 }", ("mat", "'width'", "'left'")),
    "a mat that leaves no window": (PLAIN + "mat = 90\nmoulding = { face = 30 }", ("mat", "no window")),
    "a mat that is no length": (PLAIN + 'mat = "wide"', ("mat, width", "'wide'")),
    "an unknown glazing": (PLAIN + 'glazing = "glas 2 mm"', ("glazing", "'glas'", "did you mean 'glass'?")),
    "glazing in no words": (PLAIN + 'glazing = "2 mm"', ("glazing", "'2 mm'", "one of none, glass, acrylic")),
    "glazing of a thickness that is none": (PLAIN + 'glazing = "glass thick"', ("glazing", "'glass thick'")),
    "glass as thick as a brick": (PLAIN + 'glazing = "glass 80"', ("glazing", "80 mm", "with its unit")),
    "an unknown backing": (PLAIN + 'backing = "cork"', ("backing", "'cork'", "foam board")),
    "a rating of nothing": (PLAIN + 'fixing = { rating = "0 kg" }', ("fixing, rating", "found 0")),
}  # fmt: skip


@pytest.mark.parametrize("name", WRONG)
def test_what_cannot_be_is_refused_where_it_stands(read, name):
    fields, words = WRONG[name]
    with pytest.raises(InputError) as caught:
        read(fields)
    assert [word for word in ("frame 1 (A)", *words) if word not in str(caught.value)] == []


STUDS_WRONG = {
    "{ first = 300, spacing = 0 }": ("wall, studs", "expected room between"),
    "{ first = 300, spacing = 400, width = 400 }": ("wall, studs", "400 mm (15 3/4 in) wide"),
    "{ first = 300, second = 900, spacing = 0 }": ("wall, studs, second", "spacings of 0 mm"),
    "{ first = 300, second = 900, spacing = 400 }": ("wall, studs, second", "600 mm", "whole number"),
    "{ first = 300, second = 300, spacing = 400 }": ("wall, studs, second", "0 mm"),
    "{ first = 300, second = 300 }": ("wall, studs", "every 0 mm"),
}


@pytest.mark.parametrize("line", STUDS_WRONG)
def test_studs_that_cannot_be_are_refused(tmp_path, line):
    path = tmp_path / "job.toml"
    path.write_text(MINIMAL.replace("height = 2600", f"height = 2600\nstuds = {line}"), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        read_job(path)
    assert [word for word in STUDS_WRONG[line] if word not in str(caught.value)] == []

"""The inner parts of libraries that are used: each is there, and each such library is held below a version.

They are no part of what their makers promise, so a newer version may lack them.  Where one fails, look at what changed
before the upper bound in pyproject.toml is raised.
"""

import ast
import io
import re
import tomllib
import zlib
from importlib.util import find_spec
from pathlib import Path

import pypdf
import pypdfium2.raw
from bidi import algorithm
from reportlab.pdfbase.ttfonts import TTFontFace

from templates_gen.drawing.pdf.direction import levels
from templates_gen.drawing.pdf.engine import Font
from tests.importing import FILES, tree
from tests.lowest import ROOT

FACE = (
    "charToGlyph", "glyphPos", "hmetrics", "unitsPerEm", "capHeight", "name", "flags", "bbox", "italicAngle", "ascent",
    "descent", "stemV", "makeSubset", "get_table_pos",
)  # fmt: skip
RULES = (
    "get_empty_storage", "get_base_level", "get_embedding_levels", "explicit_embed_and_overrides",
    "resolve_weak_types", "resolve_neutral_types", "resolve_implicit_levels",
)  # fmt: skip
HELD = {"reportlab": "<6", "pypdf": "<8", "python-bidi": "<0.7", "pypdfium2": "<6"}
BASE = next(Path(str(find_spec("fontpkg_pt_sans").origin)).parent.rglob("PT_Sans-Web-Regular.ttf"))
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def test_each_library_is_held_below_the_next_version_that_may_change_it():
    held = dict(re.findall(r"^([a-z0-9-]+)>=[0-9.]+,(<[0-9.]+)$", "\n".join(PROJECT["dependencies"]), re.MULTILINE))
    assert held == HELD


def test_the_font_reader_has_what_is_used_of_it():
    face = TTFontFace(str(BASE))
    assert [name for name in FACE if not hasattr(face, name)] == []
    # a glyph gets a code of its own past the last character, and the subset has it as its first after .notdef
    font = Font(BASE)
    part = font.subset([font.glyph("H")])
    assert 300 < len(part) < len(BASE.read_bytes()) / 10
    assert font.glyph("A") and font.glyph("H"), "the reader's own table is as it was"


def test_the_rules_of_direction_go_one_by_one():
    assert [name for name in RULES if not callable(getattr(algorithm, name, None))] == []
    # 7 א ב, then a number in it: the embedding levels by hand (UAX #9, rules W, N, I)
    assert levels("a אב 12 ג") == [0, 0, 1, 1, 1, 2, 2, 1, 1]


def test_pdfium_draws_with_a_matrix():
    assert callable(pypdfium2.raw.FPDF_RenderPageBitmapWithMatrix)


def private(module: str) -> set[str]:
    """The private names that a file takes from anything but its own objects, by a dot or by getattr."""
    nodes = list(ast.walk(tree(module)))
    dotted = [node for node in nodes if isinstance(node, ast.Attribute) and node.attr.startswith("_")]
    asked = [node for node in nodes if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "getattr"]
    names = {node.attr for node in dotted if getattr(node.value, "id", "") not in ("self", "cls")}
    names |= {word.value for node in asked for word in node.args[1:2] if isinstance(word, ast.Constant)}
    own = {getattr(node, "name", "") for node in nodes}
    own |= {node.attr for node in dotted if getattr(node.value, "id", "") == "self"}
    own |= {getattr(node.target, "id", "") for node in nodes if isinstance(node, ast.AnnAssign)}
    return {name for name in names - own if name.startswith("_") and not name.endswith("__")}


def test_nothing_private_of_a_library_is_used():
    """All but one is public in spite of its underscore: `os._exit`, and `_replace` of a named tuple."""
    used = {module: names for module in FILES if (names := private(module) - {"_exit", "_replace"})}
    assert used == {"drawing.pdf.attached": {"_data"}}


def test_a_stream_of_a_pdf_is_there_as_it_is_packed():
    packed = zlib.compress(b"ferns" * 99)
    head = b"<< /Length %d /Filter /FlateDecode >>" % len(packed)
    text = b"%PDF-1.7\n1 0 obj\n" + head + b"\nstream\n" + packed + b"\nendstream\nendobj\n"
    text += b"xref\n0 2\n0000000000 65535 f \n0000000009 00000 n \ntrailer\n<< /Size 2 /Root 1 0 R >>\n"
    text += b"startxref\n%d\n%%%%EOF\n" % text.index(b"xref")
    stream = pypdf.PdfReader(io.BytesIO(text)).get_object(1)
    assert bytes(stream._data) == packed and stream.get_data() == b"ferns" * 99

"""The tables of a frame as they are written, and of what it is made of."""

from typing import Annotated, Any

from templates_gen.base.record import Table
from templates_gen.job.hangers import KindName
from templates_gen.job.tables.field import Words
from templates_gen.job.tables.hanger import FixingKind, FixingTable, HangerTable
from templates_gen.job.tables.quantities import Length, Mass


class MouldingTable(Table):
    """The stick that a frame is made of, in section."""

    face: Annotated[Length | None, Words("how wide it is, seen from the front", '"1 1/4 in"', must=True)] = None
    rabbet: Annotated[
        Length | None, Words("how far its lip covers the contents", '"1/4 in"', usual="1/4 in (6.35 mm)")
    ] = None
    allowance: Annotated[
        Length | None, Words("how much play the contents have, in all", '"1/8 in"', usual="1/8 in (3.175 mm)")
    ] = None
    wood: Annotated[str | None, Words("what it is of: ash, basswood, oak, pine, walnut, … or mdf", '"oak"')] = None
    depth: Annotated[
        Length | None, Words("how deep it is, from front to back", '"1 in"', usual="the frame's depth")
    ] = None
    rabbet_depth: Annotated[Length | None, Words(
        "how deep the step is that the contents lie in", '"1/2 in"', usual="worked out from the contents",
    )] = None  # fmt: skip


class MatTable(Table):
    """The board round a print."""

    width: Annotated[Length | None, Words("how wide the mat is on every side that is not given", '"2 1/2 in"')] = None
    top: Annotated[Length | None, Words("how wide it is at the top", '"2 1/2 in"', usual="width")] = None
    right: Annotated[Length | None, Words("at the right", '"2 1/2 in"', usual="width")] = None
    bottom: Annotated[Length | None, Words("at the bottom", '"3 in"', usual="width")] = None
    left: Annotated[Length | None, Words("at the left", '"2 1/2 in"', usual="width")] = None
    overlap: Annotated[
        Length | None, Words("how far it covers each edge of the print", '"1/4 in"', usual="1/4 in (6.35 mm)")
    ] = None


class PartTable(Table):
    """A flat part that fills the frame."""

    kind: Annotated[str, Words(
        "what it is of", '"glass"',
        more="Glazing is glass, acrylic or none; a backing foam board, mat board, hardboard, mdf or none.",
    )]  # fmt: skip
    thickness: Annotated[Length | None, Words(
        "how thick it is", '"2 mm"',
        usual="glass and acrylic 2 mm, foam board 5 mm, mat board 1.4 mm, hardboard and mdf 3 mm",
    )] = None  # fmt: skip


class FrameTable(Table):
    """A frame, or what the frames of one type share."""

    id: Annotated[str | None, Words(
        "a short name, for paper and wall", '"A"', ask="Frame {number}: what is its short name?", must=True,
        more="Each frame needs one of its own.",
    )] = None  # fmt: skip
    type: Annotated[str | None, Words(
        "the [frame_type.…] table that says what it shares with others", '"tall"',
    )] = None  # fmt: skip
    title: Annotated[str | None, Words("its title", '"Royal fern"', ask="What is its title?", offered=True)] = None
    width: Annotated[Length | None, Words(
        "outside width of the frame", '"11 1/4 in"', ask="How wide is frame {id}, outside?",
        usual="worked out from print, mat and moulding",
        more="A width that is given always wins; more than 3 mm apart from what the parts make is a warn.",
    )] = None  # fmt: skip
    height: Annotated[Length | None, Words(
        "outside height of the frame", '"14 1/4 in"', ask="How high is frame {id}, outside?",
        usual="worked out likewise",
    )] = None  # fmt: skip
    depth: Annotated[Length | None, Words("how far it stands out, from front to back", '"1 1/4 in"')] = None
    weight: Annotated[Mass | None, Words(
        "as weighed, with its unit; the fixings are checked against it", '"4.2 lb"', ask="What does frame {id} weigh?",
        offered=True, metric='"1.9 kg"', usual="estimated from glazing, backing, mat and moulding, if all are given",
        more="From 20 lb (9.1 kg), or with a side over 1.2 m, two people lift a frame: the findings, the hanging "
        "guide and its list of tools say so. What a bare nail holds of it is not known, and a warn.",
    )] = None  # fmt: skip
    hanger: Annotated[KindName | HangerTable | None, Words(
        "what is on its back", '"wire"', ask="What hanger is on its back?", usual="wire",
        more="Its measures stand in a table: see hanger.",
    )] = None  # fmt: skip
    drop: Annotated[Length | None, Words(
        "from the top edge down to where it bears, a wire pulled taut; each frame has its own", '"3 1/8 in"',
        ask="How far below its top edge is the hanging point?", offered=True, metric='"7.9 cm"',
        usual="it counts as not measured yet, and its sheet has a drop scale to mark by hand",
    )] = None  # fmt: skip
    fixing: Annotated[FixingKind | FixingTable | None, Words(
        "what goes into the wall for this frame", '{ kind = "hook", below = "7/8 in" }', usual="[fixing]",
    )] = None  # fmt: skip
    image: Annotated[str | None, Words(
        "its picture, for the proof: a file beside the job file", '"images/fern-a.png"',
        ask="Which file is the picture of frame {id}?",
        more="JPEG, PNG, TIFF, WebP, GIF or BMP. It is shown whole inside moulding and mat, if they are given; a "
        "missing file gives a blank and a note.",
    )] = None  # fmt: skip
    print: Annotated[tuple[Length, Length] | str | None, Words(
        "width and height of the print", '["8 in", "10 in"]', more='A spreadsheet writes "8 x 10".',
    )] = None  # fmt: skip
    mat: Annotated[Any, Words(
        "how wide the mat is, or a table of its sides", '"2 1/2 in"', usual="no mat", later=Length | MatTable,
    )] = None  # fmt: skip
    moulding: Annotated[MouldingTable | None, Words("the stick that the frame is made of", '{ face = "1 1/4 in" }')] = (
        None
    )
    glazing: Annotated[str | PartTable | None, Words(
        "what is before the picture: glass, acrylic or none", '"glass 2 mm"',
    )] = None  # fmt: skip
    backing: Annotated[str | PartTable | None, Words(
        "what is behind it: foam board, mat board, hardboard, mdf or none", '"foam board 5 mm"',
    )] = None  # fmt: skip

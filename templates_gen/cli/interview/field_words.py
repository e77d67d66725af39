"""The fields of a job file in the words of someone who meets them first: one place for questions and for comments."""

from __future__ import annotations

from templates_gen.base.record import Record


class Words(Record, frozen=True):
    """What is asked for a field, what it means (the answer to "?" and the comment in the job file), and an example.

    The example is a value as TOML, with another for a job in cm or mm; a field left open stands in the job file with
    it, as a comment.  A field that is never asked has no question, and only stands there.
    """

    ask: str
    means: str
    example: str = ""
    metric: str = ""


FIELDS = {
    "job.title": Words("What is the job called?", "on every page"),
    "job.client": Words("Who is it for?", "on every page", '"Mill Lane Bakery"'),
    "job.unit": Words(
        "Which unit do you measure in?", "for numbers without a unit, and for what is shown: in, cm or mm"
    ),
    "job.confirmed": Words("", "values that were asked about, and are right"),
    "wall.width": Words("How wide is the wall?", "from its left end to its right end"),
    "wall.height": Words("How high is it?", "from the floor to the ceiling"),
    "wall.build": Words(
        "What is it built of?",
        "drywall (plasterboard), plaster, masonry or timber: the fixings are chosen for it",
        '"drywall"',
    ),
    "wall.wiring": Words(
        "Which country's rules were its cables laid by?",
        "us, uk or de; none if nobody knows. Use a detector in any case",
        '"us"',
    ),
    "wall.built": Words(
        "In which year was the building built?", "lead paint and asbestos are asked about by it", "1965"
    ),
    "wall.earthquake": Words(
        "Is it in earthquake country?", "whether frames are to be secured against earthquakes", "true"
    ),
    "wall.public": Words(
        "Does a path open to the public run along it?", "whether what sticks out is held to rules on access", "true"
    ),
    "feature.kind": Words("What is on the wall or in front of it?", "things on or in front of the wall, one by one"),
    "feature.name": Words("What do you call it?", "its name, to hang above it or to centre on it"),
    "feature.use": Words(
        "What do people use it for?",
        "bed, seat, cot (for babies) or other: what hangs over it is checked by that",
    ),
    "feature.left": Words("How far is its left side from the wall's left end?", "from the wall's left end"),
    "feature.bottom": Words("How far above the floor is its lower edge?", "from the floor; 0 for what stands on it"),
    "feature.width": Words("How wide is it?", "from its left side to its right side"),
    "feature.height": Words("How tall is it?", "from its lower edge to its top edge"),
    "feature.clear": Words(
        "How far should frames stay away from it?", "frames keep this far away from it", '"2 in"', '"5 cm"'
    ),
    "frame.id": Words("Frame {number}: what is its short name?", "a short name, for paper and wall"),
    "frame.title": Words("What is its title?", "its title", '"Royal fern"'),
    "frame.width": Words("How wide is frame {id}, outside?", "outside width of the frame"),
    "frame.height": Words("How high is frame {id}, outside?", "outside height of the frame"),
    "frame.weight": Words(
        "What does frame {id} weigh?",
        "as weighed, with its unit; the fixings are checked against it",
        '"4.2 lb"',
        '"1.9 kg"',
    ),
    "frame.hanger": Words("What hanger is on its back?", "what is on its back"),
    "frame.drop": Words(
        "How far below its top edge is the hanging point?",
        "from the top edge down to where it bears, a wire pulled taut; each frame has its own",
        '"3 1/8 in"',
        '"7.9 cm"',
    ),
    "hanger.left": Words("From behind: how far is the left one from the frame's left side?", "to its middle"),
    "hanger.right": Words("From behind: how far is the right one from the frame's right side?", "to its middle"),
    "hanger.drop_left": Words("How far below the top edge does the left one bear?", "measured from behind"),
    "hanger.drop_right": Words("How far below the top edge does the right one bear?", "measured from behind"),
    "hanger.apart": Words(
        "How far apart are the two hooks of frame {id}?", "from one fixing to the other under one wire"
    ),
    "hanger.drop_at_two": Words(
        "How far below the top edge does the wire of frame {id} bear on the two hooks?",
        "from the top edge down to the wire on both hooks, as it hangs",
    ),
    "hanger.screw_below": Words(
        "How far are the screws below the edge that it bears on?", "from the rail's bearing edge down to its screws"
    ),
    "fixing.kind": Words("What goes into the wall?", "nail, hook or screw, for every frame without its own"),
    "fixing.below": Words("How far is the hook's seat below its nail?", "from the nail down to the hook's seat"),
    "group.arrangement": Words(
        "How are the frames arranged?", "row, column, rows, columns or grid; for others see the README", '"row"'
    ),
    "group.rows": Words("Which frames are in which row, from the top?", "row by row from the top, each from the left"),
    "group.columns": Words("Which frames are in which column?", "column by column, each from its top"),
    "group.across": Words("How many frames are in each row?", "how many frames are in each row of the grid"),
    "group.align": Words(
        "What lines up in each {line}?", "in a row: top, centre, bottom; in a column: left, centre, right"
    ),
    "group.gap": Words(
        "How wide is the gap between two frames?", "the clear gap between two frames", '"2 1/2 in"', '"6 cm"'
    ),
    "group.centre_on": Words(
        "What is the group centred on?", "wall, the name of a feature, or a distance from the left end"
    ),
    "group.height": Words(
        "How high do they hang?",
        "centre, top or bottom above the floor, or above a feature",
        '{ centre = "57 in" }',
        '{ centre = "145 cm" }',
    ),
    "height.above": Words("What does the group hang above?", "the feature that the group hangs above"),
    "height.by": Words("How far above it is the lowest frame?", "from its top edge up to the lowest frame"),
    "height.centre": Words("How high is the middle of the group?", "from the floor to the middle of the group"),
    "height.top": Words("How high is the top of the group?", "from the floor to the highest edge of the group"),
    "height.bottom": Words("How high is the bottom of the group?", "from the floor to the lowest edge of the group"),
    "paper.size": Words("What paper is in the printer?", "letter, a4, tabloid, a3, …; or a roll: roll 24 in"),
    "more": Words(
        "Another frame: the same as the last, another size, or no more?",
        "same: with the size, the weight and the kind of hanger of the last one, its drop measured separately",
    ),
    "file": Words("Which file should the job be written to?", "a text file, to be read and changed with any editor"),
}
"""By table and field.  `hanger` and `height` are tables within a frame and a group."""

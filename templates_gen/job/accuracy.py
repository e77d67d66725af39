"""How exactly people and machines work: printer, paper, taping, measuring and nailing, as standard deviations.

What an eye sees of it stands here, too.

A standard deviation (sd) is what about two in three cases stay within.  All in mm; scale and moisture in per cent.
"""

from __future__ import annotations

import math

from templates_gen.base.record import Record

NORMAL_95 = 1.96
"""95 % of a normal distribution lie within this many standard deviations (two-sided quantile)."""

SCALE = 0.3
"""Per cent on either axis of a page from a printer that has not been measured.  Modern inkjets are 0.1 to 0.5 % off
and laser fusers shrink paper by 0.1 to 0.3 % (from memory, no published specification found); old lasers were
guaranteed to 2 % only (B. Beeton, comp.laser-printers, 1988 and 1990).  The middle of the first range, taken as an
sd because nobody says which way a printer errs: our own choice."""

WIDE_SCALE = 0.1
"""Per cent, for a plotter or a print shop: line accuracy of 0.1 % is what makers of wide-format printers state for
film at a given temperature and humidity (from memory).  Taken as an sd: our own choice."""

READING = 0.2
"""mm, reading one end of a ruler on paper against a good steel rule, or laying that on one end of a line.  Common
practice, no source."""

MATCH = 0.4
"""mm on either axis: how far the two prints of a registration mark lie apart once the join is taped.  Our own estimate;
printing trades reach 0.1 mm with register pins (ISO 12647-2, from memory), scissors and tape do not."""

MOISTURE_ALONG, MOISTURE_ACROSS = 0.045, 0.09
"""Per cent of growth for 10 % more relative humidity, along and across the grain: the middles of 0.03-0.06 and
0.06-0.12 (from memory).  The whole tests' ranges for bond paper, 0.10-0.20 % and 0.20-0.40 %, are from a table
of typical values."""

HUMIDITY = 10.0
"""Per cent of relative humidity between the printing, or the measuring of the rulers, and the nailing.  Our own choice:
paper for laser printers is shipped at about 20 % (Mechanical Music Digest, 2005), a room has 40 to 60 %, and half an
hour of rest takes most of it (both from memory)."""

DROP = 0.5
"""mm, measuring a drop to a wire pulled taut, with a tape.  Common practice, no source; a tape of EU class II may be
0.5 mm off below a metre, and 0.7 mm from its end hook (2014/32/EU, annex X: 0.3 + 0.2 L mm with L rounded up to whole
metres, and 0.2 mm for a hook)."""

NAILING = 0.5
"""mm on either axis: how far the nail enters from the middle of its cross.  Our own estimate, no source."""

PLACING = 1.0
"""mm on either axis: how far a piece that is taped to nothing lands from its place, set by its own two references.
Our own estimate, no source."""

SEEN_ANGLE, SEEN_SOURCE = 0.6, '"Recognition of stimulus orientation", Vision Research 30(10), 1990'
"""Degrees off level or plumb that people recognise on average, and who found it (pages 1429 to 1437)."""


class Accuracy(Record, frozen=True, kw_only=True):
    """The standard deviations that an expected error is worked out from (mm; scale, moisture and humidity in per cent).

    `scale` is of a printer that has not been measured, `reading` of one end of the rulers of one that has, and of one
    end of the level line under a string.  With `string` the level line is held to a string while the sheets are taped,
    so that turned joins do not add up along it.
    """

    scale: float = SCALE
    reading: float = READING
    match: float = MATCH
    moisture_along: float = MOISTURE_ALONG
    moisture_across: float = MOISTURE_ACROSS
    humidity: float = HUMIDITY
    drop: float = DROP
    nailing: float = NAILING
    placing: float = PLACING
    string: bool = True


def scale_sd(accuracy: Accuracy, wide: bool) -> float:
    """The sd of a printed length as a share of it, for a printer that has not been measured; `wide` for a plotter."""
    return (min(accuracy.scale, WIDE_SCALE) if wide else accuracy.scale) / 100


def measured_scale_sd(accuracy: Accuracy, ruler: float) -> float:
    """The same once a ruler of this length (mm) has been measured along the axis and the print corrected.

    Only the reading of its two ends is left: √2 · reading / ruler (propagation of two independent errors).
    """
    return math.sqrt(2) * accuracy.reading / ruler


def string_share(accuracy: Accuracy, match: float) -> float:
    """The sd of bringing one end of a line under a string as a share of `match` (mm), that of joining two marks; 0
    where marks are matched without error, for then no string is needed."""
    return accuracy.reading / match if match else 0.0


def moisture_sd(accuracy: Accuracy, along: bool) -> float:
    """The sd of paper's growth as a share of its length, along or across the grain."""
    growth = accuracy.moisture_along if along else accuracy.moisture_across
    return growth / 100 * accuracy.humidity / 10


def firm(match: float) -> float:
    """How far apart two marks have to be (mm) to hold a sheet firmly, for marks matched with the sd `match` (mm).

    On marks nearer to each other it turns by more than `SEEN_ANGLE` in one case of twenty: NORMAL_95 · match · √2 /
    tan of that angle, 106 mm for 0.4 mm (worked out by hand here).  Our own design.
    """
    return NORMAL_95 * match * math.sqrt(2) / math.tan(math.radians(SEEN_ANGLE))


def seen_step(gap: float) -> float:
    """The step (mm) between two edges `gap` mm apart that an eye sees: gap · tan 0.6°.

    A working threshold: a model, not a measured value.
    """
    return gap * math.tan(math.radians(SEEN_ANGLE))

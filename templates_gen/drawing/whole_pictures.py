"""Whether a picture's file has all its data: PNG by its rows (W3C, third edition, clauses 5, 7 and 8), JPEG by its end
(ITU-T T.81, annex B).
"""

from __future__ import annotations

import re
import struct
import zlib
from collections.abc import Iterator
from pathlib import Path

from templates_gen.base.picture_files import PNG

_CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}
"""Values of a pixel by the type of colour (PNG, clause 6.1, table 9)."""

_PASSES = ((0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2))
"""First column and row, and the steps across and down, of the seven passes of a picture that comes in passes (PNG,
clause 8.2)."""

_HEAD, _BYTE = struct.Struct(">I4s"), 8
"""The length and the kind of a chunk before its data (PNG, clause 5.3), and the bits of a byte."""

_AT_ONCE = 1_000_000
"""Bytes that are unpacked at a time.  Our own design, no source."""


def has_every_row(path: Path) -> bool:
    """False when the picture's data are sound but end before its last row.  A decoder leaves the other rows black.

    Raises OSError, zlib.error or struct.error for a file that is broken otherwise.
    """
    chunks = _chunks(path)
    _, header = next(chunks)
    width, height, bits, colour, _, _, passes = struct.unpack(">IIBBBBB", header[:13])
    steps = _PASSES if passes else ((0, 0, 1, 1),)
    wanted = sum(_size(width - x, height - y, across, down, bits * _CHANNELS[colour]) for x, y, across, down in steps)
    return _unpacked(chunks, wanted) >= wanted


def _size(width: int, height: int, across: int, down: int, bits: int) -> int:
    """The bytes of one pass: a byte before each row, and rows of whole bytes (PNG, clause 7.2)."""
    columns, rows = max(0, -(-width // across)), max(0, -(-height // down))
    return rows * (1 + -(-columns * bits // _BYTE)) if columns else 0


def _unpacked(chunks: Iterator[tuple[bytes, bytes]], wanted: int) -> int:
    """How many bytes of pixels there are, no more than wanted being looked for."""
    unpacking, count = zlib.decompressobj(), 0
    for kind, data in chunks:
        while kind == b"IDAT" and data and count < wanted and not unpacking.eof:
            count += len(unpacking.decompress(data, _AT_ONCE))
            data = unpacking.unconsumed_tail
    return count + len(unpacking.flush()) if count < wanted and not unpacking.eof else count


def _chunks(path: Path) -> Iterator[tuple[bytes, bytes]]:
    with path.open("rb") as file:
        file.seek(len(PNG))
        while len(head := file.read(_HEAD.size)) == _HEAD.size:
            length, kind = _HEAD.unpack(head)
            yield kind, file.read(length)
            file.seek(4, 1)


_SCAN, _END = 0xDA, 0xD9
"""The markers SOS and EOI (T.81, table B.1)."""

_ALONE = (0x01, *range(0xD0, 0xD9))
"""Markers without a segment behind them: TEM, RST and SOI (T.81, table B.1)."""

_MARKER = re.compile(rb"\xff+([^\x00\xff\xd0-\xd7])")
"""What ends the data of a scan: a marker that is neither a stuffed byte nor RST (T.81, B.1.1.5)."""

_MORE = bytes(5 + 61 * at % 250 for at in range(2000))
"""Arbitrary data without the byte that begins a marker."""


def with_more_data(content: bytes) -> bytes | None:
    """The picture with arbitrary data before its end marker; None where there are no data, b"" where they do not end.

    A decoder that has read every row ignores them.  One that still waits for rows takes them for rows.
    """
    at, scanned = 2, False
    while found := _MARKER.match(content, at):
        marker = found[1][0]
        if marker == _END:
            return content[:at] + _MORE + content[at:] if scanned else None
        at = found.end()
        if marker in _ALONE:
            continue
        at += int.from_bytes(content[at : at + 2], "big")
        if marker == _SCAN:
            scanned = True
            end = _MARKER.search(content, at)
            at = end.start() if end else len(content)
    return b"" if scanned else None

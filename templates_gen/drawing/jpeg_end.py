"""Where the data of a JPEG picture end, and the same picture with more behind them (ITU-T T.81, annex B)."""

from __future__ import annotations

import re

_SCAN, _END = 0xDA, 0xD9
"""The markers SOS and EOI (table B.1)."""

_ALONE = (0x01, *range(0xD0, 0xD9))
"""Markers without a segment behind them: TEM, RST and SOI (table B.1)."""

_MARKER = re.compile(rb"\xff+([^\x00\xff\xd0-\xd7])")
"""What ends the data of a scan: a marker that is neither a stuffed byte nor RST (B.1.1.5)."""

_MORE = bytes(5 + 61 * at % 250 for at in range(2000))
"""Data of nobody's, without the byte that begins a marker."""


def with_more_data(content: bytes) -> bytes | None:
    """The picture with arbitrary data before its end marker; None where there are no data, b"" where they do not end.

    A decoder that has read every row already pays no heed to them; to one that still waits for rows they are rows.
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

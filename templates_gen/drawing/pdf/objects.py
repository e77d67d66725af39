"""The objects of a PDF file, written as they come: numbers, streams, the table of where each lies."""

from __future__ import annotations

import hashlib
import zlib
from typing import Any

_HEAD = b"%PDF-1.7\n%\xb1\xb2\xb3\xb4\n"
"""What a file begins with: the version that ISO 32000-1 describes, and bytes that say it is no text (7.5.2)."""

_SQUEEZE = (3, zlib.DEFLATED, 15, 8)
"""Level, method, window and memory of packing: twice as quick as usual (level 6), pages a tenth larger (measured)."""

_ESCAPED = str.maketrans({"\\": r"\\", "(": r"\(", ")": r"\)"})

_PLACES = 6
"""Decimals of a number outside pages: those of a font's widths, in thousandths of an em.  Our own choice."""


def text_bytes(value: str) -> bytes:
    """What stands in the file for this text, in any script (ISO 32000-1, 7.9.2.2): ASCII, or else UTF-16."""
    if value.isascii() and value.isprintable():
        return value.encode("ascii")
    # half a surrogate pair cannot be written; it becomes U+FFFD
    whole = value.encode("utf-16-be", "surrogatepass").decode("utf-16-be", "replace")
    return b"\xfe\xff" + whole.encode("utf-16-be")


def text(value: str) -> str:
    """A text string object."""
    content = text_bytes(value)
    return f"({value.translate(_ESCAPED)})" if content.isascii() else f"<{content.hex()}>"


def _told(value: Any) -> str:
    """A dict, a list or a number as it is written; a str stands as it is, so `/Name` is a name."""
    if isinstance(value, dict):
        return f"<<{''.join([f'/{key} {_told(entry)}' for key, entry in value.items()])}>>"
    if isinstance(value, list):
        return f"[{' '.join(map(_told, value))}]"
    return f"{value:.{_PLACES}f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)


class Objects:
    """The objects of a PDF file: numbered as they come, put together by `write`.

    Values are dict, list, number, str (written as it stands) and what `text`, `add` and `reference` give.
    """

    def __init__(self) -> None:
        self._parts = [_HEAD]
        self._at = len(_HEAD)
        self._places: list[int] = []
        self._numbers: dict[str, int] = {}
        self._digest = hashlib.md5(usedforsecurity=False)

    def add(self, value: dict[str, Any] | list[Any] | str, key: str | None = None) -> str:
        """Number the object; the reference to it."""
        return self._put(key, _told(value).encode("ascii"))

    def stream(self, content: bytes, entries: dict[str, Any], key: str | None = None) -> str:
        """Number a stream, compressed unless its entries name a filter of its own; the reference to it."""
        if "Filter" not in entries:
            squeeze = zlib.compressobj(*_SQUEEZE)
            content = squeeze.compress(content) + squeeze.flush()
            entries = {**entries, "Filter": "/FlateDecode"}
        self._digest.update(content)
        head = _told({**entries, "Length": len(content)}).encode("ascii")
        return self._put(key, b"%b\nstream\n%b\nendstream" % (head, content))

    def reference(self, key: str) -> str:
        """The reference to the object that has this key, or will have when the file is written."""
        number = self._numbers.get(key)
        if number is None:
            number = self._numbers[key] = self._new()
        return f"{number} 0 R"

    def same(self, key: str, other: str) -> None:
        """The object of one key is that of the other; nothing may have referred to it before."""
        self._numbers[key] = self._numbers[other]

    def _new(self) -> int:
        """A number of its own."""
        self._places.append(0)
        return len(self._places)

    def _put(self, key: str | None, body: bytes) -> str:
        """Write an object at the end; the reference to it."""
        reference = self.reference(key) if key is not None else f"{self._new()} 0 R"
        number = int(reference.split(" ", 1)[0])
        self._places[number - 1] = self._at
        whole = b"%d 0 obj\n%b\nendobj\n" % (number, body)
        self._parts.append(whole)
        self._at += len(whole)
        return reference

    def write(self, catalog: dict[str, Any], info: dict[str, Any]) -> bytes:
        """The whole file, with this catalogue and this information dictionary."""
        root, about = self.add(catalog), self.add(info)
        # the file's identifier comes from what is in it, so that equal files have equal ones
        name = f"<{self._digest.hexdigest()}>"
        table = b"".join([b"%010d 00000 n \n" % place for place in self._places])
        count = len(self._places) + 1
        trailer = _told({"Size": count, "Root": root, "Info": about, "ID": [name, name]}).encode("ascii")
        end = b"xref\n0 %d\n0000000000 65535 f \n%btrailer\n%b\nstartxref\n%d\n%%%%EOF\n"
        return b"".join([*self._parts, end % (count, table, trailer, self._at)])

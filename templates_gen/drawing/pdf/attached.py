"""The files inside a finished PDF file of ours.  The only file that imports pypdf."""

from __future__ import annotations

import itertools
import zlib
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.files import MB
from templates_gen.base.output import MADE_BY
from templates_gen.job.reading.files import read_bytes

MOST_FILES = 20
"""More attachments than that are taken for no template of ours, which has four at most: a job, two spreadsheets, and
the wall that the group was moved to.  Our own design, no source."""

LARGEST_PDF = 500_000_000
"""Bytes.  A template of 2,000 frames has far fewer; this keeps a wrong file from filling the memory.  No source."""

_BROKEN = "has an attachment that cannot be unpacked"


class Attached:
    """The files that travel inside a PDF file, by name: `job`, what its pages are made from, and the `others`.

    None is unpacked before it is read.  Raises InputError for a file that cannot be read, was not made by this program,
    holds no job, too many files, or two of one name.
    """

    def __init__(self, content: bytes, where: str) -> None:
        self.where = where
        found = _listed(content, where)
        sources = [name for name, source, _ in found if source]
        if len(sources) != 1:
            raise InputError(where, "has no job inside, expected a template as the command template writes it")
        self._streams = {name: stream for name, _, stream in found}
        if len(self._streams) < len(found):
            raise InputError(where, "has two attachments of one name")
        self.job = sources[0]
        self.others = tuple(name for name in self._streams if name != self.job)

    @classmethod
    def of(cls, pdf: Path) -> Attached:
        """Those inside a template's file."""
        return cls(read_bytes(pdf, LARGEST_PDF, "a template"), pdf.name)

    def read(self, name: str, largest: int) -> bytes:
        """The content of the file of this name.  Raises InputError for one of more bytes than that, or a broken one."""
        try:
            return self._unpacked(self._streams[name], largest)
        except InputError:
            raise
        except Exception:  # whatever a broken file makes the library trip over
            raise InputError(self.where, _BROKEN) from None

    def _unpacked(self, stream: Any, largest: int) -> bytes:
        """The bytes of a stream as this program writes it: deflated once, or as it is (ISO 32000-1, 7.4.4).

        No more is unpacked than may be kept, whatever the stream says of its own length.
        """
        data, ways = bytes(stream._data), _filters(stream)
        if ways == ["/FlateDecode"] and not stream.get("/DecodeParms"):
            unpacking = zlib.decompressobj()
            data = unpacking.decompress(data, largest + 1)
            if len(data) <= largest and not unpacking.eof:
                raise InputError(self.where, _BROKEN)
        elif ways:
            raise InputError(self.where, "has an attachment packed in a way that this program does not use")
        if len(data) > largest:
            problem = f"has an attachment of more than {largest // MB} MB, expected a job and its spreadsheets"
            raise InputError(self.where, problem)
        return data


def _listed(content: bytes, where: str) -> list[tuple[str, bool, Any]]:
    """Of every attachment its name, whether the pages were made from it, and its stream as it lies in the file."""
    import io
    import logging

    import pypdf
    import pypdf.errors

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # it warns of every oddity, on stderr
    try:
        reader = pypdf.PdfReader(io.BytesIO(content))
        if reader.is_encrypted:
            raise _encrypted(where)
        producer = reader.metadata.producer if reader.metadata else None
        items = list(itertools.islice(reader.attachment_list, MOST_FILES + 1))
        found = [(item.name, item.associated_file_relationship == "/Source", _stream(item)) for item in items]
    except InputError:
        raise
    except pypdf.errors.DependencyError:  # it asks for another library to decrypt by
        raise _encrypted(where) from None
    except Exception:  # whatever a broken file makes the library trip over
        problem = "is a broken PDF file" if content.startswith(b"%PDF-") else "is not a PDF file"
        raise InputError(where, f"{problem}, expected a template as the command template writes it") from None
    if producer != MADE_BY:
        raise InputError(where, "was not made by this program, expected a template with its job inside")
    if len(found) > MOST_FILES:
        raise InputError(where, f"has more than {MOST_FILES} attachments, expected a job and its spreadsheets")
    if not all(isinstance(name, str) for name, _, _ in found):
        raise InputError(where, "has an attachment whose name is not text")
    return [(str(name), source, stream) for name, source, stream in found]


def _encrypted(where: str) -> InputError:
    return InputError(where, "is encrypted, expected a template as the command template writes it")


def _stream(item: Any) -> Any:
    """An attachment's stream (ISO 32000-1, 7.11.4: the entry UF before F)."""
    inside = item.pdf_object["/EF"]
    return inside["/UF" if "/UF" in inside else "/F"]


def _filters(stream: Any) -> list[str]:
    found = stream["/Filter"] if "/Filter" in stream else []
    return [str(way.get_object()) for way in found] if isinstance(found, list) else [str(found)]

"""The files inside a finished PDF file of ours.  The only file that imports pypdf."""

from __future__ import annotations

from templates_gen.errors import InputError
from templates_gen.pdf import MADE_BY


def attached(content: bytes, where: str) -> dict[str, bytes]:
    """The files that travel inside a PDF file, by name, what its pages are made from before the others.

    Raises InputError when it cannot be read, was not made by this program, or has no such file, or two of one name.
    """
    import io
    import logging

    import pypdf

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # it warns of every oddity, on stderr
    try:
        reader = pypdf.PdfReader(io.BytesIO(content))
        producer = reader.metadata.producer if reader.metadata else None
        items = list(reader.attachment_list)
        found = [(item.associated_file_relationship == "/Source", item.name, item.content) for item in items]
    except Exception as error:  # whatever a broken file makes the library trip over
        raise InputError(where, f"cannot be read as a PDF file: {' '.join(str(error).split())}"[:200]) from None
    if producer != MADE_BY:
        raise InputError(where, "was not made by this program, expected a template with its job inside")
    if [source for source, _, _ in found].count(True) != 1:
        raise InputError(where, "has no job inside, expected a template as the command template writes it")
    files = {name: content for _, name, content in sorted(found, key=lambda item: not item[0])}
    if len(files) < len(found):
        raise InputError(where, "has two attachments of one name")
    return files

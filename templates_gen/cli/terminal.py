"""Text for a terminal or a pipe that cannot show every sign."""

from __future__ import annotations

import codecs
import sys
from collections.abc import Callable
from functools import partial

from templates_gen.base.unseen import spelt, unseen_spelt

_PLAIN = str.maketrans("“”„‘’′″–—−·×≈≤≥…", "''''''\"---|x~<>.")
"""The signs that our own messages use, and what is nearest to them among those that every terminal has."""


def write_what_can_be_shown() -> None:
    """From now on what stdout and stderr cannot show is written plainer or, a letter, by its number (`\\u05d0`).

    So is what would show nothing, and turn what stands beside it.
    """
    codecs.register_error("plainer", _plainer)
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)  # there may be no stream, or one of a test
        if reconfigure:
            reconfigure(errors="plainer")
        own = vars(stream) if hasattr(stream, "__dict__") else {}
        if "write" not in own:  # it is not done twice
            own["write"] = partial(_written, stream.write)


def _written(write: Callable[[str], int], text: str) -> int:
    """Write what shows nothing by its number: in a path, say, it would turn the line around it."""
    return write(unseen_spelt(text))


def _plainer(error: UnicodeError) -> tuple[str | bytes, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    found = error.object[error.start : error.end]
    return "".join(map(_shown, found)), error.end


def _shown(sign: str) -> str:
    plain = sign.translate(_PLAIN)
    return plain if plain.isascii() else spelt(sign)  # as JSON does, for JSON may be what is written

"""Everything that can go wrong, as one small family of exceptions.

    TemplatesError            base; carries the exit code
    ├── InputError            the job file, a spreadsheet or an option cannot be used (exit 2)
    └── OutputError           a result cannot be written where it was asked for (exit 2)

They are raised deep and turned into text in one place (`__main__`).  A message says where, what was found,
what was expected, and what to do.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path
from typing import ClassVar

MOST_SAID = 500
"""Characters of each part of a message; of a longer one, most often something quoted, the middle is left out.  Our own
design, no source."""

# what moves the cursor, ends the line, turns the reading direction, or cannot be encoded
_UNSEEN = "[\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]"

MOST_FOUND = 60
"""Letters of one value that was found.  Our own design, no source."""

_LONG = re.compile(rf"(?<!\w)'[^'\n]{{{MOST_FOUND},}}'(?!\w)")  # in quotes, not between two apostrophes


class TemplatesError(Exception):
    """Something the user can put right; `exit_code` is what the program ends with."""

    exit_code: ClassVar[int] = 2

    def __init__(self, message: str) -> None:
        super().__init__(re.sub(_UNSEEN, lambda found: ascii(found[0])[1:-1], message))


class InputError(TemplatesError):
    """What was given cannot be used.

    `where` is the file, then the table or frame, then the field; the message says what was found and expected.
    """

    def __init__(self, where: str, problem: str, hint: str = "") -> None:
        problem = _LONG.sub(lambda found: clipped(found[0]), problem)
        where, problem, hint = map(_short, (where, problem, hint))
        self.where, self.problem, self.hint = where, problem, hint
        super().__init__(": ".join(part for part in (where, problem) if part) + (f"\n  {hint}" if hint else ""))

    def inside(self, place: str) -> InputError:
        """The same error with the surrounding place (a file, a frame) put in front of where it was."""
        return InputError(", ".join(part for part in (place, self.where) if part), self.problem, self.hint)


class OutputError(TemplatesError):
    """A file cannot be written, or would overwrite something that this program did not make."""


class TakenError(OutputError):
    """The file `name` may be somebody else's: `problem` says so, without the option that overwrites it."""

    def __init__(self, path: Path, problem: str) -> None:
        super().__init__(f"{path}: {problem}; give --force to overwrite it")
        self.name, self.problem = path.name, problem


def _short(text: str) -> str:
    half = MOST_SAID // 2 - 3
    return text if len(text) <= MOST_SAID else f"{text[:half]} … {text[-half:]}"


def clipped(text: str) -> str:
    """What was found, as it is said of it: no more than its beginning."""
    end = text[-1:] if text[:1] in "'\"" else ""  # of what stands in quotes
    return text if len(text) <= MOST_FOUND else f"{text[: MOST_FOUND - 3 - len(end)]}...{end}"


def did_you_mean(word: str, known: Iterable[str], otherwise: str = "", ending: str = "") -> str:
    """The hint for a word that is not known: the one of the `known` most like it, capitals or not, else `otherwise`.

    `ending` comes behind all of them, and says nothing of how much they are alike.
    """
    import difflib  # only when something is wrong

    plain = {one.lower(): one for one in known}
    near = difflib.get_close_matches(word.lower(), plain, 1)  # as near as difflib usually asks
    return f"did you mean {plain[near[0]] + ending!r}?" if near else otherwise

"""Everything that can go wrong, as one small family of exceptions.

    TemplatesError            base; carries the exit code
    ├── InputError            the job file, a spreadsheet or an option cannot be used (exit 2)
    └── OutputError           a result cannot be written where it was asked for (exit 2)

They are raised deep and turned into text in one place (`commands`).  A message says where, what was found,
what was expected, and what to do.
"""

from __future__ import annotations

from typing import ClassVar


class TemplatesError(Exception):
    """Something the user can put right; `exit_code` is what the program ends with."""

    exit_code: ClassVar[int] = 2


class InputError(TemplatesError):
    """What was given cannot be used.

    `where` is the file, then the table or frame, then the field; the message says what was found and expected.
    """

    def __init__(self, where: str, problem: str, hint: str = "") -> None:
        self.where, self.problem, self.hint = where, problem, hint
        super().__init__(": ".join(part for part in (where, problem) if part) + (f"\n  {hint}" if hint else ""))

    def inside(self, place: str) -> InputError:
        """The same error with the surrounding place (a file, a frame) put in front of where it was."""
        return InputError(", ".join(part for part in (place, self.where) if part), self.problem, self.hint)


class OutputError(TemplatesError):
    """A file cannot be written, or would overwrite something that this program did not make."""

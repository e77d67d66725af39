"""The texts that lie beside the samples, as the command `help` shows them."""

from __future__ import annotations

import re

from templates_gen.cli.interview.taken import samples_folder

_PICTURE = re.compile(r"^!\[.*\n\n?", re.MULTILINE)
"""A picture in a line of its own, which a terminal cannot show."""


def text_names() -> list[str]:
    """The names of the texts, sorted."""
    return sorted(path.stem for path in samples_folder().glob("*.md"))


def text(name: str) -> str:
    """A text without its pictures."""
    return _PICTURE.sub("", (samples_folder() / f"{name}.md").read_text(encoding="utf-8"))

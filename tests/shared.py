"""What one process of this run of the tests has made, for all of them: it is kept in files for the others."""

from __future__ import annotations

import copyreg
import os
import pickle
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path
from typing import TypeVar

from templates_gen.drawing.lettering import Lettering

Made = TypeVar("Made")

folder: Path | None = None
"""Where the processes of this run keep it, while there are several of them (conftest.py)."""

copyreg.pickle(Lettering, lambda each: (Lettering, (each._extra,)))  # its fonts are opened anew


def made_once(key: object, make: Callable[[], Made]) -> Made:
    """What `make` gives; where another process of this run has made it for the same key, that is read instead."""
    if folder is None:
        return make()
    place = folder / sha256(repr(key).encode()).hexdigest()
    if place.exists():
        found: Made = pickle.loads(place.read_bytes())
        return found
    made = make()
    part = place.with_suffix(f".{os.getpid()}")
    part.write_bytes(pickle.dumps(made))
    part.replace(place)  # the others see all of it, or nothing
    return made

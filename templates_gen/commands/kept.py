"""What the program keeps for its user between runs."""

from __future__ import annotations

from pathlib import Path

import click


def kept_printers() -> Path:
    """The folder that printers' profiles are kept in.  Raises OutputError when the user has no home folder."""
    from templates_gen.printing.store import profile_folder

    return profile_folder(Path(click.get_app_dir("templates-gen")))

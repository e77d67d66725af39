"""How the values of a job file are written, besides texts and numbers."""

from __future__ import annotations


class Length(float):
    """A size in mm, zero or more."""


class Offset(float):
    """A distance in mm, negative to the left or down."""


class Mass(float):
    """A weight in kg."""

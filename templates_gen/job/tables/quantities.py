"""Numbers that a job file gives with a unit: how each is read, and how it is called."""

from __future__ import annotations

from typing import Any, ClassVar, Literal, Self, TypeGuard

from templates_gen.base.units import LENGTH_EXAMPLE, MASS_EXAMPLE, parse_length, parse_mass, parse_offset


class Quantity(float):
    """A number with a unit, `called` so where it is expected; `beyond` says what a negative one means, where one may be
    given."""

    called: ClassVar[str]
    example: ClassVar[str] = LENGTH_EXAMPLE
    beyond: ClassVar[str] = ""
    dimension: ClassVar[Literal["length", "mass"]] = "length"

    @classmethod
    def read(cls, value: Any, unit: str) -> Self:
        """What a file gives, a bare length being in `unit`.  Raises ValueError with what was found and expected."""
        return cls(parse_offset(value, unit))


class Length(Quantity):
    """A size in mm, zero or more."""

    called = "a length"

    @classmethod
    def read(cls, value: Any, unit: str) -> Self:
        """As every quantity is read; ValueError for a negative one, too."""
        return cls(parse_length(value, unit))


class Offset(Quantity):
    """A distance in mm, negative to the left or down."""

    called, beyond = "a distance", "negative to the left or down"


class Inset(Quantity):
    """A distance in mm from a frame's edge inwards, negative for what stands out beyond it."""

    called, beyond = "a distance", "negative beyond the frame's edge"


class Mass(Quantity):
    """A weight in kg."""

    called, example, dimension = "a weight with its unit", MASS_EXAMPLE, "mass"

    @classmethod
    def read(cls, value: Any, unit: str) -> Self:
        """As every quantity is read, but with a unit of its own: a bare number is none."""
        return cls(parse_mass(value))


def is_quantity(kind: Any) -> TypeGuard[type[Quantity]]:
    """True for the type of a number with a unit."""
    return isinstance(kind, type) and issubclass(kind, Quantity)

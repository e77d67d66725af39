"""Matrices undone."""

from __future__ import annotations

from templates_gen.drawing.items import Matrix


def inverse(matrix: Matrix) -> Matrix:
    """The matrix that undoes this one."""
    a, b, c, d, e, f = matrix
    det = a * d - b * c
    return (d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det)

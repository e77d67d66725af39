"""What the page asks, and what it is answered: plain values that know nothing of the server."""

from __future__ import annotations

import json
from collections.abc import Mapping
from http import HTTPStatus
from typing import Any

from templates_gen.base.errors import InputError, TakenError, TemplatesError
from templates_gen.base.record import Record

JSON, TEXT = "application/json", "text/plain; charset=utf-8"
"""Media types (RFC 8259; RFC 6657)."""


class Asked(Record, frozen=True, kw_only=True):
    """One request: its method and path, what stands behind the ?, its headers in small letters, and what it brings."""

    method: str
    path: str
    query: Mapping[str, str]
    headers: Mapping[str, str]
    body: bytes = b""

    def data(self) -> dict[str, Any]:
        """What it brings as JSON, an object.  Raises InputError for anything else."""
        try:
            found = json.loads(self.body)
        except (ValueError, RecursionError):
            found = None
        if not isinstance(found, dict):
            raise InputError("", "the page sent something that is no JSON object", "load the page again")
        return found


class Answer(Record, frozen=True, kw_only=True):
    """One answer: its number (RFC 9110), what it is, and its content."""

    status: int = 200
    kind: str = JSON
    content: bytes = b""
    headers: tuple[tuple[str, str], ...] = ()


class GoneError(Exception):
    """What a page refers to has changed meanwhile: it is to look again."""


def told(data: object, status: int = 200) -> Answer:
    """An answer in JSON."""
    return Answer(status=status, content=json.dumps(data, ensure_ascii=False, default=str).encode())


def refused(status: int, words: str) -> Answer:
    """An answer of a sentence alone."""
    return Answer(status=status, kind=TEXT, content=f"{words}\n".encode())


def wrong(error: TemplatesError) -> Answer:
    """What cannot be used, in the parts that a message has; "taken" where it can be done all the same."""
    problem, _, hint = str(error).partition("\n")
    parts = {"where": "", "problem": problem, "hint": hint.strip()}
    if isinstance(error, InputError):
        parts = {"where": error.where, "problem": error.problem, "hint": error.hint}
    elif isinstance(error, TakenError):
        parts |= {"where": error.name, "problem": error.problem, "taken": "yes"}
    return told(parts, HTTPStatus.UNPROCESSABLE_ENTITY)

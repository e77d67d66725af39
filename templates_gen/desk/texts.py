"""A text by a short name of its own."""

from __future__ import annotations

import hashlib


def hash_of(text: str) -> str:
    """A short name for a text: the same for the same text (SHA-256, FIPS 180-4, its first 64 bits)."""
    return hashlib.sha256(text.encode()).hexdigest()[:16]

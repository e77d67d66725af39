"""Who is let in: the browser of the person who started the desk, and no other program, page or machine."""

from __future__ import annotations

import hmac
import secrets
from collections.abc import Mapping
from http import HTTPStatus
from http.cookies import CookieError, SimpleCookie
from urllib.parse import quote

from templates_gen.base.record import Record
from templates_gen.desk.messages import Answer, Asked, refused

LOOPBACK = "127.0.0.1"
"""The only address that is listened on (RFC 1122, 3.2.1.3: it never leaves this machine)."""

KEY_BYTES = 32
"""Bytes of chance in a key: far beyond any guessing.  Our own design, no source."""

HEADERS = (
    ("content-security-policy", "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("referrer-policy", "no-referrer"),
    ("x-content-type-options", "nosniff"),
    ("cache-control", "no-store"),
)
"""What every answer says: nothing is loaded from elsewhere, shown elsewhere, or kept (CSP Level 3, W3C; Fetch, WHATWG;
RFC 9111)."""

SAFE = ("GET", "HEAD")
"""Methods that change nothing (RFC 9110, 9.2.1)."""


class Guard(Record, frozen=True):
    """The key of one run, and the port that it is reached at."""

    key: str
    port: int

    @property
    def host(self) -> str:
        """What a request has to be addressed to."""
        return f"{LOOPBACK}:{self.port}"

    @property
    def address(self) -> str:
        """What the person opens."""
        return f"http://{self.host}/?key={self.key}"

    @property
    def cookie(self) -> str:
        """The name of the cookie: browsers share cookies between ports, so the port is in it."""
        return f"desk-{self.port}"

    def stopped(self, asked: Asked) -> Answer | None:
        """The answer to a request that is not let in, or that brings the key; None for one that may go on."""
        headers = asked.headers
        if headers.get("host") != self.host:
            return _no(f"This desk is reached at http://{self.host} alone.")
        if not self._from_here(asked):
            return _no("Another page asked for this. The desk answers its own pages alone.")
        given = asked.query.get("key")
        if given is not None and asked.path == "/" and asked.method == "GET":
            return self._welcome(given, asked.query.get("job", ""))
        if not self._same(_cookies(headers).get(self.cookie, "")):
            return _no("The key is missing. Open the whole address that the program printed, with its key.")
        return None

    def _from_here(self, asked: Asked) -> bool:
        """True for what this desk's own pages ask, and for an address that the person typed or opened."""
        origin, site = asked.headers.get("origin"), asked.headers.get("sec-fetch-site", "none")
        if origin is None:
            return asked.method in SAFE and site in ("none", "same-origin")
        return origin == f"http://{self.host}" and site in ("none", "same-origin")

    def _welcome(self, given: str, job: str) -> Answer:
        """The key becomes a cookie and leaves the address, where it would be seen over a shoulder."""
        if not self._same(given):
            return _no("This key is not that of this run. Open the address that the program printed last.")
        cookie = f"{self.cookie}={self.key}; HttpOnly; SameSite=Strict; Path=/"
        place = f"/wall?job={quote(job, safe='')}" if job else "/"
        headers = ("location", place), ("set-cookie", cookie)
        return Answer(status=HTTPStatus.SEE_OTHER, kind="text/plain", headers=headers)

    def _same(self, given: str) -> bool:
        return hmac.compare_digest(given.encode(), self.key.encode())


def new_key() -> str:
    """A key that nobody had before."""
    return secrets.token_urlsafe(KEY_BYTES)


def _no(words: str) -> Answer:
    return refused(HTTPStatus.FORBIDDEN, words)


def _cookies(headers: Mapping[str, str]) -> dict[str, str]:
    try:
        return {name: morsel.value for name, morsel in SimpleCookie(headers.get("cookie", "")).items()}
    except CookieError:
        return {}

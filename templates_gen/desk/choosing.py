"""Several arrangements of the same frames, looked for beside the work and shown side by side."""

from __future__ import annotations

import threading
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.units import show_size
from templates_gen.desk.telling import screen, words
from templates_gen.documents.options.choices import Option, in_all, options
from templates_gen.documents.proof.on_screen import on_screen

COUNT = 6
"""Arrangements that are shown: as many as can be told apart side by side.  Our own design, no source."""


class Choosing:
    """The search for arrangements of one job, and what came of it."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._run = 0
        self._stop = False
        self.done: float | None = None
        self.told: dict[str, Any] = {"options": [], "problem": None}

    def begin(self, job: tg.Job) -> None:
        """Look for arrangements of this job; a search that runs is left to its end unheard."""
        with self._lock:
            self._run += 1
            run, self._stop, self.done = self._run, False, 0.0
            self.told = {"options": [], "problem": None}
        threading.Thread(target=self._look, args=(job, run), daemon=True).start()

    def stop(self) -> None:
        """End the search with what it has."""
        self._stop = True

    def _look(self, job: tg.Job, run: int) -> None:
        def watch(done: float) -> bool:
            if run == self._run:
                self.done = done
            return run == self._run and not self._stop

        told: dict[str, Any] = {"options": [], "problem": None}
        try:
            found = options(job, COUNT, watch)
            common = in_all(found)
            told["options"] = [_told(option, common) for option in found]
        except InputError as error:
            told["problem"] = words(error)
        with self._lock:
            if run == self._run:
                self.told, self.done = told, None


def _told(option: Option, common: frozenset[str]) -> dict[str, Any]:
    plan, unit = option.plan, option.plan.job.unit
    sheets = option.paper or "no sheets can be planned on this paper"
    found = dict.fromkeys(finding.text for finding in option.findings if finding.rule not in common)
    return {
        "number": option.number, "kind": option.kind, "sheets": sheets, "found": list(found),
        "size": show_size(plan.group.width, plan.group.height, unit),
        "middles": {hung.frame.id: [hung.rect.cx, hung.rect.cy] for hung in plan.frames},
        "screen": screen(on_screen(plan.job, plan)),
    }  # fmt: skip

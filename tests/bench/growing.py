"""What each phase of making a template takes."""

from __future__ import annotations

import gc
import resource
import time
from collections.abc import Callable
from typing import Any, TypeVar

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.documents.template import draw_template
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Job
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets

T = TypeVar("T")


class Made:
    """A template made phase by phase, with the processor time (s) of each, and its peak memory (kB) above the start."""

    def __init__(self, wanted: Job) -> None:
        self.seconds: dict[str, float] = {}
        gc.set_threshold(100_000)  # as the program does
        before = _peak()
        plan = self._timed("plan", lambda: plan_wall(wanted))
        findings = self._timed("find", lambda: find(plan))
        sheets = self._timed("sheets", lambda: plan_sheets(plan, wanted.paper))
        expected = self._timed("error", lambda: expected_error(plan, sheets))
        self.lettering = Lettering()
        template = self._timed("draw", lambda: draw_template(plan, findings, sheets, expected, self.lettering))
        self.pdf = self._timed("write", lambda: write_pdf(template, self.lettering))
        self.memory = _peak() - before
        self.sheets, self.template = sheets, template

    def _timed(self, phase: str, work: Callable[[], T]) -> T:
        start = time.process_time()
        done = work()
        self.seconds[phase] = time.process_time() - start
        return done

    def told(self) -> dict[str, Any]:
        """The numbers, for another process."""
        return {"count": len(self.sheets.sheets), "memory": self.memory, "pdf": len(self.pdf), **self.seconds}


def _peak() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss

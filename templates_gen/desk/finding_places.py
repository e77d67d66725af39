"""Places that are found by computing: looked for beside the work, with how far it is, and stopped when asked."""

from __future__ import annotations

import threading
from collections.abc import Callable

import templates_gen as tg
from templates_gen.arranging.plan import found_key, placed
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace

Told = Callable[[tg.Job, "tg.Plan | InputError", bool], None]
"""Is told the job, its plan or why there is none, and whether the search was stopped before its end."""

_Key = tuple[object, ...]


class FoundPlaces:
    """The last places that were found, and the search that runs."""

    def __init__(self) -> None:
        self._last: tuple[_Key, dict[str, Rect]] | None = None  # one value: threads see both, or neither
        self._looking: _Key | None = None
        self._stop = False
        self.done: float | None = None

    def plan(self, job: tg.Job) -> tg.Plan | None:
        """The plan of a job; None where its places have still to be found.  Raises InputError as `plan_wall` does."""
        if job.group.arrangement != "salon":
            self.stop()
            return tg.plan_wall(job)
        last = self._last
        if last is None or found_key(job) != last[0]:
            return None
        plan = tg.plan_wall(placed(job, last[1]))
        return replace(plan, job=job)

    def begin(self, job: tg.Job, told: Told) -> None:
        """Look for the places, unless they are being looked for; whoever waits is `told` the plan, or why not."""
        key = found_key(job)
        if key == self._looking:
            return
        self._looking, self._stop, self.done = key, False, 0.0
        threading.Thread(target=self._look, args=(job, key, told), daemon=True).start()

    def stop(self) -> None:
        """End the search with the best so far."""
        self._stop = True

    def _look(self, job: tg.Job, key: _Key, told: Told) -> None:
        def watch(done: float) -> bool:
            if key == self._looking:
                self.done = done
            return key == self._looking and not self._stop

        found: tg.Plan | InputError
        try:
            found = tg.plan_wall(job, watch)
        except InputError as error:
            found = error
        if key != self._looking:
            return  # another search has begun since
        if isinstance(found, tg.Plan):
            self._last = key, found.rects
        self._looking, self.done = None, None
        told(job, found, self._stop)

"""How a search is watched, and ended early."""

from __future__ import annotations

from collections.abc import Callable

Watch = Callable[[float], bool]
"""A function that a search is handed, and asks again and again how to go on.

It is told how much of the search's steps is done, from 0 to 1, never less than before.  When it gives True the search
goes on; when it gives False the search ends at once with the best arrangement so far (plain rows and columns are tried
before it is first asked).  It is asked at least every tenth of a second or so, in the thread that searches, so it must
be quick; one that raises ends the search with that.  `plan_wall(job, watch)` and `options(job, count, watch)` hand it
on.  Steps are counted, not timed: a search that is not ended finds the same whether it is watched or not.
"""


def unwatched(_: float) -> bool:
    """A watch that lets every search go on to its end."""
    return True

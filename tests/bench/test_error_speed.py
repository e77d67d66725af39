"""How long the expected error takes: for a job of forty frames, and as the sheets become many.  Run by hand."""

import time

from templates_gen.arranging.plan import plan_wall
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job

MOST = 0.060  # s for forty frames, 10 ms of which are draws; our own design, no source


def best_of(count: int, across: int, tries: int = 9) -> tuple[float, int]:
    """The least time in s for so many frames, and the number of sheets they take."""
    names = [str(at) for at in range(count)]
    rows = tuple(tuple(names[at : at + across]) for at in range(0, count, across))
    plan = plan_wall(job(*(frame(name, 300.0, 400.0) for name in names), group=group(rows)))
    sheets = plan_sheets(plan, plan.job.paper)
    times = []
    for _ in range(tries):
        start = time.perf_counter()
        assert expected_error(plan, sheets) is not None
        times.append(time.perf_counter() - start)
    return min(times), len(sheets.sheets)


def test_forty_frames_take_sixty_milliseconds():
    assert best_of(40, 8)[0] < MOST


def test_the_time_grows_with_the_sheets_and_not_with_their_square():
    (little, few), (much, many) = best_of(100, 13), best_of(800, 36, tries=3)
    assert many > 6 * few
    assert much / little < 2 * many / few

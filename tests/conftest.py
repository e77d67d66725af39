"""Folders that many tests begin in."""

import gc
import os
import signal
import sys

os.environ["OPENBLAS_NUM_THREADS"] = "1"  # before NumPy comes: its threads wait for each other where every core is busy

import pytest
from hypothesis import settings

from templates_gen.__main__ import VALUES
from templates_gen.arranging.search import salon
from templates_gen.drawing.lettering import Lettering
from templates_gen.tiling import quickest
from templates_gen.tolerance import holding
from tests import shared
from tests.made import HARDLY
from tests.running import MINIMAL

LEAST_STEPS = quickest.LEAST_STEPS
"""Of a user's run."""

gc.set_threshold(VALUES)  # as in every run of the program: a tenth of the time of all tests

# bytecode is kept even where the shell wants none: each of some 150 runs of the program as a process of its own would
# compile all of it anew (a fifth of such a run, measured), and each worker every test
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False

# the same cases in every run, and no time limit for one of them: a run fails for what has changed, never by chance.
# Others are drawn by --hypothesis-profile=by-chance
settings.register_profile("the-same", derandomize=True, deadline=None)
settings.register_profile("by-chance", derandomize=False, deadline=None)
settings.load_profile("the-same")

# a shell starts what runs in the background with interrupts ignored, and what the tests start would ignore them, too
signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture(autouse=True, scope="module")
def forgotten(request):
    """What a file of tests keeps for its own tests goes with the last of them: one kept more than a gigabyte."""
    yield
    for value in vars(request.module).values():
        if getattr(value, "__module__", "") == request.module.__name__ and hasattr(value, "cache_clear"):
            value.cache_clear()


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """An empty folder, as the current one."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def small(tmp_path, monkeypatch):
    """A folder with one small job file, as the current one."""
    (tmp_path / "job.toml").write_text(MINIMAL)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def short_searches(monkeypatch):
    """A tenth of the usual steps to find an arrangement, where it does not matter how good it is."""
    usual = salon._steps
    monkeypatch.setattr(salon, "_steps", lambda count: usual(count) // 10)


@pytest.fixture
def hardly_searched(monkeypatch):
    """A few steps for every search, where all that matters is that a job comes through: each still begins and ends."""
    monkeypatch.setattr(salon, "_steps", lambda count: 60)
    monkeypatch.setattr(quickest, "STEPS_A_SHEET", 0)
    monkeypatch.setattr(quickest, "LEAST_STEPS", HARDLY)


@pytest.fixture(scope="session", autouse=True)
def sheets_searched_little():
    """A seventh of the usual steps to find quicker sheets: what holds for sheets holds however few are tried."""
    usual = quickest.STEPS_A_SHEET
    quickest.STEPS_A_SHEET, quickest.LEAST_STEPS = usual // 7, LEAST_STEPS // 7
    yield usual
    quickest.STEPS_A_SHEET, quickest.LEAST_STEPS = usual, LEAST_STEPS


@pytest.fixture
def sheets_searched_as_usual(sheets_searched_little, monkeypatch):
    """All steps of a user's run, for what holds for the sheets that one gets; nothing made before is to be taken."""
    monkeypatch.setattr(quickest, "STEPS_A_SHEET", sheets_searched_little)
    monkeypatch.setattr(quickest, "LEAST_STEPS", LEAST_STEPS)


@pytest.fixture(scope="session", autouse=True)
def shared_by_workers(tmp_path_factory):
    """Where tests run in several processes (`-n`), each takes from a folder of this run what another has made."""
    if "PYTEST_XDIST_WORKER" in os.environ:
        shared.folder = tmp_path_factory.getbasetemp().parent / "shared"
        shared.folder.mkdir(exist_ok=True)
    yield
    shared.folder = None


@pytest.fixture(scope="session", autouse=True)
def fonts_read_once():
    """The program's own font files are read once, not by every run: what is in them, and how long words are, stays."""
    known, opened = {}, Lettering._open

    def looked_up(lettering, path):
        if "site-packages" not in path.parts:
            return opened(lettering, path)
        if path not in known:
            known[path] = opened(lettering, path)
        return lettering._opened.setdefault(path, known[path])

    Lettering._open = looked_up
    yield
    Lettering._open = opened


@pytest.fixture(scope="session", autouse=True)
def found_once():
    """A pile of frames that was arranged once in this run of the tests is not searched for again.

    The same pile gives the same places (its steps are counted, not timed), and a search takes a second or two.
    """
    known = {}
    search = salon.salon

    def looked_up(pile, watch=None):
        key = repr((pile, salon._steps(10)))
        if key not in known:
            known[key] = shared.made_once(("found", key), lambda: search(pile, watch))
        return known[key]

    salon.salon = looked_up
    yield
    salon.salon = search


@pytest.fixture(scope="session", autouse=True)
def planned_once():
    """Sheets that were planned once in this run of the tests, with as many steps of search, are not searched for again.

    The same plan on the same paper gives the same sheets (test_file_level.py compares processes of their own).
    """
    known = {}
    search = holding.tiled

    def looked_up(*asked):
        *given, _ = asked  # what is known of the error follows from the plan
        key = repr((given, quickest.STEPS_A_SHEET, quickest.LEAST_STEPS))
        if key not in known:
            known[key] = shared.made_once(("planned", key), lambda: search(*asked))
        return known[key]

    holding.tiled = looked_up
    yield search
    holding.tiled = search


@pytest.fixture
def sheets_planned_anew(planned_once, monkeypatch):
    """For tests that change how sheets are planned: nothing known is taken, and what they make is not kept."""
    monkeypatch.setattr(holding, "tiled", planned_once)

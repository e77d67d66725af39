"""Runs of `template` that are ended at some moment, and what they leave."""

from __future__ import annotations

import io
import random
import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

import pypdf

from tests.running import MINIMAL

PROGRAM = [sys.executable, "-m", "templates_gen"]


class Killing:
    """Two jobs that are written to one place in turn, so that what is there may be the old or the new, and no other."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.place = folder, folder / "out.pdf"
        self.whole: dict[str, bytes] = {}
        self.seconds = 0.0
        for number, name in enumerate(("one.toml", "two.toml")):
            (folder / name).write_text(MINIMAL.replace("width = 300", f"width = {300 + number}"))
            start = time.monotonic()
            assert self.begun(name).wait(timeout=60) == 0
            self.seconds = time.monotonic() - start
            self.whole[name] = self.place.read_bytes()
            assert len(pypdf.PdfReader(io.BytesIO(self.whole[name])).pages) > 1

    def command(self, job: str) -> list[str]:
        return [*PROGRAM, "template", job, "-o", self.place.name]

    def begun(self, job: str) -> subprocess.Popen[bytes]:
        """A run that writes this job's template."""
        return subprocess.Popen(self.command(job), cwd=self.folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE)

    def parts(self) -> list[Path]:
        """What is in the folder beside the two jobs and the result."""
        return sorted(path for path in self.folder.iterdir() if path.suffix not in (".toml", ".pdf"))

    def ended(self, number: signal.Signals, moment: float, job: str) -> tuple[int, str]:
        """A run sent a signal after so many seconds: its exit code and its stderr."""
        process = self.begun(job)
        time.sleep(moment)
        process.send_signal(number)
        _, told = process.communicate(timeout=60)
        return process.returncode, told.decode()

    def check(self) -> str:
        """Which of the jobs is there.  Fails when anything else is."""
        found = self.place.read_bytes()
        (name,) = (name for name, content in self.whole.items() if content == found)
        return name

    def kill(self, times: int, seed: int, number: signal.Signals = signal.SIGKILL, early: float = 0.0) -> Counter[str]:
        """Runs ended at moments from `early` of a run's usual time to a tenth after it: how often what came of them.

        What is there after each is the old file or the new one, whole.
        """
        rng, counts, there = random.Random(seed), Counter[str](), self.check()
        for _ in range(times):
            job = "one.toml" if there == "two.toml" else "two.toml"
            before = len(self.parts())
            code, told = self.ended(number, rng.uniform(early, 1.1) * self.seconds, job)
            counts["tracebacks"] += "Traceback" in told
            counts["finished first"] += code == 0
            counts["left a part"] += len(self.parts()) > before
            there = self.check()
            counts["new file" if there == job else "old file"] += 1
            counts[f"exit {code}"] += 1
        return counts

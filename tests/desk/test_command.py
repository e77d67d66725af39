"""The command `desk`: what it opens, and how it says what it cannot."""

import os
import socket
import sys
import time
from pathlib import Path
from urllib.parse import urlsplit

import pytest

import templates_gen as tg
from templates_gen.cli import desk as desk_command
from templates_gen.desk import shortcut
from tests import running
from tests.desk import at_the_desk
from tests.desk.at_the_desk import LIBRARY
from tests.jobs import SAMPLES
from tests.running import run


def test_it_opens_a_job_and_ends_a_while_after_the_page_is_closed(folder):
    (folder / "moss.toml").write_text(LIBRARY)
    ran = run("desk", "moss.toml")
    assert ran.code == 0 and ran.out.endswith("&job=moss.toml\n")
    assert ran.err.splitlines()[-1] == "The desk is closed. Everything is saved."
    assert (folder / "moss.toml").read_text() == LIBRARY


def test_it_takes_the_job_out_of_a_template(folder):
    (folder / "ferns.pdf").write_bytes(tg.make_template(tg.read_job(SAMPLES / "fern-prints.toml")).pdf)
    ran = run("desk", "ferns.pdf")
    assert ran.code == 0 and ran.out.endswith("&job=ferns.toml\n")
    assert tg.read_job(folder / "ferns.toml").title == "Fern prints"


def test_without_a_job_it_lists_those_of_the_folder(folder):
    ran = run("desk")
    assert ran.code == 0 and "job=" not in ran.out


def test_what_is_not_there_or_no_job_is_said_and_nothing_is_served(folder):
    (folder / "letter.pdf").write_bytes(b"%PDF-1.4 a letter")
    for name in ("nowhere.toml", "letter.pdf", "nowhere.pdf", "letter.txt"):
        ran = run("desk", name)
        assert (ran.code, ran.out) == (2, "") and name.partition(".")[0] in ran.err


def test_a_port_that_is_taken_is_said(folder):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        ran = run("desk", "--port", port)
    assert (ran.code, ran.out) == (2, "") and port in ran.err and "taken" in ran.err


def test_a_starter_is_put_into_the_home_folder(folder, monkeypatch):
    monkeypatch.setenv("HOME", str(folder))
    ran = run("desk", "--shortcut")
    assert ran.code == 0 and "opens the desk" in ran.out


def test_a_browser_in_the_terminal_does_not_keep_the_desk_from_answering(folder, monkeypatch):
    def reads(address: str) -> bool:  # as lynx does: it asks at once, and comes back when the person has read enough
        running._visit(urlsplit(address))
        read.append(address)
        return True

    read: list[str] = []
    monkeypatch.setattr(running, "look_in", reads)
    ran = run("desk")
    assert ran.code == 0 and read == [ran.out.strip()]


WINDOWS_FOLDER = "/Users/Jörg/100 % Bilder"


def test_a_starter_for_windows_is_read_as_utf_8_and_takes_every_folder(folder, monkeypatch):
    monkeypatch.setenv("OneDrive", str(folder / "OneDrive"))
    (folder / "OneDrive" / "Desktop").mkdir(parents=True)
    place, text = shortcut._starter(Path(WINDOWS_FOLDER), folder, "win32")
    assert place == folder / "OneDrive" / "Desktop" / "Templates desk.bat"
    lines = text.split("\r\n")
    assert lines[1] == "chcp 65001 >nul" and lines[2] == 'cd /d "/Users/Jörg/100 %% Bilder"'
    assert lines[3].endswith('" -m templates_gen desk') and "\n" not in text.replace("\r\n", "")
    monkeypatch.delenv("OneDrive")
    assert shortcut._starter(Path(WINDOWS_FOLDER), folder / "home", "win32")[0].parent == folder / "home" / "Desktop"


@pytest.mark.parametrize("system", ["win32", "darwin", "linux"])
def test_a_starter_of_the_program_without_python_starts_the_program(system, folder, monkeypatch):
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    monkeypatch.setattr(sys, "executable", "/opt/templates-gen/templates-gen")
    text = shortcut._starter(folder, folder, system)[1]
    assert "templates_gen" not in text and "/templates-gen" in text and " desk" in text


@pytest.mark.parametrize("screen", ["", ":0"])
def test_without_a_screen_no_browser_takes_the_terminal(screen, folder, monkeypatch):
    """On a machine reached by a terminal alone, webbrowser finds lynx and the like, which show no page of ours."""
    opened: list[str] = []
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("DISPLAY", screen)
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr("webbrowser.open", opened.append)
    desk_command._opener("", True)("http://127.0.0.1:1/?key=k")
    end = time.monotonic() + 5
    while screen and not opened and time.monotonic() < end:
        time.sleep(0.01)
    assert len(opened) == bool(screen)


@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="Linux alone tells a process's memory so")
def test_a_desk_takes_no_more_memory_with_every_paper(folder):
    (folder / "moss.toml").write_text(LIBRARY)
    with at_the_desk.running(folder, "moss.toml") as desk:

        def after(count: int) -> float:
            for _ in range(count):
                made = desk.asked("POST", "/paper?job=moss.toml", b'{"kind": "labels"}')
                assert made.status == 200, made.read()
            pages = int(Path(f"/proc/{desk.process.pid}/statm").read_text().split()[1])
            return pages * os.sysconf("SC_PAGE_SIZE") / 2**20

        begun = after(6)
        assert after(20) < begun + 20  # MiB; with a run's own setting it was 52 more (measured)

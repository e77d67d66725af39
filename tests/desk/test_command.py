"""The command `desk`: what it opens, and how it says what it cannot."""

import socket

import templates_gen as tg
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

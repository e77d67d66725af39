"""Where results may be written: never over a file that is not ours, and whole or not at all."""

import pytest

from templates_gen.base import output
from templates_gen.base.errors import OutputError
from tests.running import MINIMAL, listing, run

OUTPUTS = [["template", "job.toml", "-o"], ["check", "job.toml", "--report"], ["schedule", "job.toml", "--report"],
           ["measure", "job.toml", "-o"], ["labels", "job.toml", "-o"],
           ["template", "job.toml", "-o", "made.pdf", "--report"]]  # fmt: skip


@pytest.mark.parametrize("command", OUTPUTS)
def test_a_file_that_is_not_ours_stays_and_nothing_else_is_written(command, small):
    (small / "notes").write_text("mine")
    before = listing(small)
    ran = run(*command, "notes")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("error: ") and "--force" in ran.err
    assert "notes: already exists" in ran.err
    assert listing(small) == before


@pytest.mark.parametrize("name", ["nails.csv", "nails.md", "nails.txt"])
def test_of_plain_text_that_the_program_wrote_itself_it_does_not_say_otherwise(name, small):
    assert run("schedule", "job.toml", "-o", name).code == 0
    ran = run("schedule", "job.toml", "-o", name)
    assert ran.code == 2 and "not made by this program" not in ran.err
    assert ran.err == f"error: {name}: already exists, and may hold what somebody typed; give --force to overwrite it\n"


@pytest.mark.parametrize("content", [b"", b"%PDF-1.4\n%somebody else's", b'{"format": 2}', b"[1]"])
def test_only_our_own_kinds_of_file_are_replaced(content, small):
    (small / "job.pdf").write_bytes(content)
    assert run("template", "job.toml").code == 2
    assert (small / "job.pdf").read_bytes() == content


@pytest.mark.parametrize("command", OUTPUTS)
def test_force_replaces_what_is_not_ours(command, small):
    (small / "notes").write_text("mine")
    assert run(*command, "notes", "--force").code == 0
    assert (small / "notes").read_bytes() != b"mine"


@pytest.mark.parametrize("command", OUTPUTS)
def test_what_the_program_made_it_replaces_with_the_same_bytes(command, small):
    assert run(*command, "result").code == 0
    before = listing(small)
    assert run(*command, "result").code == 0
    assert listing(small) == before


@pytest.mark.parametrize("command", OUTPUTS)
@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("there", "is a folder"),
        ("no/such/x.pdf", "there is no folder"),
        ("job.toml/x.pdf", "there is no folder"),
    ],
)
def test_a_place_that_cannot_be_written_is_refused_and_nothing_is_left(command, place, words, small):
    (small / "there").mkdir()
    before = listing(small)
    ran = run(*command, place)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("error: ") and f"{place}: " in ran.err and words in ran.err
    assert listing(small) == before


@pytest.mark.parametrize("command", OUTPUTS)
def test_a_refusal_names_the_place_as_it_was_typed(command, small):
    (small / "notes").write_text("mine")
    assert run(*command, "notes").err.startswith("error: notes: ")


def test_a_report_in_the_place_of_the_template_is_refused(small):
    before = listing(small)
    ran = run("template", "job.toml", "-o", "result", "--report", "result")
    assert (ran.code, ran.out) == (2, "")
    assert listing(small) == before


@pytest.mark.parametrize("option", ["-o", "--report"])
def test_the_job_file_is_not_replaced_by_what_is_made_of_it_even_by_force(option, small):
    run("template", "job.toml", option, "job.toml", "--force")
    assert (small / "job.toml").read_text() == MINIMAL


@pytest.mark.parametrize("step", ["_replace", "os.fsync"])
def test_a_failure_while_writing_leaves_the_old_file_and_nothing_half_written(step, small, monkeypatch):
    assert run("template", "job.toml").code == 0
    before = listing(small)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(f"templates_gen.base.output.{step}", full)
    ran = run("template", "job.toml", "--paper", "a3")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == (
        "error: job.pdf: cannot be written: No space left on device\n  make room on this disk, or choose another\n"
    )
    assert listing(small) == before


@pytest.mark.parametrize("force", [[], ["--force"]])
@pytest.mark.parametrize("command", OUTPUTS)
def test_a_write_protected_file_stays(command, force, small):
    assert run(*command, "result").code == 0
    (small / "result").chmod(0o444)
    before = listing(small)
    ran = run(*command, "result", *force)
    assert (ran.code, ran.out) == (2, "")
    assert "result: is write-protected\n  choose another name" in ran.err
    assert listing(small) == before


def test_a_file_that_is_replaced_keeps_its_rights(small):
    (small / "job.toml").chmod(0o640)
    output.write_result(small / "job.toml", b"new", force=True)
    assert (small / "job.toml").stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("command", OUTPUTS)
def test_a_file_that_somebody_makes_meanwhile_stays(command, small, monkeypatch):
    sure = output.os.fsync

    def meanwhile(handle: int) -> None:
        (small / "result").write_text("mine")
        sure(handle)

    monkeypatch.setattr("templates_gen.base.output.os.fsync", meanwhile)
    ran = run(*command, "result")
    assert (ran.code, ran.out) == (2, "") and "result: already exists" in ran.err
    assert (small / "result").read_text() == "mine"
    assert [path.name for path in small.iterdir() if path.name not in ("job.toml", "result")] == []


SEVERAL = [["template", "job.toml", "-o", "made.pdf", "--report", "made.json"],
           ["template", "job.toml", "--one-piece", "-o", "made.pdf"],
           ["schedule", "job.toml", "-o", "made.csv", "--report", "made.json"],
           ["measure", "job.toml", "-o", "made.pdf", "--csv", "made.csv"],
           ["correct", "job.toml", "hung.csv", "--template", "-o", "made.pdf", "--report", "made.json"]]  # fmt: skip


@pytest.mark.parametrize("command", SEVERAL)
def test_of_several_results_none_is_written_where_the_second_cannot_be(command, small, monkeypatch):
    (small / "hung.csv").write_text("frame,left,right\nA,1608,1608\n")
    before, sure, called = listing(small), output.os.fsync, []

    def second_fails(handle: int) -> None:
        called.append(handle)
        if len(called) == 2:
            raise OSError(28, "No space left on device")
        sure(handle)

    monkeypatch.setattr("templates_gen.base.output.os.fsync", second_fails)
    ran = run(*command)
    assert (ran.code, ran.out) == (2, "")
    assert "cannot be written: No space left on device" in ran.err
    assert listing(small) == before


def test_a_link_is_followed_and_stays_a_link(small):
    (small / "real").mkdir()
    (small / "job.pdf").symlink_to(small / "real" / "job.pdf")
    assert run("template", "job.toml").code == 0
    assert (small / "job.pdf").is_symlink()
    assert (small / "real" / "job.pdf").read_bytes().startswith(b"%PDF-")


def test_a_library_user_gets_the_same_refusal(small):
    with pytest.raises(OutputError, match="may hold what somebody typed"):
        output.write_result(small / "job.toml", b"{}")

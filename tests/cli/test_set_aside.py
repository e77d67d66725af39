"""A template that is written over is kept: its paper may be printed, or on the wall, already."""

from pathlib import Path

from tests.running import run

LATER = "drop = 60", "drop = 68"
"""mm: a drop that was measured again after the template was made."""


def measured_again(folder: Path) -> None:
    job = folder / "job.toml"
    job.write_text(job.read_text().replace(*LATER))


def test_the_template_before_is_kept_and_the_next_one_goes_on_from_it(small: Path) -> None:
    assert run("template", "job.toml").code == 0
    printed = (small / "job.pdf").read_bytes()
    measured_again(small)
    again = run("template", "job.toml")
    assert again.code == 0
    assert "--since job-before.pdf prints only what has changed" in " ".join(again.err.split())
    assert (small / "job-before.pdf").read_bytes() == printed != (small / "job.pdf").read_bytes()
    assert run("template", "job.toml", "--since", "job-before.pdf").code == 0
    assert (small / "job-before.pdf").read_bytes() == printed


def test_nothing_is_kept_of_the_same_template_nor_of_an_update_nor_of_one_without_its_sheets(small: Path) -> None:
    for _ in range(2):
        assert "is kept" not in run("template", "job.toml").err
    measured_again(small)
    assert "is kept" not in run("template", "job.toml", "--since", "job.pdf").err
    assert "is kept" not in run("template", "job.toml", "-o", "other.pdf", "--anonymous").err
    assert "is kept" not in run("template", "job.toml", "-o", "other.pdf").err
    assert not list(small.glob("*-before.pdf"))


def test_somebody_elses_file_stays_even_when_told_to_write_over(small: Path) -> None:
    (small / "job-before.pdf").write_text("notes of the client")
    run("template", "job.toml")
    measured_again(small)
    ran = run("template", "job.toml", "--force")
    assert (ran.code, "is kept" in ran.err) == (0, False)
    assert (small / "job-before.pdf").read_text() == "notes of the client"

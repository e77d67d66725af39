"""The command `proof`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.base.file_names import quoted
from templates_gen.base.output import STDOUT, ending_of, write_result
from templates_gen.base.words import counted
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on
from templates_gen.cli.results import check_results, place_beside, show_made
from templates_gen.cli.showing import STOPPED, show_findings, wrapped

FOR_THE_CLIENT = ("image-missing", "arrangement-found")
"""Notes about what the client sees and agrees to; all others are for the hanging day."""


@click.command()
@takes.job_argument
@takes.output_option(metavar="FILE", help="A .pdf, .svg or .png; default: JOB-proof.pdf.")
@takes.wall_option
@takes.paper_option()
@click.option("--sign", is_flag=True, help="Add a line for the client to sign.")
@click.option("--zones", is_flag=True, help="For the installer: the nails, and where cables may run.")
@click.option(
    "--dpi", type=click.IntRange(20, 1200), default=150, metavar="N", help="Resolution of a .png; default: 150."
)
@takes.font_option
@takes.force_option
@click.pass_context
def proof(
    context: click.Context, job: Path, output: Path | None, wall: Path | None, paper: str | None, sign: bool,
    zones: bool, dpi: int, fonts: tuple[Path, ...], force: bool,
) -> None:  # fmt: skip
    """Draw the wall to scale with frames and pictures, for the client's approval.

    One page of the job's paper: the wall at the largest usual scale that fits
    (1:5, 1:10, 1:20, ... of ISO 5455, and those between that rooms are drawn at),
    with what is on it, the frames with their pictures, a figure of 1.7 m, and what
    wall and group measure.  A PDF, to
    be printed at actual size (its scale bar shows whether it was), an SVG with a
    group for every layer, and a PNG show the same drawing.

    --zones hatches where cables may run by the wall's wiring.  Look with a
    detector all the same.

    The proof is there to be discussed, so it is drawn even when something stops
    the template: stops and warns are shown, and the exit code is then 1.

    \b
    Example:
      templates-gen proof samples/fern-prints.toml -o fern-proof.pdf --sign
    """
    import templates_gen as tg
    from templates_gen.checks import stops
    from templates_gen.checks.finding import NOTE
    from templates_gen.cli.watching import planned
    from templates_gen.documents.making import on_paper
    from templates_gen.documents.proof.layers import Asked
    from templates_gen.documents.proof.making import ENDINGS, proof_of

    ending = ending_of(output, ENDINGS) if output and output != STDOUT else "pdf"
    with about(job):
        read = on_paper(job_on(job, wall), paper)
        target = output or place_beside(job, wall, "proof")
        check_results(job, read, [target], force, [wall])
        plan = planned(read)
        findings = tg.find(plan)
        made = proof_of(plan, ending, Asked(sign, zones), dpi, fonts)
    drawn = [found for found in findings if found.level != NOTE or found.rule in FOR_THE_CLIENT]
    show_findings(drawn)
    if rest := len(findings) - len(drawn):
        check = f"templates-gen check {quoted(job)}" + (f" --wall {quoted(wall)}" if wall else "")
        click.echo(wrapped(f"{counted(rest, 'note')} for whoever hangs it:  {check}"), err=True)
    write_result(target, made.content, force)
    show_made(target, f"the wall at 1:{made.scale}")
    if stops(findings):
        click.echo("drawn for discussion; settle what is marked stop before you print a template", err=True)
        context.exit(STOPPED)

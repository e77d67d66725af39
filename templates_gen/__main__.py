"""The program `templates-gen`: runs a command and turns whatever is raised into one message and an exit code."""

from __future__ import annotations

import gc
import sys

import click

from templates_gen.commands import program
from templates_gen.commands.common import show_error
from templates_gen.errors import TemplatesError

INTERRUPTED = 130  # 128 + SIGINT, as shells report it


def main() -> None:
    """Run the program: exit 0 when fine, 1 for a stopping finding, 2 for wrong use or bad input, 130 interrupted."""
    # A short run makes many small values and hardly a cycle: to look for cycles at every 700 values, as is the
    # default, costs a fifth of the whole run.
    gc.set_threshold(100_000)
    try:
        code = program.main(standalone_mode=False)
        sys.stdout.flush()
    except TemplatesError as error:
        show_error(error)
        code = error.exit_code
    except click.ClickException as error:
        error.show()
        code = error.exit_code
    except (click.Abort, KeyboardInterrupt):
        click.echo("interrupted", err=True)
        code = INTERRUPTED
    except (BrokenPipeError, SystemExit):
        code = 0  # whoever read our output has gone (click then leaves by SystemExit): nobody is left to tell
    sys.exit(code if isinstance(code, int) else 0)


if __name__ == "__main__":
    main()

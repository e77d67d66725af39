"""The program `templates-gen`: runs a command and turns whatever is raised into one message and an exit code."""

from __future__ import annotations

import contextlib
import gc
import os
import signal
import sys

ENDING = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
"""The signals that end the program, where the system has them."""

VALUES = 1_000_000
"""New values after which cycles of them are looked for: a run makes many small values and hardly a cycle.  To look at
every 700, as is the default, costs a fifth of a run, and at every 100,000 a tenth of one of 200 frames, where it saves
13 of 105 MiB; of 1,000 frames it takes no more memory without (measured)."""

STOPPED_BY = 128  # and the signal's number: 130 for SIGINT, as shells report it


def main() -> None:
    """Run the program: exit 0 when fine, 1 for a stopping finding, 2 for wrong use or bad input, 130 interrupted."""
    gc.set_threshold(VALUES)
    _open_closed()
    try:
        code = _heeding_signals()
    except KeyboardInterrupt as stopped:
        _say("interrupted")
        code = STOPPED_BY + next(iter(stopped.args), signal.SIGINT)
    _let_go()
    sys.exit(code)


def _open_closed() -> None:
    """A stream that was closed is from now on an empty one: nobody need ask for it, and no result gets its number."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))


def _heeding_signals() -> int:
    """Run the command; a signal unwinds it by a KeyboardInterrupt, so that it clears away what it was writing."""
    for number in ENDING:
        if signal.getsignal(number) != signal.SIG_IGN:  # as nohup has SIGHUP ignored
            signal.signal(number, _stop)
    before, sys.unraisablehook = sys.unraisablehook, _lost
    try:
        return _run()
    finally:
        _heed_no_more()
        sys.unraisablehook = before


def _stop(number: int, _: object) -> None:
    _heed_no_more()
    raise KeyboardInterrupt(number)


def _lost(failed: sys.UnraisableHookArgs) -> None:
    """A signal that came in a callback of Python's own, which lets no exception out, ends the program all the same."""
    if isinstance(failed.exc_value, KeyboardInterrupt):
        _say("interrupted")
        os._exit(STOPPED_BY + next(iter(failed.exc_value.args), signal.SIGINT))
    sys.__unraisablehook__(failed)


def _heed_no_more() -> None:
    """From now on a signal ends the program at once: the second one, and one that finds it with its work done."""
    for number in ENDING:
        if signal.getsignal(number) is _stop:
            signal.signal(number, signal.SIG_DFL)


def _run() -> int:
    """Run the command; its exit code."""
    import click  # from here on an interrupt is ours to tell

    from templates_gen.base.errors import TemplatesError
    from templates_gen.base.file_names import dashed
    from templates_gen.cli import program
    from templates_gen.cli.showing import show_error
    from templates_gen.cli.terminal import write_what_can_be_shown

    write_what_can_be_shown()
    try:
        code = program.main(standalone_mode=False)
        return code if isinstance(code, int) else 0
    except TemplatesError as error:
        with contextlib.suppress(OSError):
            show_error(error)
        return error.exit_code
    except click.ClickException as error:
        with contextlib.suppress(OSError):
            error.show()
        if isinstance(error, click.NoSuchOption):
            _say(*dashed(sys.argv[1:]))
        return error.exit_code
    except click.Abort as error:
        stopped = error.__cause__ or error.__context__  # none at the end of what is typed
        raise KeyboardInterrupt(*(stopped.args if isinstance(stopped, KeyboardInterrupt) else ())) from None
    except (BrokenPipeError, SystemExit):
        return 0  # whoever read our output has gone (click then leaves by SystemExit): nobody is left to tell
    except MemoryError:
        _say("error: not enough memory for a job of this size")
        return TemplatesError.exit_code
    except OSError as error:
        _say(f"error: {error.filename or 'the output cannot be written'}: {error.strerror or error}")
        return TemplatesError.exit_code


def _say(*lines: str) -> None:
    """Lines on stderr, if there is still one."""
    with contextlib.suppress(OSError):
        print(*lines, sep="\n", file=sys.stderr)


def _let_go() -> None:
    """Write out what the streams still hold; where that fails it has been told, and Python need not try again.

    Nor need it look for cycles once more among all that goes away with the process: that takes a fourteenth of a run.
    """
    gc.freeze()
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except OSError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


if __name__ == "__main__":
    main()

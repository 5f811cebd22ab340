"""The command line: `tarebook COMMAND`, one module a command.

Every command module has the same four names: `HELP` (a line), `EXAMPLES` (run by the tests), `add_options(parser)`
and `run(options) -> exit code`. Whatever a command needs is imported inside `run`, so that `--version` and `--help`
are quick. A refusal is one sentence on stderr and exit code 1; wrong usage is 2; nobody is shown a traceback.
"""

import os
import sys
from collections.abc import Sequence

from tarebook.errors import TarebookError


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and gives its exit code."""
    from tarebook.cli.arguments import build_parser

    options = build_parser().parse_args(arguments)
    try:
        code: int = options.run(options)
        sys.stdout.flush()
        return code
    except TarebookError as problem:
        return _refuse(problem)
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        # The reader, such as `head`, has seen enough; the flush at exit must not complain either.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except Exception as fault:
        return _refuse(_written_down(fault))


def _refuse(problem: TarebookError) -> int:
    from tarebook.cli.words import plain_lines

    print(plain_lines(f"tarebook: {problem.sentence} {problem.do}"), file=sys.stderr)
    return 1


def _written_down(fault: Exception) -> TarebookError:
    import tempfile
    import traceback

    with tempfile.NamedTemporaryFile("w", prefix="tarebook-fault-", suffix=".txt", delete=False) as file:
        traceback.print_exception(fault, file=file)
    return TarebookError("command_broken", reason=str(fault) or type(fault).__name__, file=file.name)

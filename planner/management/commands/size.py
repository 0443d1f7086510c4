"""`size`: a problem file in, a plan out; needs no database.

Takes a problem file's path; prints a summary, writes the plan where --out says. Exit 0 an order, 1 none exists,
2 faults in the file, 3 no order within the time.
"""

import argparse
import json
import math
import os
import tempfile
from pathlib import Path

from apiary.management.plain_command import PlainCommand
from planner.sizing.faults import Faults
from planner.sizing.reading import read
from planner.solution import as_json, nearby, solve_apart
from planner.solution.nearby import study_apart
from planner.solution.records import INFEASIBLE, UNBOUNDED
from planner.solution.summary import summary

HELP = """Work out an order from a problem file.

A problem file (.json) says what gear you own, what suppliers sell and at what price, and what the season may ask
for. This reads it, finds the order worth most money, prints it, and with --out writes the whole plan to a file: what
to buy now, and for every way the year may go what is used, made and left short. Every plan this program makes can be
made again this way. With --next-door it also writes what one pack more or fewer of every line would do, and what other
budgets would earn. If the file has faults each is listed with its place in the file, and nothing is written."""

EXITS = """It ends with 0 where there is an order, 1 where none can exist (it says why), 2 where the file has faults,
3 where time ran out before any order was found."""


class Command(PlainCommand):
    help = HELP
    requires_system_checks = []

    def create_parser(self, *args, **kwargs):
        kwargs.update(epilog=EXITS, formatter_class=argparse.RawDescriptionHelpFormatter)
        return super().create_parser(*args, **kwargs)

    def add_arguments(self, parser):
        parser.add_argument("problem", metavar="PROBLEM.json", help="the problem file to work out")
        parser.add_argument("--out", metavar="PLAN.json", help="write the whole plan to this file")
        parser.add_argument(
            "--solver",
            choices=("highs", "cbc"),
            default="highs",
            help="which solver; both give as good an order",
        )
        parser.add_argument(
            "--gap",
            type=_gap,
            default=0.001,
            help="stop when no order can be better by this share (0.001 = 0.1 %%)",
        )
        parser.add_argument(
            "--next-door",
            metavar="NEXT.json",
            help="also work out what lies next door to the order, and write it to this file: a pack more or fewer of "
            "every line, and the best order at twelve budgets; it takes up to --seconds once more",
        )
        parser.add_argument("--seconds", type=_seconds, default=60.0, help="stop after about so many seconds")

    def handle(self, *args, **options):
        try:
            text = Path(options["problem"]).read_text(encoding="utf-8-sig")
            problem = read(text)
        except (OSError, UnicodeDecodeError) as error:
            self._refuse(
                [f"{options['problem']} cannot be read: {getattr(error, 'strerror', None) or error}"]
            )
        except Faults as faults:
            self._refuse(faults.messages)
        for path in (options["out"], options["next_door"]):
            self._check_out(path)
        plan = solve_apart(problem, solver=options["solver"], gap=options["gap"], seconds=options["seconds"])
        if options["out"]:
            self._write(options["out"], as_json(plan))
        self.stdout.write(summary(problem, plan))
        if plan.status in (INFEASIBLE, UNBOUNDED):
            raise SystemExit(1)
        if not plan.is_order:
            raise SystemExit(3)
        if options["next_door"]:
            self._look_next_door(problem, plan, options)

    def _look_next_door(self, problem, plan, options):
        found = study_apart(problem, plan, gap=options["gap"], seconds=options["seconds"])
        self._write(options["next_door"], nearby.as_json(found))
        if found.not_told:
            self.stdout.write(found.not_told)

    def _refuse(self, messages):
        for message in messages:
            self.stderr.write(message)
        raise SystemExit(2)

    def _check_out(self, out):
        """Says before the solve, not after it, that the plan's folder is not there."""
        if out and not Path(out).resolve().parent.is_dir():
            self._refuse([f"{out} cannot be written: there is no folder {Path(out).resolve().parent}"])

    def _write(self, out, data):
        """Writes beside the target first, so that a plan is there whole or not at all."""
        target = Path(out).resolve()
        try:
            handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                json.dump(data, file, ensure_ascii=False, indent=1, allow_nan=False)
                file.write("\n")
            os.chmod(name, 0o666 & ~_umask())
            os.replace(name, target)
        except OSError as error:
            self._refuse([f"{out} cannot be written: {error.strerror}"])


def _umask():
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _gap(text):
    return _number(text, 0, 1, "a share from 0 to 1, such as 0.001")


def _seconds(text):
    return _number(text, 0.01, 1e6, "a number of seconds above 0")


def _number(text, lowest, highest, what):
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not lowest <= value <= highest:
        raise argparse.ArgumentTypeError(f"must be {what}, got {text!r}")
    return value

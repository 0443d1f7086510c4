"""The whole planning of a season from the command line: reads the books, prints the order, writes its files.

Takes a season's answers (or the usual ones) and how hard to look; gives the order, workbook, problem and plan.
Stores no run and orders nothing: that is done on the Season page.
"""

import datetime as dt
import json
import sys
from decimal import Decimal, InvalidOperation
from pathlib import Path

from django.core.management.base import CommandError
from django.utils import timezone

from apiary.management.books_command import BooksCommand
from planner import runs
from planner.checking.check import other_problems
from planner.errors import NoOrderFound, NoSuchSeason
from planner.models import Season
from planner.plan.text import as_text
from planner.sizing.writing import dump
from planner.solution.plan_json import as_json
from planner.supposing import words_of
from planner.what_if_options import add_what_if, what_if_of
from planner.workbook import workbook_of

EXIT_WITHOUT_ORDER = {"infeasible": 1, "unbounded": 1, "time_limit": 3}


class Command(BooksCommand):
    help = (
        "Works out your winter order from what the books hold today: what to buy, from whom, by when, and why. "
        "It prints the order and orders nothing. Ends with 0 when there is an order, 1 when none is possible, "
        "2 when something in the books or answers has to be put right first, 3 when the time ran out."
    )

    def add_arguments(self, parser):
        add = parser.add_argument
        add(
            "--season",
            metavar="NAME",
            help="Whose answers to use. Default: the latest season, else the usual ones.",
        )
        add(
            "--day",
            type=_day,
            metavar="DATE",
            help="Day of the order, as 2027-01-15. Default: the season's, else today.",
        )
        add(
            "--budget",
            type=_money,
            metavar="B",
            help="The most to spend now, shipping included. Default: the season's.",
        )
        add(
            "--scenarios",
            type=_count,
            default=100,
            metavar="N",
            help="How many ways the year may go are drawn (100).",
        )
        add("--seed", type=int, default=1, metavar="S", help="Another number draws other years (1).")
        add(
            "--solver",
            choices=["highs", "cbc"],
            default="highs",
            help="Which solver looks for the order (highs).",
        )
        add(
            "--gap",
            type=_share,
            default=0.001,
            help="Stop when nothing can be better by more than this share (0.001).",
        )
        add("--seconds", type=_seconds, default=120.0, help="The longest the solver may look (120).")
        add_what_if(parser)
        _add_trial(parser)
        _add_files(parser)

    def handle(self, *args, **options):
        for path in (options[name] for name in ("workbook", "problem", "plan", "beliefs_problems")):
            if path and not path.parent.is_dir():
                raise CommandError(f"There is no folder {path.parent}: make it first.", returncode=2)
        try:
            outcome = self._outcome(options)
        except NoOrderFound as refusal:
            raise CommandError(
                str(refusal), returncode=EXIT_WITHOUT_ORDER.get(refusal.status, 1)
            ) from refusal
        except runs.PLAIN_REFUSALS as refusal:
            raise CommandError(runs.sentence_of(refusal), returncode=2) from refusal
        self.stdout.write(as_text(outcome.report))
        self._write(options["workbook"], lambda: workbook_of(outcome.report))
        self._write(options["problem"], lambda: dump(outcome.problem).encode())
        self._write(options["plan"], lambda: json.dumps(as_json(outcome.plan), indent=1).encode())
        if options["beliefs_problems"]:
            self._write_beliefs(options["beliefs_problems"], outcome, options["seed"])

    def _write_beliefs(self, folder, outcome, seed):
        """Each problem the beliefs are checked by, whether or not the check was asked for or reached it."""
        folder.mkdir(exist_ok=True)
        others = other_problems(outcome.operation, outcome.assumptions, outcome.problem, seed=seed)
        written = [(folder / f"{name}.json").write_bytes(dump(problem).encode()) for name, problem in others]
        self.stdout.write(f"Written: {len(written)} problems in {folder}")

    def _outcome(self, options):
        season = _season(options["season"])
        day = options["day"] or (season.starts_on if season else timezone.localdate())
        begun = None
        if options["day"] and season and day != season.starts_on:
            begun = season.starts_on
            runs.checked_day(season, day, today=timezone.localdate())
        answers, what_if = what_if_of(options, day, begun, season.answers if season else {})
        if what_if:
            self.stdout.write(
                f"What if: {words_of(what_if)}. Nothing is ordered on what is only supposed.\n\n"
            )
        budget = options["budget"] if options["budget"] is not None else season and season.budget
        settings = runs.Settings(
            budget=budget,
            usual_order=season.usual_order if season else {},
            bad_years_curve=options["bad_years"],
            beliefs=options["beliefs"],
            beliefs_seconds=options["beliefs_seconds"],
            begun=begun,
            what_if=what_if,
            **{
                name: options[name]
                for name in ("scenarios", "seed", "solver", "gap", "seconds", "trial", "nearby_seconds")
            },
        )
        return runs.plan_order(day, answers, settings, progress=self._progress())

    def _progress(self):
        """Tells each stage once, on a terminal only: a file keeps just the order."""
        told = set()

        def progress(stage, bound=None, gap=None):
            word = stage.split(" season ")[0]
            if sys.stderr.isatty() and word not in told:
                told.add(word)
                self.stderr.write(f"… {word}", self.style.NOTICE)

        return progress

    def _write(self, path, content):
        if path:
            path.write_bytes(content())
            self.stdout.write(f"Written: {path}")


def _add_trial(parser):
    """How the order is tried once it is found."""
    parser.add_argument(
        "--trial",
        type=_trial,
        default=300,
        metavar="N",
        help="Fresh seasons the order is tried on against others; 0 leaves the trial out (300).",
    )
    parser.add_argument(
        "--nearby-seconds",
        type=_nearby_seconds,
        default=45.0,
        metavar="SECONDS",
        help="The longest to ask what one pack more or fewer of each line and other budgets would do; 0: not asked (45).",
    )
    parser.add_argument(
        "--bad-years",
        action="store_true",
        help="Also draw the curve of the mean season against bad years: some six orders are worked out for it.",
    )

    parser.add_argument(
        "--beliefs",
        action="store_true",
        help="Also check the beliefs: every answer nobody can be sure of lower and higher, and what this order then "
        "loses against the best.",
    )
    parser.add_argument(
        "--beliefs-seconds",
        type=_seconds,
        default=90.0,
        metavar="SECONDS",
        help="The longest that check may take; what it does not reach is named (90).",
    )


def _add_files(parser):
    """Where its files go."""
    parser.add_argument(
        "--workbook",
        type=Path,
        metavar="FILE",
        help="Write the order as a workbook (.xlsx) with all reasons.",
    )
    parser.add_argument(
        "--problem",
        type=Path,
        metavar="FILE",
        help="Write the sizing problem that was solved, for `size`.",
    )
    parser.add_argument("--plan", type=Path, metavar="FILE", help="Write the solver's plan.")
    parser.add_argument(
        "--beliefs-problems",
        type=Path,
        metavar="DIR",
        help="Write the sizing problem of every answer lower and higher into this folder, for `size`.",
    )


def _season(name):
    if name is None:
        return Season.objects.first()
    season = Season.objects.filter(name=name).first()
    if season is None:
        known = ", ".join(Season.objects.values_list("name", flat=True)) or "none yet"
        raise NoSuchSeason(name=name, known=known)
    return season


def _day(text):
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise CommandError(f"--day: write the day as 2027-01-15, got {text!r}.", returncode=2) from None


def _money(text):
    try:
        value = Decimal(text)
    except InvalidOperation:
        value = None
    if value is None or not value.is_finite() or value < 0 or value != round(value, 2):
        raise CommandError(f"--budget: write a sum as 4500 or 4500.50, got {text!r}.", returncode=2)
    return value


def _count(text):
    if not text.isdecimal() or not 1 <= int(text) <= 10_000:
        raise CommandError(f"--scenarios: a whole number from 1 to 10,000, got {text!r}.", returncode=2)
    return int(text)


def _trial(text):
    if not text.isdecimal() or (int(text) and not 10 <= int(text) <= 10_000):
        raise CommandError(f"--trial: 0, or a whole number from 10 to 10,000, got {text!r}.", returncode=2)
    return int(text)


def _number(text, name, highest):
    try:
        value = float(text)
    except ValueError:
        value = -1.0
    if not 0 <= value <= highest:
        raise CommandError(f"--{name}: a number from 0 to {highest:g}, got {text!r}.", returncode=2)
    return value


def _share(text):
    return _number(text, "gap", 1)


def _seconds(text):
    return _number(text, "seconds", 86_400)


def _nearby_seconds(text):
    return _number(text, "nearby-seconds", 86_400)

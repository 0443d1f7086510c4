"""What is supposed on the command line: prices, a supplier left out, survival, colonies wanted, mediums alone.

Takes a command's options and the season's answers; gives the answers so changed and the supposition as supposing.py
takes it. What will not do ends the command with a sentence and 2.
"""

from django.core.management.base import CommandError

from planner.errors import NoMediumSet
from planner.intake import operation_as_of
from planner.supposing import ALL, LEAST_PERCENT, MOST_COLONIES, MOST_PERCENT, mediums_of


def add_what_if(parser):
    """The options, as the what-if page asks them; a budget has its own."""
    add = parser.add_argument
    add(
        "--prices",
        type=_percents,
        metavar="PER_CENT",
        help="What if all prices were so many per cent up, or down (-10); mill=5 for one supplier's, commas between.",
    )
    add(
        "--without",
        action="append",
        default=[],
        metavar="SUPPLIER",
        help="What if that supplier were left out; told more than once for more of them.",
    )
    add(
        "--survive",
        type=_of_a_hundred,
        metavar="N",
        help="What if so many of a hundred colonies came through the winter.",
    )
    add(
        "--colonies",
        type=_colonies,
        metavar="N",
        help="What if you wanted so many colonies going into next winter.",
    )
    add(
        "--mediums",
        action="store_true",
        help="What if new hives and supers were in mediums alone; what stands today stays as it is.",
    )


def what_if_of(options, day, begun, answers):
    """(answers with those supposed, what is supposed)."""
    what_if = {key: options[key] for key in ("prices", "without") if options[key]}
    supposed = {}
    if options["survive"] is not None:
        supposed["survival_share"] = options["survive"]
    if options["colonies"] is not None:
        supposed["target_colonies"] = options["colonies"]
    if options["mediums"]:
        found = mediums_of(operation_as_of(day, begun=begun), answers)
        if found is None:
            raise NoMediumSet()
        what_if["home"] = found["home"]
        supposed |= found["answers"]
    return answers | supposed, what_if | ({"answers": supposed} if supposed else {})


def _percents(text):
    """{supplier or "all": per cent}."""
    found = {}
    for piece in text.split(","):
        who, _, share = piece.rpartition("=")
        try:
            found[who or ALL] = int(share)
        except ValueError:
            found[who or ALL] = MOST_PERCENT + 1
        if not LEAST_PERCENT <= found[who or ALL] <= MOST_PERCENT:
            span = f"from {LEAST_PERCENT} to {MOST_PERCENT}"
            raise CommandError(
                f"--prices: whole per cents {span}, as 10 or mill=-5, got {text!r}.", returncode=2
            )
    return found


def _of_a_hundred(text):
    """A share."""
    try:
        value = float(text)
    except ValueError:
        value = -1.0
    if not 0 <= value <= 100:
        raise CommandError(f"--survive: a number from 0 to 100, got {text!r}.", returncode=2)
    return round(value / 100, 4)


def _colonies(text):
    if not text.isdecimal() or int(text) > MOST_COLONIES:
        raise CommandError(
            f"--colonies: a whole number from 0 to {MOST_COLONIES:,}, got {text!r}.", returncode=2
        )
    return int(text)

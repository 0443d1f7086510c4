"""A row of an evening's table read: its words made into an act, a day, a place, gear and a number.

Takes Typed rows and the names known; gives Told rows, and for each row that cannot be read every fault of it.
"""

from datetime import date
from decimal import Decimal, InvalidOperation

from apiary.models import Colony
from inventory.catching_up.acts import GEAR, PLACES, ROW_ACTS
from inventory.catching_up.rows import Told, without_dittos
from inventory.ledger.lines import MOST
from inventory.syrup import QUARTS_A_GALLON, RATIONS


class Unread(Exception):
    """One cell cannot be read; the message says what is wrong and what would be right."""


def read_rows(rows, known):
    """(Told rows in the order typed, {row's number: [sentences]})."""
    told, faults = [], {}
    for row in without_dittos(rows):
        problems: list[str] = []
        one = read(row, known, problems)
        if problems:
            faults[row.number] = problems
        else:
            told.append(one)
    return told, faults


def read(row, known, problems):
    """The row understood; what cannot be is added to `problems`."""
    act = ROW_ACTS.get(row.act)
    if act is None:
        problems.append("What was done? Choose an act from the list.")
        return None
    return Told(
        number=row.number,
        act=act,
        day=_cell(problems, _day, row.day),
        ground=_cell(problems, _place, row.place, act, known),
        gear=_cell(problems, _gear, row.gear, act, known),
        quantity=_cell(problems, _quantity, row, act, known),
        other=_cell(problems, _other, row.other, act, known),
    )


def _cell(problems, read_cell, *given):
    try:
        return read_cell(*given)
    except Unread as fault:
        problems.append(str(fault))
        return None


def _day(word):
    if not word:
        raise Unread("Which day? Give it, or leave it empty below a row that has one.")
    try:
        return date.fromisoformat(word)
    except ValueError:
        raise Unread(f"{word!r} is not a day: write year-month-day, as 2025-05-20.") from None


def _place(word, act, known):
    wanted = " or ".join(PLACES[each] for each in PLACES if each in act.place)
    if not word:
        raise Unread(f"Where? {act.words} wants {wanted}.")
    key = word.casefold()
    colony, yard = known.colonies.get(key), known.yards.get(key)
    if colony is not None and "colony" in act.place:
        return colony
    if yard is not None and act.place & {"yard", "store"}:
        return yard
    if colony is None and yard is None:
        raise Unread(f"{word!r} is no colony and no yard of the books: {act.words} wants {wanted}.")
    is_what = f"colony {colony.tag}" if isinstance(colony, Colony) else f"the yard {yard}"
    raise Unread(f"{word!r} is {is_what}: {act.words} wants {wanted}.")


def _gear(word, act, known):
    if not act.gear:
        if word:
            raise Unread(f"{act.words} tells of no gear: leave {word!r} out.")
        return None
    if not word:
        if act.gear in ("super", "brood box", "splits"):
            return None
        raise Unread(f"Of what? {act.words} wants {GEAR[act.gear]}.")
    read_word = {
        "pieces": known.pieces,
        "piece": known.piece,
        "comb": known.comb,
        "made": known.made,
        "feed": known.ration,
        "queen": known.queen,
        "splits": known.splits,
        "super": known.super_code,
        "brood box": known.brood_box_code,
    }[act.gear]
    gear = read_word(word)
    if gear is None:
        raise Unread(f"{word!r} is not known: {act.words} wants {GEAR[act.gear]}.")
    return gear


def _quantity(row, act, known):
    """Whole pieces; of syrup quarts, told as gallons."""
    if not act.counted:
        if row.quantity not in ("", "1"):
            raise Unread(f"{act.words} happens once to each colony: leave {row.quantity!r} out.")
        return 1
    ration = RATIONS.get(known.ration(row.gear) or "") if act.gear == "feed" else None
    syrup = ration is not None and ration.is_syrup
    try:
        number = Decimal(row.quantity) * (QUARTS_A_GALLON if syrup else 1)
    except InvalidOperation:
        raise Unread(_wanted(row, syrup)) from None
    if not number.is_finite() or number != int(number) or not 1 <= number <= MOST:
        raise Unread(_wanted(row, syrup))
    return int(number)


def _wanted(row, syrup):
    step = "gallons in quarters, as 1.5" if syrup else f"a whole number from 1 to {MOST:,}"
    return f"How many? Give {step}, got {row.quantity!r}." if row.quantity else f"How many? Give {step}."


def _other(word, act, known):
    if act.other == "":
        if word:
            raise Unread(f"{act.words} has no other end: leave {word!r} out.")
        return None
    if act.other == "person":
        if not word:
            raise Unread("To whom was it lent? Write the name.")
        return word
    if not word:
        if act.other == "yard":
            raise Unread("To which yard? Write its name.")
        return known.home
    yard = known.yards.get(word.casefold())
    if yard is None:
        raise Unread(f"{word!r} is not a store of the books: write the name of a yard or of the shed.")
    if act.other == "yard" and yard.is_shed:
        raise Unread(f"{yard} is the shed, no bees stand there: write the name of a yard.")
    return yard

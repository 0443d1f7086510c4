"""Checks of single values of a problem file: (checks, path, value, known) -> the value, or WRONG after noting why.

`known` holds the codes that may be named and the horizon (see forms.py). Builds no records.
"""

from planner.sizing.faults import WRONG


def text(checks, path, value, known):
    return checks.text(path, value)


def flag(checks, path, value, known):
    return checks.flag(path, value)


def any_number(checks, path, value, known):
    return checks.number(path, value)


def amount(checks, path, value, known):
    return checks.number(path, value, lowest=0)


def positive(checks, path, value, known):
    return checks.number(path, value, above=0)


def share(checks, path, value, known):
    return checks.number(path, value, above=0, highest=1)


def weight(checks, path, value, known):
    return checks.number(path, value, lowest=0, highest=1)


def horizon(checks, path, value, known):
    return checks.whole(path, value, lowest=1, highest=100_000)


def period(checks, path, value, known):
    if known.periods is None:
        return checks.whole(path, value)
    return checks.whole(path, value, highest=known.periods - 1, why=", inside the horizon")


def lead(checks, path, value, known):
    periods = checks.whole(path, value)
    if periods is not WRONG and known.periods is not None and periods >= known.periods:
        return checks.expected(path, f"shorter than the horizon of {known.periods} periods", value)
    return periods


def packs(checks, path, value, known):
    return checks.whole(path, value, lowest=1)


def part(checks, path, value, known):
    return checks.code_of(path, value, known.parts, "part")


def location(checks, path, value, known):
    return checks.code_of(path, value, known.locations, "location")


def supplier(checks, path, value, known):
    return checks.code_of(path, value, known.suppliers, "supplier")


def choice(*choices):
    return lambda checks, path, value, known: checks.choice(path, value, choices)


def or_null(check):
    return lambda checks, path, value, known: None if value is None else check(checks, path, value, known)


def per_period(checks, path, value, known):
    """A list with one amount for each period."""
    rows = checks.array(path, value)
    if rows is WRONG:
        return WRONG
    amounts = [amount(checks, f"{path}[{number}]", row, known) for number, row in enumerate(rows)]
    if known.periods is not None and len(rows) != known.periods:
        return checks.note(path, f"must have {known.periods} entries, one a period, got {len(rows)}")
    return WRONG if WRONG in amounts else tuple(amounts)


def amount_or_list(checks, path, value, known):
    if isinstance(value, list | tuple):
        return per_period(checks, path, value, known)
    return amount(checks, path, value, known)


def parts(checks, path, value, known):
    """An object part: amount."""
    table = checks.table(path, value)
    if table is WRONG:
        return WRONG
    amounts = {}
    for code, quantity in table.items():
        where = at(path, code)
        named = checks.code_of(where, code, known.parts, "part")
        read = amount(checks, where, quantity, known)
        amounts[code] = WRONG if named is WRONG else read
    return WRONG if WRONG in amounts.values() else amounts


def takes(checks, path, value, known):
    amounts = parts(checks, path, value, known)
    if amounts is not WRONG and not any(amounts.values()):
        return checks.note(path, "a recipe must take something")
    return amounts


def order_periods(checks, path, value, known):
    rows = checks.array(path, value)
    if rows is WRONG:
        return WRONG
    read = [period(checks, f"{path}[{number}]", row, known) for number, row in enumerate(rows)]
    for number, listed in enumerate(read):
        if listed is not WRONG and listed in read[:number]:
            checks.note(f"{path}[{number}]", f"period {listed} is listed twice")
    return WRONG if WRONG in read else tuple(read)


def at(path, key):
    """The path of a key below a path."""
    return f"{path}.{key}" if path else str(key)

"""The form of a problem file: for each record its keys, which are required, and how each value is checked.

Takes JSON objects and the codes they may name; gives records, noting faults in a Checks. Judges no links between
records (reading.py does).
"""

from dataclasses import dataclass

from planner.sizing import records, values
from planner.sizing.faults import WRONG, a_list


@dataclass(frozen=True)
class Form:
    """One kind of record: `keys` maps each key to its check, `renamed` a key to the record's field."""

    record: type
    keys: dict
    required: tuple
    renamed: dict


@dataclass(frozen=True)
class Known:
    """Codes that may be named, and the horizon; None where the list itself is faulty."""

    parts: frozenset | None
    locations: frozenset | None
    suppliers: frozenset | None
    periods: int | None


def known_codes(data):
    """The codes the file declares, read leniently so that every later fault can still be found."""

    def codes(key):
        rows = data.get(key, [])
        if not isinstance(rows, list | tuple):
            return None
        found = (
            row if key == "locations" else row.get("code") if isinstance(row, dict) else None for row in rows
        )
        return frozenset(code for code in found if isinstance(code, str))

    periods = data.get("periods")
    sound = isinstance(periods, int | float) and not isinstance(periods, bool) and periods >= 1
    sound = sound and periods == periods and periods < 1e6
    horizon = int(periods) if sound else None
    return Known(codes("parts"), codes("locations"), codes("suppliers"), horizon)


def record(checks, path, value, form, known):
    """One record of the given form, or WRONG."""
    table = checks.table(path, value)
    if table is WRONG:
        return WRONG
    sound = True
    fields = {}
    for key in table:
        if key not in form.keys:
            checks.note(values.at(path, key), f"no such key here; known are {a_list(form.keys)}")
            sound = False
    for key, check in form.keys.items():
        if key not in table:
            if key in form.required:
                checks.note(values.at(path, key), "is missing")
                sound = False
            continue
        read = check(checks, values.at(path, key), table[key], known)
        sound = sound and read is not WRONG
        fields[form.renamed.get(key, key)] = read
    return form.record(**fields) if sound else WRONG


def _form(kind, keys, *required, **renamed):
    return Form(kind, keys, required, {key.rstrip("_"): name for key, name in renamed.items()})


def _list_of(form, unique=None):
    def check(checks, path, value, known):
        rows = checks.array(path, value)
        if rows is WRONG:
            return WRONG
        read = [record(checks, f"{path}[{at}]", row, form, known) for at, row in enumerate(rows)]
        if unique:
            _check_unique(
                checks, path, [row.get(unique) if isinstance(row, dict) else None for row in rows], unique
            )
        return WRONG if WRONG in read else tuple(read)

    return check


def _check_unique(checks, path, codes, key):
    first: dict[str, int] = {}
    for at, code in enumerate(codes):
        if not isinstance(code, str):
            continue
        if code in first:
            where = f"{path}[{at}].{key}" if key else f"{path}[{at}]"
            checks.note(where, f'"{code}" is already the code of {path}[{first[code]}]')
        first.setdefault(code, at)


def _locations(checks, path, value, known):
    rows = checks.array(path, value)
    if rows is WRONG:
        return WRONG
    read = [checks.text(f"{path}[{at}]", row) for at, row in enumerate(rows)]
    _check_unique(checks, path, rows, None)
    if not rows:
        return checks.note(path, "must name at least one location")
    return WRONG if WRONG in read else tuple(read)


def _prices(checks, path, value, known):
    steps = _list_of(STEP)(checks, path, value, known)
    if steps is WRONG:
        return WRONG
    if not steps:
        return checks.note(path, "must have at least one step")
    if steps[0].from_packs != 1:
        return checks.note(
            f"{path}[0].from_packs", f"the first step must start from 1, got {steps[0].from_packs}"
        )
    for at in range(1, len(steps)):
        if steps[at].from_packs <= steps[at - 1].from_packs:
            before = steps[at - 1].from_packs
            return checks.expected(
                f"{path}[{at}].from_packs", f"above {before}, steps rise", steps[at].from_packs
            )
    return steps


def _uses(checks, path, value, known):
    """The uses of one scenario, with the links between them."""
    uses = _list_of(USE, "code")(checks, path, value, known)
    if uses is WRONG:
        return WRONG
    codes = {use.code for use in uses}
    for at, use in enumerate(uses):
        if use.last < use.first:
            checks.expected(f"{path}[{at}].last", f"at or after first, {use.first}", use.last)
        if use.needs_use is not None and use.needs_use not in codes:
            checks.note(f"{path}[{at}].needs_use", f'no use of this scenario has the code "{use.needs_use}"')
        elif use.needs_use == use.code:
            checks.note(f"{path}[{at}].needs_use", "must name another use, not itself")
    return uses


def _hauls(checks, path, value, known):
    hauls = _list_of(HAUL)(checks, path, value, known)
    if hauls is WRONG:
        return WRONG
    for at, haul in enumerate(hauls):
        if haul.trip_cost and haul.trip_lb is None:
            checks.note(f"{path}[{at}].trip_cost", "needs trip_lb, the weight one trip carries")
        if haul.source == haul.target:
            checks.note(f"{path}[{at}].to", f'must differ from "from", got "{haul.target}" for both')
    return hauls


def _scenarios(checks, path, value, known):
    scenarios = _list_of(SCENARIO, "code")(checks, path, value, known)
    rows = value if isinstance(value, list | tuple) else [None]
    odds: list = [row.get("probability") for row in rows if isinstance(row, dict)]
    sound = [odd for odd in odds if _is_probability(odd)]
    if len(sound) == len(rows) and abs(sum(sound) - 1) > 1e-6:
        checks.note(path, f"probabilities must sum to 1, got {sum(sound):.9g}")
    return scenarios


def _is_probability(value):
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 < value <= 1


def _work(checks, path, value, known):
    return record(checks, path, value, WORK, known)


def _bad_years(checks, path, value, known):
    return record(checks, path, value, BAD_YEARS, known)


STEP = _form(records.PriceStep, {"from_packs": values.packs, "price": values.amount}, "from_packs", "price")
PART = _form(
    records.Part,
    {
        "code": values.text,
        "end_value": values.any_number,
        "holding_cost": values.amount_or_list,
        "weight_lb": values.amount,
    },
    "code",
)
STOCK = _form(
    records.Stock,
    {"part": values.part, "location": values.location, "quantity": values.amount, "period": values.period},
    "part",
    "location",
    "quantity",
)
SUPPLIER = _form(
    records.Supplier,
    {"code": values.text, "order_fee": values.amount_or_list, "free_from": values.or_null(values.amount)},
    "code",
)
OFFER = _form(
    records.Offer,
    {
        "code": values.text,
        "supplier": values.supplier,
        "parts": values.parts,
        "location": values.or_null(values.location),
        "prices": _prices,
        "price_rule": values.choice("all_units", "incremental"),
        "order_periods": values.order_periods,
        "lead_periods": values.lead,
        "max_packs": values.or_null(values.amount),
        "work_minutes": values.amount,
        "whole": values.flag,
        "when": values.choice("now", "later"),
    },
    "code",
    "supplier",
    "parts",
    "prices",
)
RECIPE = _form(
    records.Recipe,
    {
        "code": values.text,
        "takes": values.takes,
        "makes": values.parts,
        "location": values.or_null(values.location),
        "work_minutes": values.amount,
        "lead_periods": values.lead,
        "cost": values.amount,
    },
    "code",
    "takes",
    "makes",
)
WORK = _form(
    records.Work, {"minutes_per_period": values.or_null(values.per_period), "cost_per_hour": values.amount}
)
BAD_YEARS = _form(records.BadYears, {"weight": values.weight, "share": values.share})
HAUL = _form(
    records.Haul,
    {
        "from": values.location,
        "to": values.location,
        "cost_per_unit": values.amount,
        "cost_per_lb": values.amount,
        "trip_cost": values.amount,
        "trip_lb": values.or_null(values.positive),
    },
    "from",
    "to",
    from_="source",
    to="target",
)
USE = _form(
    records.Use,
    {
        "code": values.text,
        "location": values.location,
        "first": values.period,
        "last": values.period,
        "units": values.amount,
        "value": values.any_number,
        "must": values.flag,
        "keeps": values.parts,
        "spends": values.parts,
        "needs_use": values.or_null(values.text),
        "per": values.amount,
    },
    "code",
    "location",
    "first",
    "last",
    "units",
    "value",
)
ARRIVAL = _form(
    records.Arrival,
    {"part": values.part, "location": values.location, "period": values.period, "quantity": values.amount},
    "part",
    "location",
    "period",
    "quantity",
)
SCENARIO = _form(
    records.Scenario,
    {"code": values.text, "probability": values.share, "uses": _uses, "arrivals": _list_of(ARRIVAL)},
    "code",
    "probability",
)
PROBLEM = _form(
    records.Problem,
    {
        "periods": values.horizon,
        "money": values.text,
        "parts": _list_of(PART, "code"),
        "locations": _locations,
        "stock": _list_of(STOCK),
        "suppliers": _list_of(SUPPLIER, "code"),
        "offers": _list_of(OFFER, "code"),
        "recipes": _list_of(RECIPE, "code"),
        "work": _work,
        "whole_uses": values.flag,
        "bad_years": _bad_years,
        "budget": values.or_null(values.amount),
        "later_budget": values.or_null(values.amount),
        "hauls": _hauls,
        "scenarios": _scenarios,
    },
    "periods",
    "parts",
    "locations",
    "scenarios",
)

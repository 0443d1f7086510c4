"""What-ifs: other prices, a supplier left out, other hives, on the same books. Pure.

Takes an operation and what is supposed ({"prices": {supplier or "all": per cent}, "without": [suppliers], "home": hive
set, "depth": depth}); gives the operation so changed, and the supposition in words. Answers and budget of a what-if are
its run's own; they stand in "answers" and "budget" for the words only.
"""

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

from planner.errors import UnknownSupplier
from planner.plan.words import listed, sum_words
from planner.season.questions import question_of

ALL = "all"
MOST_PERCENT, LEAST_PERCENT = 300, -90
MOST_COLONIES = 5000


def suppose(operation, what_if):
    """The operation with the supposed prices, suppliers and hives; nothing supposed gives the same."""
    prices, without = what_if.get("prices", {}), set(what_if.get("without", ()))
    known = {supplier.code for supplier in operation.suppliers}
    for code in sorted({*prices, *without} - known - {ALL}):
        raise UnknownSupplier(supplier=code, known=", ".join(sorted(known)))
    if not (prices or without or what_if.get("home")):
        return operation
    offers = tuple(
        _priced(offer, prices.get(offer.supplier, prices.get(ALL, 0)))
        for offer in operation.offers
        if offer.supplier not in without
    )
    return replace(operation, offers=offers, home=what_if.get("home", ""))


def _priced(offer, percent):
    """Each step so many per cent dearer, to the cent; a price stays at least a cent."""
    if not percent:
        return offer
    factor = 1 + Decimal(str(percent)) / 100
    steps = tuple(
        (packs, max(Decimal("0.01"), (price * factor).quantize(Decimal("0.01"), ROUND_HALF_UP)))
        for packs, price in offer.prices
    )
    return replace(offer, prices=steps)


def medium_home(operation):
    """The hive set of mediums alone, as wide as most hives stand; None where no such set has its gear told."""
    counts: dict = {}
    for group in operation.colonies:
        width = operation.sets_by_code[group.hive_set].width
        counts[width] = counts.get(width, 0) + group.colonies
    fitting = [facts for facts in operation.sets if set(facts.boxes) == {"medium"} and not facts.is_nuc]
    return max(
        fitting, key=lambda facts: (counts.get(facts.width, 0), sum(facts.boxes.values())), default=None
    )


def mediums_of(operation, answers):
    """What mediums alone suppose: the hive set new hives are, and the supers where they are answered otherwise; None: no
    such set."""
    facts = medium_home(operation)
    depth = question_of("super_depth").default
    changed = {} if answers.get("super_depth", depth) == "medium" else {"super_depth": "medium"}
    return facts and {"home": facts.code, "answers": changed}


def words_of(what_if, money="USD"):
    """What is supposed, in a keeper's words; empty where nothing is."""
    said = []
    if "budget" in what_if:
        budget = what_if["budget"]
        said.append("no budget limit" if budget is None else f"budget {sum_words(Decimal(budget), money)}")
    said += [_answer_words(key, value) for key, value in sorted(what_if.get("answers", {}).items())]
    for supplier, percent in sorted(what_if.get("prices", {}).items()):
        who = (
            "all prices"
            if supplier == ALL
            else f"prices of {what_if.get('names', {}).get(supplier, supplier)}"
        )
        said.append(f"{who} {abs(percent):g} % {'up' if percent > 0 else 'down'}")
    if what_if.get("without"):
        names = what_if.get("names", {})
        said.append(f"without {listed(names.get(code, code) for code in what_if['without'])}")
    if what_if.get("home"):
        said.append("new hives in mediums alone")
    return ", ".join(said)


WORDS = {
    "survival_share": "{percent:g} of 100 come through",
    "target_colonies": "{value:g} colonies in autumn",
}


def _answer_words(key, value):
    if key in WORDS:
        return WORDS[key].format(value=value, percent=100 * value)
    ask = question_of(key).ask.rstrip("?")
    return f"{ask}: {value}"

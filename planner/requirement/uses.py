"""A projection in gear: the uses of one scenario.

Takes a projection and the season's gear; gives the sizing problem's uses. What comes free is in arrivals.py, supers are
in super_uses.py.
"""

from planner.projection.colonies import sound_share
from planner.requirement import values
from planner.requirement.arrivals import ends_of_drawing
from planner.requirement.super_uses import home_of, homes_by_yard, super_uses
from planner.requirement.words import slug
from planner.season.calendar import circuit_of, period_of
from planner.sizing.records import Use

NUC_BOX_AWAY_WEEKS = 4  # until a buyer brings the box back: judgement


def uses_of(gear, projection):
    """All uses of one scenario, in the order of the season's subjects."""
    price = values.honey_price(gear.assumptions, projection.crop_lb)
    hives = list(_split_uses(gear, projection))
    supers = list(super_uses(gear, projection, price, hives))
    return (
        *hives,
        *_second_boxes(gear, projection, price, hives),
        *supers,
        *_small_gear(gear, projection, supers),
        *_feed(gear, projection),
        *_consumables(gear, projection),
        *_renewed_combs(gear, projection),
        *ends_of_drawing(gear, projection),
    )


def _split_uses(gear, projection):
    """The attempt in its nuc box; what is made of it, hived; nucs sold."""
    for split in projection.splits:
        attempt = Use(
            code=f"split/{split.yard}",
            location=split.yard,
            first=split.week,
            last=split.hive_week - 1,
            units=split.attempts,
            value=-gear.assumptions.split_cost,
            keeps=gear.nuc_bundle(split.yard),
        )
        yield attempt
        yield from _hived(gear, split, attempt)
        if split.sold:
            yield _sold(gear, split, attempt)


def _hived(gear, split, attempt):
    """Hives of the splits that are kept; those that die in a winter within the year give theirs back."""
    for home, count in split.homes.items():
        here = "" if home == split.yard else f"/from-{split.yard}"
        bundle, dead = gear.hive_bundle(home), split.dead.get(home, 0)
        rows: list = [("hive", count - dead, gear.assumptions.weeks - 1, bundle, {})]
        if dead:
            back, lost = _given_back(gear, bundle)
            rows.append(("hive-till-winter", dead, split.found_week - 1, back, lost))
        for kind, units, last, keeps, spends in rows:
            if units:
                yield Use(
                    code=f"{kind}/{home}{here}",
                    location=home,
                    first=split.hive_week,
                    last=last,
                    units=units,
                    value=gear.assumptions.colony_value,
                    keeps=keeps,
                    spends=spends,
                    needs_use=attempt.code,
                    per=units / split.attempts,
                )


def _given_back(gear, bundle):
    """What a hive found dead gives back of a bundle, and what is lost with it."""
    width = gear.home.width
    back = {
        part: pieces * sound_share(gear.parts.get(part), width, gear.assumptions)
        for part, pieces in bundle.items()
    }
    return back, {part: pieces - back[part] for part, pieces in bundle.items() if pieces > back[part]}


def _sold(gear, split, attempt):
    """Five combs go along, and the box, unless the buyer brings the one or the other back."""
    answers = gear.assumptions
    keeps: dict = {}
    spends: dict = {}
    for part, pieces in attempt.keeps.items():
        is_comb = part.startswith("comb-")
        returns = answers.nuc_combs_return if is_comb else answers.nuc_box_returns
        (keeps if returns else spends)[part] = pieces
    away = NUC_BOX_AWAY_WEEKS - 1 if keeps else 0
    return Use(
        code=f"nuc/{split.yard}",
        location=split.yard,
        first=split.hive_week,
        last=min(answers.weeks - 1, split.hive_week + away),
        units=split.sold,
        value=answers.nuc_price,
        keeps=keeps,
        spends=spends,
        needs_use=attempt.code,
        per=split.sold / split.attempts,
    )


def _second_boxes(gear, projection, price, hives):
    last_week = gear.assumptions.weeks - 1
    homes, dying = homes_by_yard(hives), homes_by_yard(hives, kind="hive-till-winter")
    for need in projection.second_boxes:
        facts = gear.sets[need.set_code]
        if facts.is_nuc:
            kind, bundle = "nuc-to-hive", gear.nuc_to_hive_bundle(need.yard)
            value = gear.assumptions.colony_value / 2
        else:
            kind, bundle = "second-box", gear.brood_box_bundle(need.set_code, need.yard)
            value = values.second_box_value(gear.assumptions, need, price)
        home, last, spends = home_of(need, homes), last_week, {}
        if need.found_week is not None:
            kind, home, last = f"{kind}-till-winter", home_of(need, dying), need.found_week - 1
            bundle, spends = _given_back(gear, bundle)
        usual = gear.home.code if need.strength == "split" else gear.usual_single
        other_set = "" if facts.is_nuc or facts.code == usual else f"/in-{facts.code}"
        yield Use(
            code=f"{kind}/{need.yard}/{need.strength}{other_set}",
            location=need.yard,
            first=need.week,
            last=last,
            units=need.colonies,
            value=value,
            keeps=bundle,
            spends=spends,
            needs_use=home.code if home else None,
            per=need.colonies / home.units if home else 1.0,
        )


def _small_gear(gear, projection, supers):
    first_supers = _first_supers(supers)
    for need in projection.small_gear:
        kind = need.kind.partition("/")[0]
        part = gear.small_part(kind, need.width)
        if part is None or gear.set_brings(kind, need.width):
            continue
        window = need.kind.partition("/")[2]
        width = "" if need.width == gear.home.width else f"/{need.width}-frame"
        under = first_supers.get((need.yard, slug(window), width)) if window else None
        if window and under is None:
            continue
        rest = f"/{slug(window)}" if window else ""
        yield Use(
            code=f"{kind}/{need.yard}{rest}/{need.first}{width}",
            location=need.yard,
            first=need.first,
            last=need.last,
            units=need.colonies,
            value=values.small_gear_value(gear.assumptions, kind),
            keeps={part: 1},
            needs_use=under.code if under else None,
            per=need.colonies / under.units if under else 1.0,
        )


def _first_supers(supers):
    """The first super an excluder lies under, by yard, flow and width: the one most colonies get."""
    first: dict = {}
    for use in supers:
        kind, yard, window, _strengths, number, *width = use.code.split("/")
        if kind == "super" and number == "1":
            key = yard, window, "".join(f"/{word}" for word in width)
            known = first.get(key)
            if known is None or use.units > known.units:
                first[key] = use
    return first


def _feed(gear, projection):
    """Autumn feed by yard; spring and splits' feed by week for all yards, for it is little."""
    if "sugar" not in gear.parts:
        return
    together: dict = {}
    for need in projection.feed:
        at = (need.yard if need.season == "autumn" else gear.operation.shed, need.season, need.week)
        together[at] = together.get(at, 0.0) + need.colonies * need.sugar_lb
    for (place, season, week), sugar in together.items():
        yield Use(
            code=f"feed/{place}/{season}/{week}",
            location=place,
            first=week,
            last=week,
            units=sugar,
            value=0.0,
            must=True,
            spends={"sugar": 1},
        )


def _consumables(gear, projection):
    for need in projection.consumables:
        yield Use(
            code=f"consumable/{gear.operation.shed}/{need.part}",
            location=gear.operation.shed,
            first=need.week,
            last=need.week,
            units=need.quantity,
            value=0.0,
            must=True,
            spends={need.part: 1},
        )


def _renewed_combs(gear, projection):
    week = _build_up_week(gear)
    for depth, combs in projection.culled_combs.items():
        if f"foundation-{depth}" in gear.parts:
            yield Use(
                code=f"renew/{gear.operation.shed}/{depth}",
                location=gear.operation.shed,
                first=week,
                last=week,
                units=combs,
                value=values.RENEWED_COMB_VALUE,
                spends={f"foundation-{depth}": 1},
            )


def _build_up_week(gear):
    """The earliest visit at which a second box can go on."""
    answers = gear.assumptions
    week = period_of(answers.start, answers.weeks, answers.second_box_week)
    return min((circuit_of(yard, answers).before(week) for yard in gear.yards.values()), default=week)

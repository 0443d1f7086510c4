"""A projection in gear: the uses of one scenario and the gear that comes free in it.

Takes a projection and the season's gear; gives the sizing problem's uses and arrivals. Uses alike (same yard, flow,
number and weeks, honey within a few lb) are one.
"""

from planner.requirement import values
from planner.requirement.season_gear import NUC_COMBS, comb, plain
from planner.requirement.words import slug
from planner.season.calendar import circuit_of, period_of
from planner.sizing.records import Arrival, Use

TOKEN = "drawing"
HONEY_BIN_LB = 6.0
SPRING_DRAWING_SHARE = 0.5  # of a flow's, while colonies build up: judgement


def uses_of(gear, projection):
    """All uses of one scenario, in the order of the season's subjects."""
    price = values.honey_price(gear.assumptions, projection.crop_lb)
    hives = list(_split_uses(gear, projection))
    return (
        *hives,
        *_second_boxes(gear, projection, price, hives),
        *_supers(gear, projection, price, hives),
        *_small_gear(gear, projection),
        *_feed(gear, projection),
        *_consumables(gear, projection),
        *_renewed_combs(gear, projection),
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
            keeps=gear.nuc_bundle(),
        )
        yield attempt
        yield from _hived(gear, split, attempt)
        if split.sold:
            yield _sold(gear, split, attempt)


def _hived(gear, split, attempt):
    for home, count in split.homes.items():
        here = "" if home == split.yard else f"/from-{split.yard}"
        yield Use(
            code=f"hive/{home}{here}",
            location=home,
            first=split.hive_week,
            last=gear.assumptions.weeks - 1,
            units=count,
            value=gear.assumptions.colony_value,
            keeps=gear.hive_bundle(),
            needs_use=attempt.code,
            per=count / split.attempts,
        )


def _sold(gear, split, attempt):
    spent = {comb(gear.base_depth, "brood"): NUC_COMBS}
    if not gear.assumptions.nuc_box_returns:
        spent |= {part: pieces for part, pieces in attempt.keeps.items() if not part.startswith("comb-")}
    return Use(
        code=f"nuc/{split.yard}",
        location=split.yard,
        first=split.hive_week,
        last=split.hive_week,
        units=split.sold,
        value=gear.assumptions.nuc_price,
        spends=spent,
        needs_use=attempt.code,
        per=split.sold / split.attempts,
    )


def _second_boxes(gear, projection, price, hives):
    last_week = gear.assumptions.weeks - 1
    for need in projection.second_boxes:
        facts = gear.sets[need.set_code]
        if facts.is_nuc:
            kind, bundle = "nuc-to-hive", gear.nuc_to_hive_bundle()
            value = gear.assumptions.colony_value / 2
        else:
            kind, bundle = "second-box", gear.brood_box_bundle(need.set_code)
            value = values.second_box_value(gear.assumptions, need, price)
        home = _home_of(need, hives)
        usual = gear.home.code if need.strength == "split" else gear.usual_single
        other_set = "" if facts.is_nuc or facts.code == usual else f"/in-{facts.code}"
        yield Use(
            code=f"{kind}/{need.yard}/{need.strength}{other_set}",
            location=need.yard,
            first=need.week,
            last=last_week,
            units=need.colonies,
            value=value,
            keeps=bundle,
            needs_use=home.code if home else None,
            per=need.colonies / home.units if home else 1.0,
        )


def _supers(gear, projection, price, hives):
    answers = gear.assumptions
    for need, strengths, colonies, honey in merged(projection.supers):
        yard = gear.yards[need.yard]
        value = values.super_value(answers, yard, honey, price)
        if value <= 0:
            continue
        home = _home_of(need, hives)
        width = "" if need.width == gear.home.width else f"/{need.width}-frame"
        yield Use(
            code=f"super/{need.yard}/{slug(need.window)}/{'+'.join(strengths)}/{need.number}{width}",
            location=need.yard,
            first=need.first,
            last=need.last,
            units=colonies,
            value=value,
            keeps=gear.super_bundle(need.width),
            needs_use=home.code if home else None,
            per=colonies / home.units if home else 1.0,
        )


def _home_of(need, hives):
    """The hives a split's box stands on: the most of its yard's, where they come from several mothers' yards."""
    if need.strength != "split":
        return None
    here = [use for use in hives if use.code.startswith("hive/") and use.location == need.yard]
    return max(here, key=lambda use: use.units) if here else None


def merged(needs):
    """Super needs alike but for strength, joined: (need, strengths, colonies, honey lb on average)."""
    groups: dict = {}
    for need in needs:
        if need.strength == "split":
            key = (need.yard, need.window, need.number, need.width, need.first, need.last, "split", 0)
        else:
            honey_bin = int(need.honey_lb // HONEY_BIN_LB)
            key = (need.yard, need.window, need.number, need.width, need.first, need.last, "", honey_bin)
        groups.setdefault(key, []).append(need)
    for alike in groups.values():
        colonies = sum(need.colonies for need in alike)
        honey = sum(need.honey_lb * need.colonies for need in alike) / colonies
        order = ("strong", "fair", "weak", "split")
        strengths = sorted({need.strength for need in alike}, key=order.index)
        yield alike[0], strengths, colonies, honey


def _small_gear(gear, projection):
    for need in projection.small_gear:
        kind = need.kind.partition("/")[0]
        part = gear.small_part(kind, need.width)
        if part is None or gear.set_brings(kind, need.width):
            continue
        window = need.kind.partition("/")[2]
        rest = "".join(f"/{slug(word)}" for word in (window,) if word)
        width = "" if need.width == gear.home.width else f"/{need.width}-frame"
        yield Use(
            code=f"{kind}/{need.yard}{rest}/{need.first}{width}",
            location=need.yard,
            first=need.first,
            last=need.last,
            units=need.colonies,
            value=values.small_gear_value(gear.assumptions, kind),
            keeps={part: 1},
        )


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


def arrivals_of(gear, projection):
    """Deadouts' gear by yard, and the frames bees can draw (a token that each drawn frame takes)."""
    found: dict = {}
    for dead in projection.deadouts:
        for part, pieces in dead.returned.items():
            key = (plain(part), dead.yard, dead.week)
            found[key] = found.get(key, 0) + pieces
    for week, frames in drawing_by_week(gear, projection).items():
        found[TOKEN, gear.operation.shed, week] = frames
    return tuple(
        Arrival(part=part, location=place, period=week, quantity=pieces)
        for (part, place, week), pieces in sorted(found.items())
        if pieces
    )


def drawing_by_week(gear, projection):
    """Frames that can be drawn: in each flow by its limit, half of it in the build-up, a few by fed splits."""
    answers = gear.assumptions
    frames: dict = {}
    for drawing in projection.drawing:
        frames[drawing.week] = frames.get(drawing.week, 0) + drawing.frames
    week = period_of(answers.start, answers.weeks, answers.second_box_week)
    build_up = sum(
        counts[week] * answers.drawn_by(strength) * SPRING_DRAWING_SHARE
        for (_yard, strength), counts in projection.colonies.items()
    )
    first = _build_up_week(gear)
    frames[first] = frames.get(first, 0) + build_up
    for split in projection.splits:
        frames[split.week] = frames.get(split.week, 0) + split.attempts * answers.drawn_weak
    return frames

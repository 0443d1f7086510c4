"""The season's assumptions: every question answered, checked, with the day it starts.

Takes a keeper's answers by key (only those that differ from the default), gives one immutable record, or
AnswerFaults with a sentence for each answer that will not do. Knows no form, no table and no clock.
"""

import datetime as dt
import math
from dataclasses import dataclass, fields

from planner.season.questions import QUESTIONS, questions_for
from planner.season.regions import region_of
from planner.season.survival import WINTER_CORRELATION, fitted
from planner.season.winters import winters_of

WEEKS = 52
TRUE_WORDS = ("true", "yes", "on", "1")
FALSE_WORDS = ("false", "no", "off", "0")


class AnswerFaults(Exception):
    """`messages`: question key -> what is wrong and what would do."""

    def __init__(self, messages):
        self.messages = dict(messages)
        super().__init__("; ".join(self.messages.values()))


@dataclass(frozen=True, kw_only=True)
class Assumptions:
    """One field a question. `target_colonies` None: as many as there are at the start.

    `winter_correlation` is worked out: how far winters swing, from the keeper's own where told. `season_weeks`: weeks of
    the season still ahead, fewer than `weeks` where it began before the day: nothing that begins later is asked for.
    """

    start: dt.date
    weeks: int = WEEKS
    season_weeks: int = WEEKS
    region: str
    winter_correlation: float = WINTER_CORRELATION
    winters: tuple[tuple[int, int], ...] | None = None
    survival_share: float
    summer_loss_share: float
    summer_united_share: float
    winter_counted: bool
    target_colonies: int | None
    spring_week: int
    second_box: bool
    second_box_week: int
    growth: str
    crop_lost_without_box: float
    nucs_sold: int
    nuc_price: float
    nuc_box_returns: bool
    nuc_combs_return: bool
    split_home: str
    splits_strong: int
    splits_fair: int
    splits_weak: int
    split_week: int
    splits_good_of_ten: float
    weeks_in_nuc: int
    split_cost: float
    colony_value: float
    crop_best: float
    crop_ordinary: float
    crop_worst: float
    flow_so_far: str
    circuit_days: int
    super_depth: str
    combs_in_super: int
    fill_share: float
    honey_deep_lb: float
    honey_medium_lb: float
    honey_shallow_lb: float
    weeks_to_extract: int
    pull_early: bool
    pull_early_minutes: float
    drawn_strong: int
    drawn_fair: int
    drawn_weak: int
    deadout_sound_share: float
    deadout_honey_lb: float
    comb_moth_share: float
    stored_moth_share: float
    comb_culled: float
    excluders: bool
    feeders: bool
    guards: bool
    reducers: bool
    guard_week: int
    stores_target_lb: float
    stores_before_feeding_lb: float
    autumn_feed_week: int
    autumn_syrup: str
    spring_syrup: str
    spring_feed_gal: float
    split_feed_gal: float
    patty_lb: float
    treatments: int
    treatment_week: int
    honey_price: float
    honey_market_lb: float
    honey_price_more: float
    jar_share: float
    jar_lb: float
    bucket_lb: float
    bucket_returns_share: float
    mile_cost: float
    season_markup: float
    small_markup: float
    season_limit: int
    sooner: str
    super_minutes: float
    hour_value: float
    evenings_a_week: float
    evening_hours: float

    @property
    def split_success(self):
        """Share of splits that are good in late summer."""
        return self.splits_good_of_ten / 10

    @property
    def began_before(self):
        """True where the season is under way: planned again on a later day than its first."""
        return self.season_weeks < self.weeks

    @property
    def honey_per_super_lb(self):
        return getattr(self, f"honey_{self.super_depth}_lb")

    def splits_of(self, strength):
        """Most splits a colony of that strength may give."""
        return getattr(self, f"splits_{strength}", 0)

    def drawn_by(self, strength):
        """Most frames a colony of that strength draws in a flow; a split draws like a weak one."""
        return getattr(self, f"drawn_{strength}", self.drawn_weak)


def assumptions_of(answers, *, start, region="", operation=None, begun=None):
    """The assumptions of these answers; with the operation given, also checked against its yards, and the past
    winters it knows taken where none are answered. `begun`: first day of the season where that is before `start`."""
    answers = {key: value for key, value in answers.items() if value not in (None, "")}
    if operation is not None and operation.winters:
        answers = {"winters": operation.winters, **answers}
    told = str(answers.get("region", region))
    messages, values = {}, {}
    for key in answers.keys() - {question.key for question in QUESTIONS}:
        messages[key] = f"There is no question “{key}”."
    for question in questions_for(told):
        given = answers.get(question.key, question.default)
        try:
            values[question.key] = checked(question, given)
        except ValueError as fault:
            messages[question.key] = str(fault)
    if "region" in values and "region" not in messages:
        values["region"] = region_of(values["region"]).code
    _check_together(values, messages)
    if operation is not None:
        _check_against(operation, values, messages)
    if messages:
        raise AnswerFaults(messages)
    values["combs_in_super"] = int(values["combs_in_super"])
    values |= _from_winters(values, own_share="survival_share" in answers)
    gone = 0 if begun is None else (start - begun).days // 7
    return Assumptions(start=start, season_weeks=WEEKS - gone, **values)


def _from_winters(values, *, own_share):
    """Survival and its swing from the keeper's winters; a share the keeper tells beside them stands."""
    fit = fitted(values["winters"] or (), share=values["survival_share"])
    if own_share:
        return {"winter_correlation": fit.correlation}
    return {"winter_correlation": fit.correlation, "survival_share": fit.share}


def checked(question, given):
    """The answer in its own kind; ValueError with a sentence if it will not do."""
    if question.kind == "flag":
        return _flag(question, given)
    if question.kind == "choice":
        codes = [code for code, _words in question.choices]
        if str(given) not in codes:
            raise ValueError(f"{question.ask} Choose one of {', '.join(codes)}; “{given}” is none of them.")
        return str(given)
    if given is None:
        return None
    if question.kind == "winters":
        return winters_of(question, given)
    return _number(question, given)


def _flag(question, given):
    word = str(given).strip().lower()
    if word in TRUE_WORDS:
        return True
    if word in FALSE_WORDS:
        return False
    raise ValueError(f"{question.ask} Answer yes or no; “{given}” is neither.")


def _number(question, given):
    try:
        number = float(given)
    except (TypeError, ValueError):
        raise ValueError(f"{question.ask} Give a number; “{given}” is none.") from None
    if not math.isfinite(number):
        raise ValueError(f"{question.ask} Give a number; “{given}” is none.")
    span = f"between {question.lowest:g} and {question.highest:g}"
    if number < question.lowest or number > question.highest:
        raise ValueError(f"{question.ask} Give a number {span}; {number:g} lies outside.")
    if question.kind in ("whole", "week"):
        if number != int(number):
            raise ValueError(f"{question.ask} Give a whole number {span}; {number:g} is not whole.")
        return int(number)
    return number


def _check_together(values, messages):
    crops = [values.get(key) for key in ("crop_worst", "crop_ordinary", "crop_best")]
    if None not in crops and not crops[0] <= crops[1] <= crops[2]:
        messages["crop_ordinary"] = (
            f"The worst crop ({crops[0]:g} lb), the ordinary ({crops[1]:g} lb) and the best ({crops[2]:g} lb) "
            "must stand in that order."
        )
    price, more = values.get("honey_price"), values.get("honey_price_more")
    if price is not None and more is not None and more > price:
        messages["honey_price_more"] = (
            f"The price for more honey ({more:g}) is above your usual price ({price:g}): swap the two."
        )


def _check_against(operation, values, messages):
    target = values.get("target_colonies")
    yards = [yard for yard in operation.yards if yard.code != operation.shed]
    stands = sum(yard.stands for yard in yards)
    if target is not None and target > stands:
        by_yard = ", ".join(f"{yard.name} {yard.stands}" for yard in yards)
        messages["target_colonies"] = (
            f"You want {target} colonies in autumn, but your yards have {stands} stands ({by_yard}): "
            "lower the target or add stands to a yard."
        )
    depth = values.get("super_depth")
    if depth and not any(part.kind == "box" and part.depth == depth for part in operation.parts):
        messages["super_depth"] = f"The catalogue has no {depth} box: choose another depth."


_FIELDS = {field.name for field in fields(Assumptions)} - {
    "start",
    "weeks",
    "season_weeks",
    "winter_correlation",
}
assert {question.key for question in QUESTIONS} == _FIELDS, "a question without a field, or the reverse"

"""Which of the season's answers a line rests on, and all answers with their defaults and sources.

Takes kinds of use (the first word of their codes) and the assumptions; gives sentences and table rows.
"""

from planner.plan.records import AssumptionRow
from planner.plan.words import listed, percent
from planner.season.questions import questions_for
from planner.season.survival import fitted
from planner.season.winters import winters_in_words

SAME_SHARE = 1e-9

SURVIVAL = "that {survival_share} of colonies come through the winter"
SUMMER = "that {summer_loss_share} of them are gone by autumn"
TARGET = "that you want {target_words} in autumn"
SPLITS = "that {splits_good_of_ten:g} of 10 splits turn out good"
CROP = "an ordinary crop of {crop_ordinary:g} lb a colony"
FILL = "a new super once the last is {fill_share} full"
SECOND = "a second brood box in week {second_box_week} of the year"
STORES = (
    "a colony needs {stores_target_lb:g} lb of stores and has {stores_before_feeding_lb:g} before feeding"
)
TREATED = "{treatments} treatments a colony a year"
PATTY = "{patty_lb:g} lb of patty a colony a year"
JARS = "that {jar_share} of the honey goes into jars"
CULLED = "{comb_culled:g} old combs renewed a brood box"
DRAWN = "that a strong colony draws {drawn_strong} frames in a flow"
FED = "autumn feeding from week {autumn_feed_week} of the year"
BUCKETS = "that {bucket_returns_share} of buckets come back"
RETURNED = "that {deadout_sound_share} of a deadout's gear is fit to use again"

SHARES = (
    "survival_share",
    "summer_loss_share",
    "fill_share",
    "jar_share",
    "deadout_sound_share",
    "bucket_returns_share",
)

# (key of the answer the belief rests on, its words), by the kind of the use or the part used up
BELIEFS = {
    "super": (("crop_ordinary", CROP), ("fill_share", FILL)),
    "excluder": (("crop_ordinary", CROP),),
    "second-box": (("second_box_week", SECOND),),
    "split": (("summer_loss_share", SUMMER), ("splits_good_of_ten", SPLITS), ("target_colonies", TARGET)),
    "hive": (("summer_loss_share", SUMMER), ("target_colonies", TARGET), ("splits_good_of_ten", SPLITS)),
    "nuc": (("splits_good_of_ten", SPLITS),),
    "nuc-to-hive": (("target_colonies", TARGET),),
    "feed": (("stores_target_lb", STORES),),
    "feeder": (("autumn_feed_week", FED),),
    "treatment": (("treatments", TREATED),),
    "patty": (("patty_lb", PATTY),),
    "jar": (("jar_share", JARS),),
    "bucket": (("jar_share", JARS), ("bucket_returns_share", BUCKETS)),
    "renew": (("comb_culled", CULLED),),
}
GIVEN_BACK = ("hive", "split", "second-box", "nuc-to-hive")  # uses that deadouts' gear serves


def beliefs_of(kinds, assumptions):
    """One sentence on the answers the two chief kinds of use rest on; each said to be the default or not."""
    told = {"survival_share": SURVIVAL}
    for kind in kinds[:2]:
        told.update(BELIEFS.get(kind, ()))
        if kind in GIVEN_BACK:
            told["deadout_sound_share"] = RETURNED
    words, own = _words(assumptions), own_answers(assumptions)
    if not set(told) & own:
        whose = "the default" if len(told) == 1 else "all defaults"
        return (f"This assumes {listed(form.format(**words) for form in told.values())} ({whose}).",)
    marked = [form.format(**words) + _whose(key, assumptions, own) for key, form in told.items()]
    rest = "; the rest are defaults" if set(told) - own else ""
    return (f"This assumes {listed(marked)}{rest}.",)


def _whose(key, assumptions, own):
    """Where an answer that is not the default comes from."""
    if key not in own:
        return ""
    if key == "survival_share" and _from_winters(assumptions):
        told = len(assumptions.winters)
        winters = "your one winter" if told == 1 else f"the average of your {told} winters"
        return f" ({winters}, held towards the published figures)"
    return " (your answer)"


def _from_winters(assumptions):
    """Whether the share that comes through was worked out of the keeper's winters."""
    if not assumptions.winters:
        return False
    usual = next(
        question.default for question in questions_for(assumptions.region) if question.key == "survival_share"
    )
    fit = fitted(assumptions.winters, share=usual)
    return abs(fit.share - assumptions.survival_share) < SAME_SHARE


def _words(assumptions):
    words = {key: getattr(assumptions, key) for key in _keys(assumptions)}
    for key in SHARES:
        words[key] = percent(words[key])
    target = assumptions.target_colonies
    words["target_words"] = f"{target} colonies" if target is not None else "as many colonies as now"
    return words


def _keys(assumptions):
    return [question.key for question in questions_for(assumptions.region)]


def own_answers(assumptions):
    """Keys of the answers that differ from the default."""
    return {
        question.key
        for question in questions_for(assumptions.region)
        if question.key != "region" and not _same(getattr(assumptions, question.key), question.default)
    }


def _same(answer, default):
    if answer is None or default is None or isinstance(answer, str | bool):
        return answer == default
    return float(answer) == float(default)


def assumption_rows(assumptions):
    """Every question with its answer in words, its default and where that comes from."""
    own = own_answers(assumptions)
    rows = []
    for question in questions_for(assumptions.region):
        value = getattr(assumptions, question.key)
        rows.append(
            AssumptionRow(
                key=question.key,
                group=question.group,
                ask=question.ask,
                value=answer_words(question, value),
                unit=unit_words(question),
                default=answer_words(question, question.default),
                own=question.key in own,
                source=question.source,
            )
        )
    return tuple(rows)


def unit_words(question):
    return "" if question.kind in ("share", "flag", "choice") else question.unit


def answer_words(question, value):
    """70 %, yes, medium, week 16: an answer as one reads it aloud."""
    if value is None:
        return {"target_colonies": "as today", "winters": "not told"}.get(question.key, "by region")
    if question.kind == "winters":
        return winters_in_words(value)
    if question.kind == "flag":
        return "yes" if value else "no"
    if question.kind == "share":
        return percent(float(value))
    if question.kind == "choice":
        return dict(question.choices).get(str(value), str(value))
    if question.kind == "money":
        return f"{float(value):,.2f}"
    return f"{float(value):,.10g}"

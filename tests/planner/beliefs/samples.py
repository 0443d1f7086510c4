"""A belief check as it stands in a report. All figures invented."""

from decimal import Decimal

from planner.beliefs.records import Belief, BeliefsSection, End


def make_end(**fields):
    return End(
        **{
            "words": "55 %",
            "value": 0.55,
            "spend": Decimal("-412.00"),
            "worth": Decimal("-2310.00"),
            "regret": Decimal("140.00"),
            "regret_most": Decimal("152.00"),
            "changes": {"nf-deep-5": (6, 2)},
            "sentence": "If only 55 % come through instead of 72 %, you would order 4 packs of deeps fewer; the order "
            "as it stands would then cost you $140 against the best.",
            **fields,
        }
    )


def make_belief(**fields):
    return Belief(
        **{
            "key": "survival_share",
            "name": "colonies that come through the winter",
            "answered": "72 %",
            "low": make_end(),
            "high": make_end(
                words="85 %", value=0.85, regret=Decimal("60.00"), changes={}, sentence="Little."
            ),
            "source": "judgement",
            "find_out": "Count the living hives at the first look in spring.",
            **fields,
        }
    )


def make_section(**fields):
    other = make_belief(
        key="honey_price", name="price of a pound of honey", answered="$2.60", low=None, find_out="Ask."
    )
    return BeliefsSection(
        **{
            "seasons": 100,
            "gap": Decimal("12.00"),
            "rows": (make_belief(), other),
            "first": ("survival_share", "honey_price"),
            "not_reached": ("minutes a super",),
            "left_out": ("colonies wanted in autumn",),
            "sentences": ("Two answers are worth knowing better.",),
            **fields,
        }
    )

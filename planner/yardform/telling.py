"""The yard form's judgement said plainly: both worths, by how much the pool flatters the order, and a sentence.

Takes a Judged, or the reason why there is none; gives the YardSection of a report. Judges nothing.
"""

import math
from decimal import Decimal

from planner.plan.trial_records import YardSection
from planner.plan.words import number, percent, sum_words

FIGURES = 4  # that count in a worth
TOO_NEAR = 0.0005  # of the worth: less shows as nothing
OUT_OF_SCALE = 0.5  # of the worth: above it a share says nothing, the worth being next to none


def section_of(judged, money):
    """Both worths rounded alike, the gap as a share and in words."""
    step = 10 ** max(0, math.floor(math.log10(max(1.0, abs(judged.by_yard)))) - FIGURES + 1)
    pooled, by_yard = (
        Decimal(round(each / step) * step).quantize(Decimal(1)) for each in (judged.pooled, judged.by_yard)
    )
    return YardSection(
        seasons=judged.scenarios,
        pooled=pooled,
        by_yard=by_yard,
        gap_share=judged.gap,
        said=(
            f"Hauling told yard by yard, this order is worth {sum_words(by_yard, money)} a season; reckoned as one pool "
            f"it looked like {sum_words(pooled, money)}{_apart(judged.gap)}, on the same {number(judged.scenarios)} "
            "fresh seasons."
        ),
    )


def not_told(why):
    """The section where the order could not be judged: it says so."""
    return YardSection(
        seasons=0,
        pooled=None,
        by_yard=None,
        gap_share=None,
        said=f"Not judged yard by yard: {why}. Its worth is reckoned as if all gear lay in one pool.",
    )


def _apart(gap):
    if abs(gap) > OUT_OF_SCALE:
        return ""
    if abs(gap) < TOO_NEAR:
        return " (the same within a tenth of a per cent)"
    return f" ({percent(abs(gap), 1)} {'more' if gap > 0 else 'less'})"

"""A projection cut to the season: what would begin only after it is next winter's order, not this one's.

Takes a projection of the 52 weeks ahead and the assumptions; gives it with what begins in the season's weeks still to
come. A season planned from its first day keeps all of it.
"""

from dataclasses import replace

from planner.season.calendar import due_period, is_ahead


def within_season(projection, assumptions):
    """The same without losses, splits, boxes, supers, feed and drawing that come after the season."""
    if not assumptions.began_before:
        return projection

    def kept(rows, week="week"):
        return tuple(row for row in rows if is_ahead(assumptions, getattr(row, week)))

    renewing = due_period(assumptions, assumptions.second_box_week, late_weeks=0)
    return replace(
        projection,
        deadouts=kept(projection.deadouts),
        splits=kept(projection.splits),
        second_boxes=kept(projection.second_boxes),
        supers=kept(projection.supers, "first"),
        feed=kept(projection.feed),
        small_gear=kept(projection.small_gear, "first"),
        consumables=kept(projection.consumables),
        drawing=kept(projection.drawing),
        culled_combs=projection.culled_combs if is_ahead(assumptions, renewing) else {},
    )

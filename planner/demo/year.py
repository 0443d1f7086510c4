"""The invented year of the demo: from the day its sheet was filled in to the day of the order, told in acts.

Takes the keeper, the opening day and a seed; writes only through the acts of colonies, yards and books, as a keeper
would, every kind of act among them. Gives the number of acts told.
"""

from planner.demo import autumn, spring, summer
from planner.demo.telling import Year


def live_through(*, who, opened_on, seed):
    """Tells the whole year. Gives the number of acts."""
    year = Year(who=who, opened_on=opened_on, seed=seed)
    for season in (spring, summer, autumn):
        season.told(year)
    return next(year.numbers) - 1

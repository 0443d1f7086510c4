"""How much is measured: the sizes of the targets in full, and little enough to end within five minutes."""

from planner.bench.instances import Size
from planner.bench.scales import FULL, QUICK
from planner.bench.tasks import Instance


def test_the_full_scale_is_that_of_the_targets():
    sizes = [(s.yards, s.colonies) for s in (FULL.small, FULL.medium, FULL.large, FULL.wide)]
    assert sizes == [(6, 90), (12, 300), (40, 1000), (40, 600)]
    assert (FULL.few, FULL.several, FULL.repeats, len(FULL.seeds), FULL.fresh) == (20, 300, 3, 5, 1000)


def test_the_quick_one_ends_within_five_minutes_and_holds_no_run_over_a_minute():
    assert QUICK.total_seconds < 285
    assert QUICK.run_seconds + QUICK.grace(None) <= 60


def test_grace_grows_with_the_seasons_to_be_worked_out():
    many = Instance(catalogue={}, market={}, size=Size(yards=1, colonies=6), scenarios=1000)
    assert FULL.grace(many) == FULL.grace(None) + 1000 * FULL.season_seconds

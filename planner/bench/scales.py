"""How much is measured: sizes, numbers of scenarios, repeats, seeds and the time allowed, in full and quick.

Gives Scale, FULL and QUICK. Measures nothing.
"""

from dataclasses import dataclass

from planner.bench.instances import Size

SMALL, MEDIUM, LARGE = Size(yards=6, colonies=90), Size(yards=12, colonies=300), Size(yards=40, colonies=1000)
WIDE = Size(yards=40, colonies=600)  # the small one's colonies a yard


@dataclass(frozen=True, kw_only=True)
class Scale:
    """`run_seconds` ends one run, `opponent_seconds` one of a slow opponent, `total_seconds` all (None: no end)."""

    small: Size = SMALL
    medium: Size = MEDIUM
    large: Size = LARGE
    wide: Size = WIDE
    few: int = 20
    hundred: int = 100
    several: int = 300
    many: int = 1000
    fresh: int = 1000
    of_forms: int = 5  # scenarios in which forms are compared as LPs
    of_orders: int = 2  # scenarios in which the pooled order is held in the naive form
    repeats: int = 3
    seeds: tuple[int, ...] = (1, 2, 3, 4, 5)
    trial_seeds: tuple[int, ...] = (1, 2, 3)
    run_seconds: float = 300.0
    opponent_seconds: float = 900.0
    start_seconds: float = 15.0  # beside a run's own: starting and ending its process
    season_seconds: float = 0.15  # and working out each of its seasons, on a slow machine
    total_seconds: float | None = None
    long_runs: bool = True

    def grace(self, instance):
        """Seconds beside a run's own before it is killed."""
        return self.start_seconds + self.season_seconds * (instance.scenarios if instance else 0)


FULL = Scale()
QUICK = Scale(
    of_forms=1,
    of_orders=1,
    repeats=1,
    seeds=(1, 2, 3),
    trial_seeds=(1,),
    fresh=200,
    run_seconds=45.0,
    total_seconds=270.0,
    long_runs=False,
)

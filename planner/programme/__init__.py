"""The programme (a MILP) of a sizing problem; FAMILIES names each family of constraints and the function that says it."""

from planner.programme.building import bad_years, build
from planner.programme.gear import balance
from planner.programme.hauls import trips
from planner.programme.money import budget, free_from, later_budget, order_fee
from planner.programme.orders import all_units, fixed_packs, incremental, order_limit, whole_packs
from planner.programme.recipes import work_minutes
from planner.programme.record import Programme
from planner.programme.uses import must_use, needs_use, use_limit, whole_uses

FAMILIES = (
    balance,
    use_limit,
    must_use,
    whole_uses,
    needs_use,
    whole_packs,
    order_limit,
    all_units,
    incremental,
    fixed_packs,
    order_fee,
    free_from,
    budget,
    later_budget,
    work_minutes,
    trips,
    bad_years,
)

__all__ = ["FAMILIES", "Programme", "build"]

"""Published transport and transshipment problems through the hauling plan: costs agree, and a truck of any size carries
what they say."""

import math

import pytest

from planner.after.loads import Lot, trips_of
from planner.after.records import EXTRA
from tests.outside import transports
from tests.outside.published import case
from tests.outside.test_transports import TRANSPORTS
from tests.planner.after.made import MEDIUM, truck

GOODS = (MEDIUM, False)  # 5 lb a piece


@pytest.mark.parametrize("name", TRANSPORTS)
@pytest.mark.parametrize("pieces", [10, 37, 10_000])
def test_each_published_haul_is_carried_whole_in_the_fewest_loads(name, pieces, solver, sized):
    """Cost and quantities are the published ones (named beside each case); each way is then put on loads of so many
    pieces: none over the truck, all of it carried, and as few loads as the quantity allows."""
    published = case(name)
    plan = sized(transports.transport(published.data), solver)
    costs = {
        (source, sink): cost
        for source, row in zip(published.data["sources"], published.data["cost"], strict=True)
        for sink, cost in zip(published.data["sinks"], row, strict=True)
    }
    carrier, paid = truck(lb=5 * pieces, cubic_ft=10**9), 0.0
    for line in plan["scenarios"][0]["hauled"]:
        quantity = round(line["units"])
        lot = Lot(cargo={GOODS: quantity}, release=0, due=0)
        trips, _left = trips_of(carrier, [0], [lot], full={}, spare={})
        assert sum(trip.out[GOODS] for trip in trips) == quantity
        assert all(trip.out[GOODS] <= pieces for trip in trips)
        assert len(trips) == max(1, math.ceil(quantity / pieces))
        assert sum(trip.rides == EXTRA for trip in trips) == len(trips) - 1
        paid += costs[line["from"], line["to"]] * sum(trip.out[GOODS] for trip in trips)
    assert paid * published.data.get("scale", 1) == published.figure("optimal_cost")


@pytest.mark.parametrize("pieces", [100, 730, 10_000])
def test_a_published_transshipment_is_carried_whole_through_its_depots(pieces, solver, sized):
    """Phillips and Mitchell, case study on transshipment, 2007 (data published, answer computed): 15,005. A depot is to
    the hauling what the shed is: what comes in on one line's loads goes out on another's. Each line is a way of its own,
    its least and most held by the order; loads are whole pieces, so the quantities must be whole, and they are."""
    published = case("tr-american-steel")
    plan = sized(transports.transshipment(published.data), solver)
    lines = {f"{start}-{end}": (start, end, cost) for start, end, cost, *_ in published.data["arcs"]}
    carrier, paid = truck(lb=5 * pieces, cubic_ft=10**9), 0.0
    kept = dict(published.data["supply"])
    for made in plan["scenarios"][0]["made"]:
        start, end, cost = lines[made["recipe"]]
        quantity = round(made["units"])
        assert quantity == pytest.approx(made["units"], abs=1e-6)
        lot = Lot(cargo={GOODS: quantity}, release=0, due=0)
        trips, _left = trips_of(carrier, [0], [lot], full={}, spare={})
        assert len(trips) == max(1, math.ceil(quantity / pieces))
        carried = sum(trip.out[GOODS] for trip in trips)
        kept[start] = kept.get(start, 0) - carried
        kept[end] = kept.get(end, 0) + carried
        paid += cost * carried
    wanted = published.data["requirement"]
    assert {place: kept.get(place, 0) for place in wanted} == pytest.approx(wanted)
    assert all(quantity >= 0 for quantity in kept.values())
    assert all(kept[place] == 0 for place in ("Cincinatti", "Kansas City", "Chicago"))
    assert paid == pytest.approx(published.figure("optimal_cost"))

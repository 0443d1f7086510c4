"""Transport and transshipment through `size`, against published costs."""

import pytest

from tests.outside import transports
from tests.outside.published import case

TRANSPORTS = (
    # Dantzig, Linear Programming and Extensions, 1963, ch. 3.3 (data from memory)
    "tr-dantzig",
    # Phillips and Mitchell, case study "A Transportation Problem", 2007 (answer from memory)
    "tr-beer",
    # Taha, Operations Research: An Introduction, 2017, Examples 5.3-1 to 5.3-5
    "tr-sunray",
)


@pytest.mark.parametrize("name", TRANSPORTS)
def test_hauling_costs_what_is_published(name, solver, sized):
    published = case(name)
    plan = sized(transports.transport(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    hauled = {}
    for line in plan["scenarios"][0]["hauled"]:
        hauled[line["to"]] = hauled.get(line["to"], 0) + line["units"]
    wanted = dict(zip(published.data["sinks"], published.data["requirement"], strict=True))
    assert hauled == pytest.approx(wanted)


def test_lines_with_least_and_most_flow_are_recipes_with_passes_and_stubs(solver, sized):
    """Phillips and Mitchell, case study on transshipment, 2007 (data published, answer computed): 15,005."""
    published = case("tr-american-steel")
    plan = sized(transports.transshipment(published.data), solver)
    assert -plan["objective"] == published.figure("optimal_cost")
    moved = {line["recipe"]: line["units"] for line in plan["scenarios"][0]["made"]}
    for start, end, _, least, most in published.data["arcs"]:
        assert least - 1e-6 <= moved.get(f"{start}-{end}", 0) <= most + 1e-6

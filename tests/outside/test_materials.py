"""Bills of material with lead times through `size`, against published releases."""

import pytest

from tests.outside import materials
from tests.outside.published import case

BILLS = (
    # Nahmias, Production and Operations Analysis, MRP chapter, trumpet example (trumpet row from memory)
    "mrp-trumpet",
    # Heizer and Render, Operations Management, 12th ed., 2017, ch. 14, Problems 14.5-14.7 (partly from memory)
    "mrp-stu",
    "mrp-stu-gross",
    # Taha, Operations Research: An Introduction, 2017, sec. 13.4 and Figure 13.7 (schedule computed)
    "mrp-taha",
)


@pytest.mark.parametrize("name", BILLS)
def test_the_order_releases_what_the_published_schedule_does(name, solver, sized):
    published = case(name)
    plan = sized(materials.schedule(published.data), solver)
    released = materials.releases(published.data, plan)
    for code, rows in published.answer.items():
        assert released[code] == rows["releases"], code
    for key, (rows, _) in published.published.items():
        code, row = key.split("/")
        if row == "net":  # a net requirement is met by what was released a lead time before
            lead = published.data["items"][code]["lead_time"]
            assert {str(int(period) + lead): units for period, units in released[code].items()} == rows, key

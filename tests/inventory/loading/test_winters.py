"""Past winters of a sheet: new, put right, as they are; and what planning makes of them."""

from apiary.winters import winters_told
from inventory.sheets import Sheet, WinterRow
from tests.inventory.loading.made import load, told


def winters(*rows):
    return Sheet(winters=rows)


def test_winters_are_told_and_put_right():
    first = WinterRow(autumn=2023, went_in=60, came_out=44)
    assert told(load(winters(first)), "winters") == [("2023/24, all yards", "new", "60 in, 44 out")]
    again = load(winters(first, WinterRow(autumn=2024, went_in=72, came_out=58)), digest="b")
    assert [one[1] for one in told(again, "winters")] == ["as it is", "new"]
    mended = load(winters(WinterRow(autumn=2023, went_in=60, came_out=45)), digest="c")
    assert told(mended, "winters") == [
        ("2023/24, all yards", "changed", "60 in, 44 out becomes 60 in, 45 out"),
    ]
    assert winters_told(until=2026) == ((60, 45), (72, 58))


def test_a_winter_of_a_yard_is_that_yards():
    load()
    assert winters_told(until=2026) == ((12, 9), (10, 6))

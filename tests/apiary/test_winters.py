"""Past winters: told once a winter and yard, put right by telling again, one pair a winter for planning."""

import pytest
from django.db import IntegrityError, transaction

from apiary.models import PastWinter
from apiary.winters import MOST_WINTERS, tell_winter, winters_told
from tests.makers import make_yard

pytestmark = pytest.mark.django_db


def test_a_winter_told_again_is_put_right():
    row, was = tell_winter(autumn=2023, went_in=60, came_out=44)
    assert was is None and str(row) == "2023/24, all yards"
    assert tell_winter(autumn=2023, went_in=60, came_out=45)[1] == (60, 44)
    assert winters_told(until=2026) == ((60, 45),)


def test_yards_are_added_up_where_the_whole_is_not_told():
    creek, mill = make_yard(), make_yard()
    tell_winter(autumn=2023, went_in=20, came_out=15, yard=creek)
    tell_winter(autumn=2023, went_in=30, came_out=21, yard=mill)
    tell_winter(autumn=2022, went_in=9, came_out=9, yard=mill)
    tell_winter(autumn=2022, went_in=50, came_out=30)
    assert winters_told(until=2026) == ((50, 30), (50, 36))


def test_only_winters_begun_by_then_and_the_last_twenty_are_told():
    for autumn in range(2000, 2026):
        tell_winter(autumn=autumn, went_in=autumn, came_out=1)
    assert winters_told(until=2001) == ((2000, 1), (2001, 1))
    assert len(winters_told(until=2030)) == MOST_WINTERS and winters_told(until=2030)[-1] == (2025, 1)


@pytest.mark.parametrize("pair", [(10, 11), (0, 0)])
def test_the_tables_refuse_more_out_than_in_and_none_at_all(pair):
    with pytest.raises(IntegrityError), transaction.atomic():
        PastWinter.objects.create(autumn=2020, went_in=pair[0], came_out=pair[1])


def test_the_tables_refuse_the_same_winter_twice():
    tell_winter(autumn=2020, went_in=2, came_out=1)
    with pytest.raises(IntegrityError), transaction.atomic():
        PastWinter.objects.create(autumn=2020, went_in=3, came_out=1)

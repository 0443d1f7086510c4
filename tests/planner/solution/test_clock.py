"""Seconds of a solve."""

from planner.solution.clock import Clock


def test_seconds_left_are_never_fewer_than_asked_for():
    clock = Clock(0)
    assert clock.is_over()
    assert (clock.left(), clock.left(least=20.0)) == (1.0, 20.0)


def test_a_clock_counts_down():
    clock = Clock(100)
    assert not clock.is_over()
    assert 0 <= clock.spent() < 100
    assert 0 < clock.left() <= 100

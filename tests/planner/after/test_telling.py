"""The sentences about what follows the order."""

from dataclasses import replace

from planner.after.telling import enough, sentences, two_lines
from tests.planner.after import made


def said(**changed):
    return " ".join(sentences(made.section(**changed)).sentences)


def test_trips_are_told_with_the_extra_ones_and_the_truck():
    words = said()
    assert "3 loads within 1,000 lb and 50 cubic feet; 1 is an extra trip" in words
    assert "the books know the way from home to each yard, not between them" in words


def test_the_check_tells_planned_and_fresh_seasons_and_where_it_fails_first():
    words = enough(made.section())
    assert words.startswith("In 92 of 100 seasons planned these trips are enough, in 90 of 100 fresh ones")
    assert "at Mill race in the week of 30 July 2027, by 1 trip: full supers to take home" in words
    assert "by about 4 × medium box" in words


def test_a_plan_that_never_fails_says_no_more():
    sound = replace(made.section().planned, short=(), full=())
    assert "Where" not in enough(made.section(fresh=None, planned=sound))


def test_nothing_to_haul_is_said_and_what_is_not_there_is_left_out():
    words = said(loads=(), feed=(), sugar=(), pulls=(), stands=())
    assert "Nothing is to be hauled" in words
    assert "syrup" not in words and "pull" not in words and "stands" not in words


def test_stands_that_are_too_few_are_told():
    assert "More colonies than stands: Mill race (14 on 12 in the week of 18 June 2027)." in said()


def test_what_is_bought_in_season_is_told():
    assert "; 7 pieces of it are bought in season" in said(in_season=7)


def test_a_terminal_is_told_two_lines():
    assert two_lines(made.section()) == (
        "3 loads to haul, 1 of them extra trips; these trips are enough in 90 of 100 fresh seasons.",
        "5 hours at the bench, all done in time.",
    )

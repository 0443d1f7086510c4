"""The sentences about what follows the order."""

from dataclasses import replace

from planner.after.telling import enough, in_time, sentences, two_lines
from tests.planner.after import made


def said(**changed):
    return " ".join(sentences(made.section(**changed)).sentences)


def test_trips_are_told_with_the_extra_ones_and_the_truck():
    words = said()
    assert "3 loads within 1,000 lb and 50 cubic feet; 1 is an extra trip" in words
    assert "the books know the way from home to each yard, not between them" in words


def test_the_check_tells_planned_and_fresh_seasons_and_where_it_fails_first():
    assert enough(made.section()) == (
        "In 90 seasons of 100 this hauling plan is enough: its trips carry all that the season asks for (in 93), and no yard "
        "waits longer than its next visit while a piece lies idle (in 96). Tried on 40 fresh seasons; of those it was planned "
        "with it is enough in 92 of 100."
    )
    words = in_time(made.section())
    assert words.startswith("95\N{NO-BREAK SPACE}% of the pieces are at their yard when they are wanted")
    assert "at Mill race in the week of 30 July 2027, by 1 trip: full supers to take home" in words
    assert "it is most often Mill race in the week of 4 June 2027, for about 4 × medium box" in words


def test_a_plan_that_never_fails_says_no_more():
    sound = replace(made.section().planned, short=(), full=())
    assert "Where" not in in_time(made.section(fresh=None, planned=sound))


def test_it_is_said_where_it_was_tried_on_no_fresh_seasons():
    assert "Tried on the 100 seasons it was planned with." in enough(made.section(fresh=None))


def test_days_to_keep_free_are_told_with_the_likeliest():
    words = said()
    assert (
        "Counted with these is 1 trip to keep a day free for, made only in a season that asks for it" in words
    )
    assert "most likely to Mill race in the week of 30 July 2027, in 15 seasons of 100" in words
    assert "a day free" not in said(free=())


def test_what_the_truck_takes_not_even_one_of_is_named():
    words = said(too_large=("medium box, full of honey",))
    assert (
        "takes not even one of these, and they are left out of the loads: medium box, full of honey." in words
    )
    assert "Look at the pounds and cubic feet told of your truck" in words
    assert "not even one" not in said()


def test_the_first_sentences_are_those_about_hauling():
    told = sentences(made.section(too_large=("box",)))
    assert [line.split(" ")[0] for line in told.sentences[: told.hauling]] == [
        "In",
        "95\N{NO-BREAK SPACE}%",
        "Counted",
        "3",
        "Each",
        "The",
    ]


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
        "3 loads to haul, 1 of them extra trips. In 90 seasons of 100 this hauling plan is enough, tried on fresh seasons.",
        "5 hours at the bench, all done in time.",
    )

"""Shed, bench and yards agree: late gear comes on the first visit after, and what never came does not come home."""

from planner.after.answering import Ready, arrival, homecomings, taken_back
from planner.after.shed import Chunk, Want
from planner.after.targets import Course

KEY = "creek", "box"


def course(out, home, full=None):
    return Course(
        yard="creek", part="box", out=tuple(out), home=tuple(home), full=tuple(full or [0] * len(out))
    )


def ready(pieces, wanted, arrives):
    chunk = Chunk(
        want=Want(yard="creek", part="box", pieces=pieces, week=wanted), part="box", pieces=pieces, ready=0
    )
    return Ready(chunk=chunk, pieces=pieces, week=arrives, arrives=arrives)


def test_gear_ready_in_time_arrives_when_wanted_and_late_gear_on_the_next_visit():
    assert arrival(6, 3, [0, 2, 4, 6, 8]) == 6
    assert arrival(6, 7, [0, 2, 4, 6, 8]) == 8
    assert arrival(6, 9, [0, 2, 4, 6, 8]) == 9  # no visit is left: a trip of its own


def test_full_supers_are_free_once_extracted_and_the_rest_a_week_later():
    made = {KEY: course([0] * 5, [0, 7, 0, 0, 0], [0, 5, 0, 0, 0])}
    assert homecomings(made, 2) == [("box", 3, 5), ("box", 2, 2)]


def test_what_never_reached_the_yard_does_not_come_home():
    made = {KEY: course([8, 0, 0], [0, 0, 8], [0, 0, 8])}
    back = taken_back(made, [ready(5, 0, 0)], made)[KEY]
    assert (back.home, back.full) == ((0, 0, 5), (0, 0, 5))


def test_what_came_late_but_in_time_for_its_way_home_does():
    made = {KEY: course([8, 0, 0], [0, 0, 8])}
    assert taken_back(made, [ready(8, 0, 1)], made)[KEY] == made[KEY]


def test_no_more_is_taken_home_again_than_was_settled():
    made = {KEY: course([8, 0, 0], [0, 0, 8])}
    less = {KEY: course([8, 0, 0], [0, 0, 3])}
    assert taken_back(made, [ready(8, 0, 0)], less)[KEY].home == (0, 0, 3)


def test_the_whole_order_settles_so_that_shed_and_yards_agree(after):
    answer = after.answer
    assert taken_back(answer.courses, answer.ready, answer.courses).keys() == answer.courses.keys()
    assert all(sum(c.home) >= sum(c.full) for c in answer.courses.values())

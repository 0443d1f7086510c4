"""Where boxes that go on or come off are marked over the drawing of a hive."""

from inventory.stack import Box, Hive, draw
from inventory.stack.marks import Mark, coming_off, going_on, path_of, rise_of

DEEP, MEDIUM = Box(depth="deep", width=10), Box(depth="medium", width=10)
MEASURES = {"depth": "medium", "width": 10}


def test_boxes_go_on_one_above_the_other_from_the_top_of_the_cover():
    drawing = draw(Hive(boxes=(DEEP,)))
    marks = going_on(drawing, most=2, **MEASURES)
    top = drawing.pieces[0].top
    # a medium is 6 5/8 in high and a box for ten 16 1/4 in wide: 106 and 260 sixteenths
    assert [(mark.y, mark.tall, mark.wide, mark.x) for mark in marks] == [
        (top - 106, 106, 260, 40),
        (top - 212, 106, 260, 40),
    ]


def test_a_hive_with_nothing_booked_gets_its_box_on_the_stand():
    drawing = draw(Hive(stand="", floor=False, cover=""))
    assert going_on(drawing, most=1, **MEASURES)[0].y == drawing.height - 106


def test_booked_supers_are_marked_from_above_and_the_rest_stands_over_the_hive():
    drawing = draw(Hive(boxes=(DEEP, MEDIUM, MEDIUM)))
    marks = coming_off(drawing, booked=2, most=3, **MEASURES)
    boxes = [piece for piece in drawing.pieces if piece.box is not None]
    assert [(mark.y, mark.tall) for mark in marks[:2]] == [(box.top, 106) for box in boxes[:2]]
    assert [mark.wide for mark in marks] == [
        288,
        288,
        260,
    ]  # around the box, so that its own lines stay clear
    assert marks[2].y == drawing.pieces[0].top - 106


def test_brood_boxes_are_never_marked_to_come_off():
    drawing = draw(Hive(boxes=(MEDIUM, MEDIUM, MEDIUM)))
    (mark,) = coming_off(drawing, booked=1, most=1, **MEASURES)
    assert mark.y == next(piece.top for piece in drawing.pieces if piece.box is not None)


def test_the_drawing_rises_by_what_stands_above_it():
    marks = [Mark(x=0, y=-30, wide=10, tall=20), Mark(x=0, y=-10, wide=10, tall=20)]
    assert rise_of(marks) == 32
    assert rise_of([Mark(x=0, y=5, wide=1, tall=1)]) == rise_of([]) == 0
    assert path_of(marks) == "M0 -30h10v20h-10zM0 -10h10v20h-10z"

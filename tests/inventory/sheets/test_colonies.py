"""Colonies and gear against yards, sets, parts and the books."""

import datetime as dt

import pytest

from tests.inventory.sheets.workbooks import known, only_fault, read


@pytest.mark.parametrize(
    "changes, cell, what",
    [
        (
            {("Colonies", "tag", 3): "m-01", ("Colonies", "mother", 3): None},
            "A3",
            "the tag 'm-01' stands in row 2 already",
        ),
        ({("Colonies", "yard", 2): "Hill"}, "B2", "the yard 'Hill' is not known"),
        ({("Colonies", "hive_set", 2): "two deep"}, "C2", "the set 'two deep' is not known"),
        ({("Colonies", "strength", 2): "huge"}, "D2", "'huge' is none of strong, fair, weak"),
        (
            {("Colonies", "origin", 3): "bought"},
            "E3",
            "'bought' is none of overwintered, split, nuc, package, swarm",
        ),
        (
            {("Colonies", "started_on", 3): "03/04/2026"},
            "F3",
            "'03/04/2026' may mean 3 April or 4 March",
        ),
        ({("Colonies", "mother", 3): "M-09"}, "G3", "the mother 'M-09' is not known"),
        ({("Colonies", "mother", 3): "M-02"}, "G3", "a colony is not its own mother"),
        ({("Colonies", "supers", 2): 1.5}, "H2", "1.5 is not a whole number"),
        ({("Colonies", "supers", 2): -1}, "H2", "-1 is negative"),
        (
            {("Colonies", "hive_set", 2): "nuc, 5 frames"},
            "H2",
            "the catalogue has no medium super that fits on 'nuc, 5 frames'",
        ),
        ({("Gear", "yard", 4): "Hill"}, "A4", "the place 'Hill' is not known"),
        ({("Gear", "part", 2): "quilt"}, "B2", "the part 'quilt' is not known"),
        ({("Gear", "quantity", 2): "forty"}, "D2", "'forty' is text, not a number"),
        ({("Gear", "quantity", 2): -4}, "D2", "-4 is negative"),
        ({("Gear", "quantity", 2): 4.5}, "D2", "4.5 is not a whole number"),
        ({("Gear", "quantity", 2): None}, "D2", "Count is empty"),
        ({("Gear", "condition", 2): "new"}, "C2", "'new' is none of sound, to mend, held back"),
        (
            {("Gear", "condition", 3): None},
            "B3",
            "medium box, 10 frames, sound, at this place stands in row 2 already",
        ),
    ],
)
def test_what_cannot_be_is_refused_with_its_cell(changes, cell, what):
    fault = only_fault(changes)
    assert (fault.cell, fault.what) == (cell, what)


def test_an_unknown_part_comes_with_the_nearest_name():
    fault = only_fault({("Gear", "part", 2): "medum box, 10 frame"})
    assert fault.remedy == "Did you mean 'medium box, 10 frames'? Write that"


def test_a_tag_of_a_colony_that_ended_is_not_used_again():
    fault = only_fault(of=known(ended=frozenset({"M-01"})))
    assert (fault.cell, fault.what) == ("A2", "by the books the colony 'M-01' is no more")


def test_mothers_in_a_circle_are_refused():
    told = [
        (one.cell, one.what)
        for one in read({("Colonies", "mother", 2): "M-02", ("Colonies", "started_on", 3): None}).faults
    ]
    assert told == [(cell, "following the mothers leads back to this colony") for cell in ("G2", "G3")]


def test_a_mother_does_not_begin_after_her_daughter():
    fault = only_fault({("Colonies", "started_on", 2): "2026-06-01"})
    assert (fault.cell, fault.what) == ("F3", "it began on 2026-05-14, before its mother did (2026-06-01)")


def test_a_mother_may_be_one_the_books_know_living_or_not():
    books = known(colonies={"Q1": "shed"}, ended=frozenset({"Q2"}), yards={"shed": "Shed"})
    for mother in ("q1", "Q2"):
        assert read({("Colonies", "mother", 3): mother}, of=books).sheet.colonies[1].mother == mother.upper()


def test_a_colony_that_begins_after_the_day_of_loading_is_refused():
    fault = only_fault(day=dt.date(2026, 5, 1))
    assert (fault.cell, fault.what) == ("F3", "2026-05-14 is after 2026-05-01, the day of loading")


def test_tags_typed_as_numbers_are_text():
    assert (
        read({("Colonies", "tag", 2): 17, ("Colonies", "mother", 3): "17"}).sheet.colonies[1].mother == "17"
    )


def test_the_word_shed_means_the_shed_whatever_it_is_called():
    sheet = read({("Yards", "name", 2): "Honey house", ("Yards", "code", 2): "house"}).sheet
    assert {row.yard for row in sheet.gear} == {"house", "mill-field"}


def test_more_colonies_than_stands_is_worth_a_word_and_no_fault():
    reading = read({("Yards", "stands", 3): 1})
    assert reading.faults == ()
    assert [one.what for one in reading.notes] == ["Mill Field (invented) has 2 colonies, but stands for 1"]


def test_colonies_the_books_have_there_already_take_stands_too():
    books = known(
        yards={"mill-field": "Mill Field (invented)"},
        stands={"mill-field": 16},
        colonies={f"K{number}": "mill-field" for number in range(15)},
    )
    (note,) = read(of=books).notes
    assert note.what == "Mill Field (invented) has 17 colonies, but stands for 16"


def test_nothing_counted_is_a_count_too():
    assert read({("Gear", "quantity", 2): 0}).sheet.gear[0].quantity == 0

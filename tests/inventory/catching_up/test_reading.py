"""Rows read: every fault of every row in a sentence that says what would be right."""

import pytest

from inventory.catching_up.known import Known
from inventory.catching_up.reading import read_rows
from tests import makers
from tests.inventory.catching_up.made import DAY, row

pytestmark = pytest.mark.django_db


def read(*rows):
    return read_rows(rows, Known())


def test_a_row_is_understood_by_names_in_any_case(outfit):
    told, faults = read(row(1, "haul", "SHED", "Deep Box, 10 frames", 4, "fern hollow"))
    assert faults == {}
    (one,) = told
    assert (one.day, one.ground, one.other.code, one.gear, one.quantity) == (
        DAY,
        outfit,
        "fern-hollow",
        {"box-deep-10": 1},
        4,
    )


def test_an_empty_other_end_is_the_shed(outfit):
    (one,), _ = read(row(1, "place", "F-01", "excluder-10", 1))
    assert one.other == outfit


def test_syrup_is_told_in_gallons_by_quarters_and_kept_in_quarts(outfit):
    (one, dry), _ = read(row(1, "feed", "F-01", "Syrup 1:1", "1.5"), row(2, "feed", "F-01", "sugar", 5))
    assert (one.gear, one.quantity, dry.quantity) == ("syrup-1-1", 6, 5)


def test_splits_are_told_by_their_set_their_tags_or_both(outfit):
    makers.make_hive_set("one-deep-10")
    (plain, by_set, by_tag, both), faults = read(
        row(1, "split", "F-01", "", 2),
        row(2, "split", "F-01", "One deep, 10 frames", 1),
        row(3, "split", "F-01", "F-21, F-22", 2),
        row(4, "split", "F-01", "one-deep-10, F-23", 1),
    )
    assert faults == {}
    assert plain.gear is None
    assert (by_set.gear[0].code, by_set.gear[1]) == ("one-deep-10", ())
    assert by_tag.gear == (None, ("F-21", "F-22"))
    assert (both.gear[0].code, both.gear[1]) == ("one-deep-10", ("F-23",))


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (row(1, "", "F-01", "excluder-10", 1), "What was done? Choose an act from the list."),
        (row(1, "dance", "F-01", "excluder-10", 1), "What was done? Choose an act from the list."),
        (row(1, "place", "F-01", "excluder-10", 1, day=""), "Which day?"),
        (row(1, "place", "F-01", "excluder-10", 1, day="20 May"), "'20 May' is not a day"),
        (row(1, "place", "", "excluder-10", 1), "Where? Place on a colony wants a colony."),
        (row(1, "place", "F-99", "excluder-10", 1), "'F-99' is no colony and no yard of the books"),
        (row(1, "place", "fern hollow", "excluder-10", 1), "'fern hollow' is the yard Fern Hollow: Place"),
        (row(1, "haul", "F-01", "excluder-10", 1), "'F-01' is colony F-01: Haul wants a store."),
        (row(1, "place", "F-01", "", 1), "Of what? Place on a colony wants a part or a set."),
        (row(1, "place", "F-01", "no such", 1), "'no such' is not known"),
        (row(1, "draw", "F-01", "deep box, 10 frames", 1), "Comb was drawn wants the comb it became."),
        (row(1, "assemble", "shed", "sugar", 1), "Assemble wants what was made."),
        (row(1, "mend", "shed", "super-medium-10", 1), "Mend wants a part."),
        (row(1, "super-up", "F-01", "floor-10", 1), "Super up wants which super"),
        (row(1, "place", "F-01", "excluder-10"), "How many? Give a whole number from 1 to 1,000,000."),
        (row(1, "place", "F-01", "excluder-10", "0"), "got '0'"),
        (row(1, "place", "F-01", "excluder-10", "1.5"), "got '1.5'"),
        (row(1, "place", "F-01", "excluder-10", "nan"), "got 'nan'"),
        (row(1, "place", "F-01", "excluder-10", "1e999"), "got '1e999'"),
        (row(1, "feed", "F-01", "1:1", "0.1"), "gallons in quarters, as 1.5, got '0.1'"),
        (row(1, "place", "F-01", "excluder-10", 1, "nowhere"), "'nowhere' is not a store of the books"),
        (row(1, "mend", "shed", "box-medium-10", 1, "shed"), "Mend has no other end: leave 'shed' out."),
        (row(1, "lend", "shed", "box-medium-10", 1), "To whom was it lent? Write the name."),
        (
            row(1, "requeen", "F-01", "a stray", ""),
            "Requeen wants where the queen is from (raised by the colony",
        ),
        (row(1, "requeen", "F-01", "", ""), "Of what? Requeen wants where the queen is from"),
        (row(1, "requeen", "F-01", "bought", "3"), "Requeen happens once to each colony: leave '3' out."),
        (row(1, "split", "F-01", "nuk, F-21", 1), "'nuk, F-21' is not known: Split wants their set"),
        (
            row(1, "split", "fern hollow", "", 1),
            "'fern hollow' is the yard Fern Hollow: Split wants a colony.",
        ),
        (row(1, "dead", "F-01", "floor-10", ""), "hive closed tells of no gear: leave 'floor-10' out."),
        (row(1, "dead", "F-01", "", "", "shed"), "hive closed has no other end: leave 'shed' out."),
        (row(1, "move-colonies", "F-01"), "To which yard? Write its name."),
        (row(1, "move-colonies", "F-01", "", "", "shed"), "is the shed, no bees stand there"),
    ],
)
def test_what_cannot_be_read_is_told_in_a_sentence(outfit, typed, sentence):
    told, faults = read(typed)
    assert told == []
    assert any(sentence in each for each in faults[1]), faults


def test_all_faults_of_all_rows_are_told(outfit):
    told, faults = read(
        row(1, "place", "F-99", "no such", "x", "nowhere"),
        row(2, "place", "F-01", "excluder-10", 1),
        row(3, "", "F-01", "x", 1),
    )
    assert [one.number for one in told] == [2]
    assert ([len(sentences) for sentences in faults.values()], list(faults)) == ([4, 1], [1, 3])

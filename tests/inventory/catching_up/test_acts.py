"""Each act of the closed list books what the act by itself books."""

import pytest

from apiary.queens import queen_of
from inventory import stock
from inventory.catching_up.acts import GEAR, OTHERS, PLACES, ROW_ACTS, post_row
from inventory.catching_up.known import Known
from inventory.catching_up.reading import read_rows
from inventory.errors import NoBoxFits, NothingGiven, NotInWholes
from inventory.gear import Condition, Gear
from inventory.models import Location, Movement, Part, Recipe
from inventory.yardwork.refusals import TooManyTags
from tests import makers
from tests.inventory.catching_up.made import DAY, row

pytestmark = pytest.mark.django_db
FLOOR_AND_COVERS = dict.fromkeys(("floor-10", "inner-cover-10", "cover-10"), 4)


def booked(typed, *more):
    told, faults = read_rows([typed, *more], Known())
    assert faults == {}
    return [post_row(one, who=None, key=makers.fresh_key()) for one in told]


def there(ground, code, condition=Condition.SOUND):
    return stock.on_hand(ground).get(Gear(part=code, condition=condition), 0)


def colony(tag):
    return makers.Colony.objects.get(tag=tag)


def test_every_act_says_how_its_row_reads():
    for act in ROW_ACTS.values():
        assert act.place and act.gear in GEAR and act.other in OTHERS and set(act.place) <= set(PLACES)
    assert ROW_ACTS["haul"].reads == "a store, a part or a set, to which store"
    assert ROW_ACTS["mend"].reads == "a store, a part"


def test_a_whole_yard_is_supered_up_and_pulled(outfit):
    booked(row(1, "super-up", "fern-hollow", "super-medium-10", 2))
    assert there(outfit, "box-medium-10") == 16
    assert [there(colony(tag), "box-medium-10") for tag in ("F-01", "F-02", "L-01")] == [2, 2, 0]
    booked(row(1, "pull", "F-01", "", 1, "long-acre"))
    assert there(colony("F-01"), "box-medium-10") == 1
    assert there(makers.Yard.objects.get(code="long-acre"), "box-medium-10") == 1


def test_of_a_whole_yard_only_hives_that_take_a_box_get_one_and_supers_come_off_as_far_as_there_are(outfit):
    booked(row(1, "super-up", "long-acre", "", 1))
    assert [there(colony(tag), "box-medium-10") for tag in ("L-01", "N-01")] == [1, 0]
    booked(row(1, "pull", "long-acre", "box-medium-10", 3))
    assert there(colony("L-01"), "box-medium-10") == 0
    with pytest.raises(NothingGiven):
        booked(row(1, "pull", "long-acre", "", 1))
    makers.make_colony("F-03", yard=colony("F-01").yard, hive_set="one-deep-10", gear=True)
    booked(row(1, "brood-box", "fern-hollow", "", 1))
    assert [there(colony(tag), "box-deep-10") for tag in ("F-01", "F-02", "F-03")] == [2, 2, 2]


def test_a_nuc_told_by_its_tag_takes_no_super(outfit):
    with pytest.raises(NoBoxFits):
        booked(row(1, "super-up", "N-01", "", 1))


def test_a_brood_box_goes_on(outfit):
    booked(row(1, "brood-box", "F-01", "", 1))
    assert there(colony("F-01"), "box-deep-10") == 3


def test_gear_is_placed_taken_off_and_hauled(outfit):
    booked(
        row(1, "haul", "shed", "super-medium-10", 2, "fern-hollow"),
        row(2, "place", "F-01", "super-medium-10", 1, "fern-hollow"),
        row(3, "take-off", "F-01", "box-medium-10", 1, "shed"),
    )
    yard = makers.Yard.objects.get(code="fern-hollow")
    assert (there(yard, "box-medium-10"), there(yard, "frame-medium-foundation")) == (1, 10)
    assert there(colony("F-01"), "frame-medium-foundation") == 10
    assert there(outfit, "box-medium-10") == 19


def test_comb_is_drawn_for_what_it_is_told(outfit):
    makers.put(colony("F-01"), {"frame-medium-foundation": 10})
    booked(row(1, "draw", "F-01", "comb-medium-brood-treated", 8))
    assert there(colony("F-01"), "comb-medium-brood-treated") == 8
    assert there(colony("F-01"), "frame-medium-foundation") == 2


def test_a_yard_is_fed_and_sugar_used(outfit):
    """A gallon of 2:1 by weight holds 7.38 lb of sugar (densities of NBS Circular 440, from memory)."""
    (act,) = booked(row(1, "feed", "fern hollow", "2:1", 1))
    assert act.feedings.count() == 2
    assert there(outfit, "sugar") == 185
    booked(row(1, "use", "shed", "jar", 12))
    assert there(outfit, "jar") == 38


def test_work_at_the_bench(outfit):
    booked(
        row(1, "assemble", "shed", "box-deep-10", 4),
        row(2, "mend", "shed", "box-medium-10", 2),
        row(3, "to-mend", "F-01", "box-deep-10", 1),
        row(4, "scrap", "shed", "excluder-10", 1),
        row(5, "burn", "shed", "excluder-10", 1),
    )
    assert there(outfit, "box-deep-10") == 10
    assert (there(outfit, "box-medium-10"), there(outfit, "box-medium-10", Condition.TO_MEND)) == (22, 1)
    assert there(colony("F-01"), "box-deep-10", Condition.TO_MEND) == 1
    assert there(outfit, "excluder-10") == 4
    gone = Movement.objects.filter(target__kind__in=[Location.Kind.SCRAP, Location.Kind.BURNT])
    assert gone.count() == 2


def test_what_one_making_makes_cannot_be_broken_up(outfit):
    recipe = Recipe.objects.create(code="crate", name="a crate of excluders")
    recipe.lines.create(part=Part.objects.get(code="jar"), takes=1)
    recipe.lines.create(part=Part.objects.get(code="patty"), makes=4)
    booked(row(1, "assemble", "shed", "patty", 8))
    assert there(outfit, "patty") == 8
    with pytest.raises(NotInWholes):
        booked(row(1, "assemble", "shed", "patty", 9))


def test_gear_is_lent_to_a_name(outfit):
    (act,) = booked(row(1, "lend", "shed", "excluder-10", 2, "A. Neighbour"))
    assert (act.loan.to, act.loan.due_on, act.day) == ("A. Neighbour", None, DAY)


def test_a_split_is_told_with_its_set_and_tags(outfit):
    makers.make_hive_set("one-deep-10")
    makers.put(outfit, FLOOR_AND_COVERS)
    (act,) = booked(row(1, "split", "F-01", "one-deep-10, F-31", 2))
    daughters = [colony("F-31"), colony("F-32")]
    assert [(one.mother.tag, one.hive_set.code, one.yard.code) for one in daughters] == [
        ("F-01", "one-deep-10", "fern-hollow")
    ] * 2
    assert act.name == "split" and there(colony("F-31"), "comb-deep-brood") == 5
    assert there(outfit, "box-deep-10") == 4


def test_splits_without_tags_take_the_next_free_ones_and_the_usual_set(outfit):
    makers.make_hive_set("one-deep-10")
    makers.put(outfit, FLOOR_AND_COVERS)
    booked(row(1, "split", "F-01", "", 1), row(2, "split", "F-02", "", 1))
    assert [colony(tag).mother.tag for tag in ("F-03", "F-04")] == ["F-01", "F-02"]
    with pytest.raises(TooManyTags):
        booked(row(1, "split", "F-01", "F-41, F-42", 1))


def test_a_colony_and_a_whole_yard_are_requeened(outfit):
    booked(row(1, "requeen", "L-01", "a queen cell given"), row(2, "requeen", "fern hollow", "bought", ""))
    words = [queen_of(colony(tag)).words for tag in ("L-01", "F-01", "F-02")]
    assert words == ["a queen cell given", *["a mated queen, bought"] * 2]


def test_a_colony_found_dead_ends_and_its_hive_waits(outfit):
    before = stock.on_hand(colony("F-01"))
    booked(row(1, "dead", "F-01"))
    assert (colony("F-01").ended_on, colony("F-01").ended_why) == (DAY, "died")
    assert stock.on_hand(colony("F-01")) == before


def test_colonies_of_a_whole_yard_are_moved(outfit):
    booked(row(1, "move-colonies", "fern-hollow", "", "", "long acre"))
    assert {colony(tag).yard.code for tag in ("F-01", "F-02", "L-01")} == {"long-acre"}

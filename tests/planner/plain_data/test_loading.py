"""Loading: into an empty installation only, all or nothing, proven; the rows are those that were written."""

import json

import pytest
from django.contrib.auth import get_user_model

from apiary import people
from apiary.models import Colony, SignInLink, Yard
from inventory import ledger
from inventory.catalogue import ensure_catalogue
from inventory.ledger import Line
from inventory.models import Act, BookSeal, Evening, Holding, Movement, Part
from inventory.proof import prove
from planner.plain_data.errors import BooksThere, DatabaseRefuses, NotProven, StillNotProven
from planner.plain_data.faults import FaultsFound
from planner.plain_data.loading import load, refuse_books
from planner.plain_data.manifest import sha256_of
from planner.plain_data.writing import export
from tests import makers
from tests.planner.plain_data.emptied import changed, empty, files_of

pytestmark = pytest.mark.django_db
HARD = '=1+1, "said"\nאבג \'x'


@pytest.fixture
def folder(tmp_path):
    """Books of one yard, one colony with its gear and a few acts, written out; then nothing is there any more."""
    shed = makers.make_shed()
    makers.make_person("robin")
    makers.make_person("lee", role="helper", yards=[shed])
    makers.make_colony("A1", yard=makers.make_yard("creek", name=HARD), gear=True)
    act = makers.put(shed, {"stand": 10})
    ledger.reverse(act=makers.put(shed, {"stand": 4}), who=None, key="back")
    assert act.digest
    export(tmp_path / "out")
    empty()
    return tmp_path / "out"


def nothing_there():
    return not (Yard.objects.exists() or Movement.objects.exists() or Colony.objects.exists())


def test_what_was_written_is_there_again_and_gives_the_same_files(folder, tmp_path):
    done = load(folder)
    assert prove().faults == () and done.line == prove().line
    assert (done.changed, done.sealed_anew) == ((), False)
    assert Yard.objects.get(code="creek").name == HARD
    export(tmp_path / "again")
    assert files_of(tmp_path / "again") == files_of(folder)


def test_people_come_without_password_and_keep_role_and_yards(folder):
    load(folder)
    people_there = get_user_model().objects.order_by("username")
    assert [person.username for person in people_there] == ["lee", "robin"]
    assert not any(person.has_usable_password() for person in people_there)
    assert [yard.code for yard in people_there[0].access.yards.all()] == ["shed"]
    assert not SignInLink.objects.exists()


def test_times_stay_those_of_the_books(folder):
    load(folder)
    event = Colony.objects.get().events.get()
    assert event.recorded_at <= Act.objects.first().recorded_at


def test_acts_go_on_after_loading(folder):
    load(folder)
    last = Act.objects.last().pk
    act = ledger.open_stock(
        location=Yard.objects.get(code="shed"), lines=[Line("stand", 1)], day=makers.DAY, who=None, key="next"
    )
    assert act.pk > last and prove().faults == ()
    assert makers.make_yard().pk > Yard.objects.get(code="creek").pk


def test_over_books_that_are_there_it_refuses_and_changes_nothing(folder):
    makers.make_yard("mine")
    with pytest.raises(BooksThere, match="yards: 1"):
        load(folder)
    assert [yard.code for yard in Yard.objects.all()] == ["mine"]


def test_over_people_who_have_a_password_it_refuses(folder):
    makers.make_person("somebody", role=None)
    with pytest.raises(BooksThere, match="people: 1"):
        load(folder)


def test_an_installation_started_and_not_yet_used_counts_as_empty(folder):
    ensure_catalogue()
    people.first_keeper()
    BookSeal.objects.create(pk=1)
    refuse_books()
    load(folder)
    assert get_user_model().objects.count() == 2
    assert prove().faults == ()


def test_an_edited_file_is_refused_with_all_its_faults_and_nothing_is_loaded(folder):
    changed(folder, "movements.csv", ",sound,", ",broken,")
    with pytest.raises(FaultsFound) as found:
        load(folder)
    assert [fault.column for fault in found.value.faults] == ["", "condition"]
    assert nothing_there()


def test_an_edited_name_is_loaded_where_the_keeper_means_it_and_the_seal_stays(folder):
    changed(folder, "yards.csv", "Shed", "Barn")
    done = load(folder, edited=True)
    assert (done.changed, done.sealed_anew) == (("yards.csv",), False)
    assert Yard.objects.get(code="shed").name == "Barn"


def test_edited_pieces_are_sealed_anew_and_say_so(folder):
    changed(folder, "movements.csv", ",sound,10,", ",sound,12,")
    done = load(folder, edited=True)
    assert done.changed == ("movements.csv",) and done.sealed_anew
    assert prove().faults == ()
    stands = Part.objects.get(code="stand")
    assert Holding.objects.get(part=stands, location__yard__code="shed").quantity == 12


def test_edited_pieces_that_do_not_add_up_are_refused(folder):
    """The four taken back by the reversal were put there as one."""
    changed(folder, "movements.csv", ",sound,4,", ",sound,1,")
    with pytest.raises(StillNotProven, match="does not put back"):
        load(folder, edited=True)
    assert nothing_there()


def test_files_whose_checksums_were_edited_too_are_held_against_the_seal(folder):
    changed(folder, "movements.csv", ",sound,10,", ",sound,12,")
    before = _checksums(folder)
    changed(folder, "manifest.json", before["movements.csv"], sha256_of(folder / "movements.csv"))
    with pytest.raises(NotProven, match="does not carry the digest"):
        load(folder)
    assert nothing_there()


def test_a_missing_file_is_refused(folder):
    (folder / "movements.csv").unlink()
    with pytest.raises(FaultsFound) as found:
        load(folder, edited=True)
    assert [fault.what for fault in found.value.faults] == ["the file is missing"]


def test_what_only_the_database_refuses_is_told_with_its_file(folder, monkeypatch):
    changed(folder, "yards.csv", ",creek,", ",shed,")
    monkeypatch.setattr("planner.plain_data.loading.row_faults", lambda _: [])
    with pytest.raises(DatabaseRefuses, match=r"yards\.csv"):
        load(folder, edited=True)
    assert nothing_there()


def test_a_file_changed_while_it_is_loaded_loads_nothing(folder, monkeypatch):
    changed(folder, "seasons.csv", "id,", "number,")
    monkeypatch.setattr("planner.plain_data.loading.row_faults", lambda _: [])
    with pytest.raises(FaultsFound):
        load(folder, edited=True)
    assert nothing_there()


def test_evenings_are_worked_out_anew(folder, monkeypatch):
    monkeypatch.setattr("inventory.ledger.evenings.STEP", 1)
    load(folder)
    assert Evening.objects.exists() or Movement.objects.values("day").distinct().count() == 1
    assert prove().faults == ()


def test_the_seal_carries_the_mark_of_this_installation(folder, settings):
    settings.SECRET_KEY = "another installation's"
    load(folder)
    assert prove().faults == ()


def _checksums(folder):
    told = json.loads((folder / "manifest.json").read_text())
    return {name: one["sha256"] for name, one in told["files"].items()}

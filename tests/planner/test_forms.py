"""The season's forms: every question has a field, faults stand at theirs, only own answers are kept."""

from decimal import Decimal

import pytest

from apiary.winters import tell_winter
from planner.forms import AnswersForm, RunForm, SeasonForm
from planner.season.questions import QUESTIONS, questions_for
from tests import makers
from tests.planner import made, outfit


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def sent(season, **typed):
    form = AnswersForm(season, typed)
    if form.is_valid():
        form.save()
    return form


def question_of(form, key):
    asked = [question for group in form.groups() for question in group.questions]
    return next(question for question in asked if question.field.name == key)


def test_every_question_is_asked_once_in_some_group(season):
    asked = [question.field.name for group in AnswersForm(season).groups() for question in group.questions]
    assert sorted(asked) == sorted(question.key for question in QUESTIONS)


def test_nothing_typed_keeps_nothing(season):
    form = sent(season)
    assert form.errors == {}
    assert season.answers == {}


def test_only_answers_that_differ_from_the_usual_are_kept(season):
    sent(season, circuit_days="14", nuc_price="165", excluders="yes", nuc_box_returns="no")
    season.refresh_from_db()
    assert season.answers == {"nuc_price": 165.0, "nuc_box_returns": False}


def test_an_answer_taken_back_is_as_usual_again(season):
    season.answers = {"circuit_days": 10}
    sent(season, circuit_days="")
    assert season.answers == {}


def test_shares_are_typed_and_shown_in_per_cent(season):
    sent(season, survival_share="72.5")
    assert season.answers == {"survival_share": 0.725}
    assert AnswersForm(season)["survival_share"].value() == 72.5


def test_a_share_of_a_whole_per_cent_is_shown_without_a_point(season):
    season.answers = {"survival_share": 0.72}
    assert str(AnswersForm(season)["survival_share"].value()) == "72"


def test_winters_are_typed_in_pairs_and_shown_as_they_were(season):
    form = sent(season, winters="60/44, 72/58")
    assert form.errors == {}
    assert season.answers == {"winters": "60/44, 72/58"}
    shown = AnswersForm(season)
    assert shown["winters"].value() == "60/44, 72/58"
    asked = question_of(shown, "winters")
    assert (asked.own, asked.usual, asked.span, asked.is_choice) == (True, "", "", False)
    assert 'placeholder="60/44, 72/58"' in str(shown["winters"])


def test_winters_the_books_were_told_are_the_usual_ones(season):
    tell_winter(autumn=2020, went_in=60, came_out=44)
    assert question_of(AnswersForm(season), "winters").usual == "60/44"


def test_winters_stored_as_pairs_are_shown_as_typed(season):
    season.answers = {"winters": [[60, 44], [72, 58]]}
    assert AnswersForm(season)["winters"].value() == "60/44, 72/58"


def test_the_usual_value_its_range_and_its_source_stand_beside_each(season):
    asked = question_of(AnswersForm(season), "survival_share")
    assert (asked.usual, asked.span, asked.unit) == ("70 %", "from 0 to 100", "%")
    assert asked.source.startswith("Source: Steinhauer et al. (2014)")


def test_a_judgement_is_called_one(season):
    assert question_of(AnswersForm(season), "circuit_days").source == "Our judgement."


def test_a_week_is_told_with_its_day(season):
    assert question_of(AnswersForm(season), "spring_week").usual == "week 10, about 3 March"


def test_the_region_brings_its_calendar(season):
    north = {question.key: question.default for question in questions_for("north")}
    sent(season, region="north")
    assert season.answers == {"region": "north"}
    assert question_of(AnswersForm(season), "spring_week").usual.startswith(f"week {north['spring_week']},")


def test_the_keepers_own_region_is_the_usual_one_and_not_kept(season):
    sent(season, region="middle")
    assert season.answers == {}


@pytest.mark.parametrize(
    ("key", "typed", "sentence"),
    [
        ("circuit_days", "1000", "lies outside"),
        ("survival_share", "140", "lies outside"),
        ("nuc_price", "much", "Enter a number"),
        ("splits_strong", "1.5", "Enter a whole number"),
        ("winters", "60/70", "70 came out of 60 that went in"),
        ("winters", "sixty", "Give colonies in and out as 60/44"),
        ("autumn_syrup", "9:1", "Select a valid choice"),
        ("target_colonies", "500", "your yards have 28 stands"),
    ],
)
def test_a_fault_stands_at_its_field_and_nothing_is_kept(season, key, typed, sentence):
    form = sent(season, **{key: typed, "honey_price": "3.10"})
    assert sentence in form.errors[key][0]
    assert question_of(form, key).field.errors
    season.refresh_from_db()
    assert season.answers == {}


def test_a_fault_does_not_repeat_the_question_it_stands_under(season):
    form = sent(season, circuit_days="1000")
    assert form.errors["circuit_days"][0].startswith("Give a")


def test_faults_are_counted_in_a_sentence(season):
    assert sent(season, circuit_days="1000").faults_said == "1 answer will not do: see below."
    assert sent(season, circuit_days="1000", nuc_price="much").faults_said.startswith("2 answers")


def test_a_group_with_a_fault_is_open(season):
    groups = {group.anchor: group.open for group in sent(season, nuc_price="much").groups()}
    assert groups["splits"]
    assert not groups["feed"]


def test_own_answers_are_marked_and_counted(season):
    season.answers = {"circuit_days": 10}
    form = AnswersForm(season)
    assert question_of(form, "circuit_days").own
    assert next(group for group in form.groups() if group.anchor == "flow").answered.startswith("1 of ")


def test_crops_out_of_order_are_told(season):
    form = sent(season, crop_worst="90", crop_ordinary="50", crop_best="60")
    assert "must stand in that order" in form.errors["crop_ordinary"][0]


def test_answers_can_be_kept_before_there_is_a_shed(db):
    makers.make_keeper()
    season = made.make_season()
    assert sent(season, circuit_days="10").errors == {}
    assert season.answers == {"circuit_days": 10}


def test_a_season_keeps_its_budget_in_cents(db):
    form = SeasonForm({"name": "Winter order 2027", "starts_on": "2027-01-15", "budget": "412.50"})
    assert form.save().budget_cents == 41250


def test_an_empty_budget_is_no_limit(db):
    form = SeasonForm({"name": "Winter order 2027", "starts_on": "2027-01-15", "budget": ""})
    assert form.save().budget_cents is None


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"budget": "-5"}, "budget"),
        ({"budget": "1.005"}, "budget"),
        ({"budget": "9,5"}, "budget"),
        ({"starts_on": "the fifteenth"}, "starts_on"),
        ({"name": ""}, "name"),
    ],
)
def test_a_season_that_cannot_be_read_is_refused_at_its_field(db, typed, field):
    form = SeasonForm({"name": "Winter order 2027", "starts_on": "2027-01-15", **typed})
    assert not form.is_valid()
    assert list(form.errors) == [field]


def test_a_name_taken_is_refused(db):
    made.make_season()
    form = SeasonForm({"name": "Winter order 2027", "starts_on": "2027-01-15"})
    assert "already exists" in form.errors["name"][0]


def test_a_season_shows_the_budget_it_has(db):
    assert SeasonForm(instance=made.make_season(budget_cents=41250))["budget"].value() == Decimal("412.50")


@pytest.mark.parametrize("typed", [{"scenarios": "0"}, {"seconds": "9999"}, {"seed": "-1"}])
def test_how_hard_to_look_has_bounds(typed):
    assert not RunForm({"scenarios": "100", "seed": "1", "seconds": "120", **typed}).is_valid()

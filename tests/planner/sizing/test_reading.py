"""Problem files read: sound ones as they are, wrong ones refused with every fault and its path."""

import copy
import json

import pytest

from planner.sizing.faults import Faults
from planner.sizing.reading import problem_of, read
from tests.planner.small_problems import full, small

USE = "scenarios[0].uses[1]"
WRONG_VALUES = [
    ("periods", 0, "must be a whole number 1 to 100000, got 0"),
    ("periods", 2.5, "must be a whole number 1 to 100000, got 2.5"),
    ("periods", True, "must be a whole number 1 to 100000, got true"),
    ("money", 5, "must be a text that is not blank, got 5"),
    ("parts", {"code": "box"}, 'must be a list, got {"code": "box"}'),
    ("parts[0]", "box", 'must be an object, got "box"'),
    ("parts[0].code", " ", 'must be a text that is not blank, got " "'),
    ("parts[0].code", "sheet", '"sheet" is already the code of parts[0]', "parts[1].code"),
    ("parts[0].end_value", None, "must be a number, got null"),
    ("parts[0].holding_cost", -1, "must be a number ≥ 0, got -1"),
    ("parts[1].holding_cost", [0, 0], "must have 4 entries, one a period, got 2"),
    ("parts[1].holding_cost[2]", "x", 'must be a number ≥ 0, got "x"'),
    ("parts[0].weight_lb", "8 lb", 'must be a number ≥ 0, got "8 lb"'),
    ("locations", [], "must name at least one location"),
    ("locations[1]", "shed", '"shed" is already the code of locations[0]'),
    ("locations[0]", 3, "must be a text that is not blank, got 3"),
    ("stock[0].part", "lid", 'no part has the code "lid"'),
    ("stock[0].location", "barn", 'no location has the code "barn"'),
    ("stock[0].quantity", -5, "must be a number ≥ 0, got -5"),
    ("stock[0].period", 4, "must be a whole number 0 to 3, inside the horizon, got 4"),
    ("suppliers[0].code", None, "must be a text that is not blank, got null"),
    ("suppliers[0].order_fee", [1, 2, 3], "must have 4 entries, one a period, got 3"),
    ("suppliers[0].order_fee", "free", 'must be a number ≥ 0, got "free"'),
    ("suppliers[0].free_from", -1, "must be a number ≥ 0, got -1"),
    ("offers[0].code", 7, "must be a text that is not blank, got 7"),
    ("offers[0].supplier", "nobody", 'no supplier has the code "nobody"'),
    ("offers[0].parts", ["box"], 'must be an object, got ["box"]'),
    ("offers[0].parts.lid", 1, 'no part has the code "lid"'),
    ("offers[0].parts.box", True, "must be a number ≥ 0, got true"),
    ("offers[0].location", "barn", 'no location has the code "barn"'),
    ("offers[0].prices", [], "must have at least one step"),
    ("offers[0].prices[0].price", "9,5", 'must be a number ≥ 0, got "9,5"'),
    ("offers[0].prices[0].price", -1, "must be a number ≥ 0, got -1"),
    ("offers[0].prices[0].from_packs", 2, "the first step must start from 1, got 2"),
    ("offers[0].prices[1].from_packs", 1, "must be above 1, steps rise, got 1"),
    ("offers[0].prices[1].from_packs", 0, "must be a whole number ≥ 1, got 0"),
    ("offers[0].price_rule", "cheap", 'must be "all_units" or "incremental", got "cheap"'),
    ("offers[0].order_periods", 0, "must be a list, got 0"),
    ("offers[0].order_periods[0]", 4, "must be a whole number 0 to 3, inside the horizon, got 4"),
    ("offers[0].order_periods[1]", 0, "period 0 is listed twice"),
    ("offers[0].lead_periods", 4, "must be shorter than the horizon of 4 periods, got 4"),
    ("offers[0].lead_periods", -1, "must be a whole number ≥ 0, got -1"),
    ("offers[0].max_packs", -1, "must be a number ≥ 0, got -1"),
    ("offers[0].work_minutes", "ten", 'must be a number ≥ 0, got "ten"'),
    ("offers[0].whole", 1, "must be true or false, got 1"),
    ("offers[0].when", "soon", 'must be "now" or "later", got "soon"'),
    ("recipes[0].code", "", 'must be a text that is not blank, got ""'),
    ("recipes[0].takes", {}, "a recipe must take something"),
    ("recipes[0].takes.sheet", 0, "a recipe must take something", "recipes[0].takes"),
    ("recipes[0].makes.box", -1, "must be a number ≥ 0, got -1"),
    ("recipes[0].location", "barn", 'no location has the code "barn"'),
    ("recipes[0].work_minutes", -1, "must be a number ≥ 0, got -1"),
    ("recipes[0].lead_periods", 4, "must be shorter than the horizon of 4 periods, got 4"),
    ("recipes[0].cost", [1], "must be a number ≥ 0, got [1]"),
    ("work", 60, "must be an object, got 60"),
    ("work.minutes_per_period", 60, "must be a list, got 60"),
    ("work.minutes_per_period[2]", -60, "must be a number ≥ 0, got -60"),
    ("work.cost_per_hour", -1, "must be a number ≥ 0, got -1"),
    ("whole_uses", "no", 'must be true or false, got "no"'),
    ("bad_years", None, "must be an object, got null"),
    ("bad_years.weight", 1.5, "must be a number 0 to 1, got 1.5"),
    ("bad_years.share", 0, "must be a number > 0 and ≤ 1, got 0"),
    ("budget", -1, "must be a number ≥ 0, got -1"),
    ("later_budget", "90", 'must be a number ≥ 0, got "90"'),
    ("hauls[0].from", "barn", 'no location has the code "barn"'),
    ("hauls[0].to", "shed", 'must differ from "from", got "shed" for both'),
    ("hauls[0].cost_per_unit", -1, "must be a number ≥ 0, got -1"),
    ("hauls[0].cost_per_lb", None, "must be a number ≥ 0, got null"),
    ("hauls[0].trip_cost", "9", 'must be a number ≥ 0, got "9"'),
    ("hauls[0].trip_lb", 0, "must be a number > 0, got 0"),
    ("hauls[0].trip_lb", None, "needs trip_lb, the weight one trip carries", "hauls[0].trip_cost"),
    ("scenarios[0].code", 1, "must be a text that is not blank, got 1"),
    ("scenarios[0].probability", 0, "must be a number > 0 and ≤ 1, got 0"),
    ("scenarios[0].probability", 0.5, "probabilities must sum to 1, got 0.5", "scenarios"),
    ("scenarios", [], "probabilities must sum to 1, got 0"),
    (f"{USE}.code", "hive", '"hive" is already the code of scenarios[0].uses[0]'),
    (f"{USE}.location", "barn", 'no location has the code "barn"'),
    (f"{USE}.first", -1, "must be a whole number 0 to 3, inside the horizon, got -1"),
    (f"{USE}.last", 0, "must be at or after first, 1, got 0"),
    (f"{USE}.last", 4, "must be a whole number 0 to 3, inside the horizon, got 4"),
    (f"{USE}.units", -1, "must be a number ≥ 0, got -1"),
    (f"{USE}.value", "much", 'must be a number, got "much"'),
    (f"{USE}.must", 0, "must be true or false, got 0"),
    (f"{USE}.keeps.lid", 1, 'no part has the code "lid"'),
    (f"{USE}.keeps.box", -1, "must be a number ≥ 0, got -1"),
    (f"{USE}.spends.sheet", None, "must be a number ≥ 0, got null"),
    (f"{USE}.needs_use", "nuc", 'no use of this scenario has the code "nuc"'),
    (f"{USE}.needs_use", "super", "must name another use, not itself"),
    (f"{USE}.per", -1, "must be a number ≥ 0, got -1"),
    ("scenarios[0].arrivals[0].part", "lid", 'no part has the code "lid"'),
    ("scenarios[0].arrivals[0].location", 5, "must be the code of a location, got 5"),
    ("scenarios[0].arrivals[0].period", 1.5, "must be a whole number 0 to 3, inside the horizon, got 1.5"),
    ("scenarios[0].arrivals[0].quantity", "6", 'must be a number ≥ 0, got "6"'),
]


def place(data, path, value):
    """Puts a value at a path such as offers[0].prices[1].price."""
    steps = [
        int(step) if step.isdigit() else step for step in path.replace("[", ".").replace("]", "").split(".")
    ]
    for step in steps[:-1]:
        data = data[step]
    data[steps[-1]] = value


def faults_of(data):
    """What a problem is refused for; [] where it is taken."""
    try:
        problem_of(data)
    except Faults as found:
        return found.messages
    return []


@pytest.mark.parametrize("case", WRONG_VALUES, ids=lambda case: f"{case[0]} {case[1]!r}")
def test_every_key_that_is_wrong_is_named_with_what_would_be_right(case):
    path, value, sentence, *elsewhere = case
    data = full()
    place(data, path, value)
    messages = faults_of(data)
    where = elsewhere[0] if elsewhere else path
    assert f"{where}: {sentence}" in messages


def keys_of(data, path=""):
    if isinstance(data, dict):
        for key, value in data.items():
            yield (f"{path}.{key}" if path else key), data, key
            yield from keys_of(value, f"{path}.{key}" if path else key)
    elif isinstance(data, list):
        for at, value in enumerate(data):
            yield from keys_of(value, f"{path}[{at}]")


def test_the_table_above_leaves_out_no_key_of_the_form():
    tried = {path.split("[")[-1].split("]")[-1].split(".")[-1] for path, *_ in WRONG_VALUES} | {
        "uses",
        "arrivals",
    }
    tried |= {"recipes", "stock", "suppliers", "offers", "hauls", "takes", "makes", "keeps", "spends"}
    assert {key for _, _, key in keys_of(full())} - tried == set()


@pytest.mark.parametrize("key", ["stock", "suppliers", "offers", "recipes", "hauls", "scenarios"])
def test_every_list_must_be_a_list(key):
    assert f"{key}: must be a list, got null" in faults_of(full() | {key: None})


@pytest.mark.parametrize("path", [path for path, *_ in keys_of(full()) if "takes." not in path])
def test_a_number_that_is_not_one_is_refused_everywhere(path):
    data = full()
    place(data, path, float("nan"))
    assert any(message.startswith(path) for message in faults_of(data)), path


def test_infinities_are_refused_in_text_too():
    text = json.dumps(small()).replace('"price": 10', '"price": 1e999')
    with pytest.raises(Faults, match="must be a number ≥ 0, got Infinity"):
        read(text)
    with pytest.raises(Faults, match="must be a number ≥ 0, got Infinity"):
        read(text.replace("1e999", "Infinity"))
    with pytest.raises(Faults, match="a number below 1e15"):
        read(text.replace("1e999", "1" + "0" * 400))


REQUIRED = [
    ("periods", ""),
    ("parts", ""),
    ("locations", ""),
    ("scenarios", ""),
    ("code", "parts[0]"),
    ("part", "stock[0]"),
    ("location", "stock[0]"),
    ("quantity", "stock[0]"),
    ("code", "suppliers[0]"),
    ("code", "offers[0]"),
    ("supplier", "offers[0]"),
    ("parts", "offers[0]"),
    ("prices", "offers[0]"),
    ("price", "offers[0].prices[0]"),
    ("from_packs", "offers[0].prices[0]"),
    ("code", "recipes[0]"),
    ("takes", "recipes[0]"),
    ("from", "hauls[0]"),
    ("to", "hauls[0]"),
    ("code", "scenarios[0]"),
    ("probability", "scenarios[0]"),
    *((key, USE) for key in ("code", "location", "first", "last", "units", "value")),
    *((key, "scenarios[0].arrivals[0]") for key in ("part", "location", "period", "quantity")),
]


@pytest.mark.parametrize(("key", "where"), REQUIRED)
def test_a_required_key_left_out_is_missed(key, where):
    data = full()
    row = data
    for step in where.replace("[", ".").replace("]", "").split(".") if where else []:
        row = row[int(step) if step.isdigit() else step]
    del row[key]
    assert (f"{where}.{key}" if where else key) + ": is missing" in faults_of(data)


def test_every_other_key_may_be_left_out():
    data = full()
    needed = {f"{where}.{key}" if where else key for key, where in REQUIRED}
    refused = {}
    for path, *_ in keys_of(data):
        inside_parts = any(f".{name}." in path for name in ("parts", "takes", "makes", "keeps", "spends"))
        prefix = path.startswith(("scenarios[0].uses[0]", "offers[0].prices[1]", "parts[1]", "suppliers[1]"))
        optional = path not in needed and not inside_parts and not prefix
        if not optional or path in ("hauls[0].trip_lb", "recipes[0].makes", "suppliers", "stock"):
            continue
        changed = copy.deepcopy(data)
        row = changed
        *steps, last = path.replace("[", ".").replace("]", "").split(".")
        for step in steps:
            row = row[int(step) if step.isdigit() else step]
        del row[last]
        refused[path] = faults_of(changed)
    assert len(refused) > 20 and not any(refused.values()), refused


def test_an_unknown_key_is_refused_with_the_known_ones():
    data = full()
    data["offers"][0]["colour"] = "white"
    assert faults_of(data)[0].startswith(
        "offers[0].colour: no such key here; known are code, supplier, parts"
    )
    assert faults_of(full() | {"seed": 1})[0].startswith("seed: no such key here; known are periods, money")


def test_a_repeated_key_is_refused_at_any_depth():
    text = json.dumps(small())
    with pytest.raises(Faults, match=r"^periods: this key is given twice$"):
        read(text.replace('"periods": 3', '"periods": 3, "periods": 3'))
    with pytest.raises(Faults, match=r"^offers\[0\]\.prices\[0\]\.price: this key is given twice$"):
        read(text.replace('"price": 10', '"price": 10, "price": 9'))
    with pytest.raises(Faults, match=r"^offers\[0\]\.parts\.box: this key is given twice$"):
        read(text.replace('{"box": 1}, "prices"', '{"box": 1, "box": 2}, "prices"'))


def test_all_faults_are_listed_not_the_first():
    data = full()
    place(data, "offers[0].prices[0].price", "9,5")
    place(data, "stock[0].part", "lid")
    place(data, f"{USE}.units", -3)
    place(data, "hauls[0].trip_lb", None)
    place(data, "scenarios[0].probability", 0.25)
    assert len(faults_of(data)) == 5


@pytest.mark.parametrize("text", ["", "{", "[1,]", "nonsense", "[" * 100_000])
def test_what_is_not_json_is_refused_in_words(text):
    with pytest.raises(Faults, match=r"not JSON|nested too deeply"):
        read(text)


def test_a_file_that_holds_no_object_is_refused():
    for text in ("[1]", "3", "null", '"text"'):
        with pytest.raises(Faults, match="the file must hold an object"):
            read(text)


def test_whole_uses_need_one_scenario_and_whole_must_uses():
    data = small(whole_uses=True, use={"units": 2.5, "must": True})
    assert faults_of(data) == ["scenarios[0].uses[0].units: must be a whole number with whole_uses, got 2.5"]
    second = {"code": "other", "probability": 0.5, "uses": []}
    data = small(whole_uses=True)
    data["scenarios"][0]["probability"] = 0.5
    data["scenarios"].append(second)
    assert faults_of(data) == ["whole_uses: needs a single scenario, got 2"]


def test_probabilities_may_miss_one_by_a_millionth_only():
    data = small()
    data["scenarios"][0]["probability"] = 1 - 5e-7
    assert problem_of(data).scenarios[0].probability == 1 - 5e-7
    data["scenarios"][0]["probability"] = 1 - 2e-6
    assert faults_of(data) == ["scenarios: probabilities must sum to 1, got 0.999998"]


def test_negative_values_and_end_values_are_sound():
    problem = problem_of(small(part={"end_value": -1}, use={"value": -45}))
    assert (problem.parts[0].end_value, problem.scenarios[0].uses[0].value) == (-1, -45)


def test_defaults_are_as_the_form_says():
    problem = problem_of(small())
    offer, scenario = problem.offers[0], problem.scenarios[0]
    assert (problem.money, problem.budget, problem.later_budget, problem.whole_uses) == (
        "USD",
        None,
        None,
        False,
    )
    assert (problem.bad_years.weight, problem.bad_years.share) == (0, 0.1)
    assert (problem.work.minutes_per_period, problem.work.cost_per_hour) == (None, 0)
    assert (offer.order_periods, offer.lead_periods, offer.price_rule, offer.when) == (
        (0,),
        0,
        "all_units",
        "now",
    )
    assert offer.is_whole
    assert not problem_of(small(offer={"when": "later"})).offers[0].is_whole
    assert (scenario.uses[0].must, scenario.uses[0].needs_use, scenario.uses[0].per) == (False, None, 1)


def test_a_number_of_thousands_of_digits_is_refused_in_words():
    with pytest.raises(Faults) as refused:
        read('{"periods": ' + "9" * 5000 + "}")
    assert refused.value.messages == ["not a problem file: it holds a number of thousands of digits"]

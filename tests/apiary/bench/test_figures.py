"""Figures: a verdict by the target's sign, one well-formed line."""

import json

import pytest

from apiary.bench.figures import Figure


def figure(**changes):
    told = {"bench": "growth", "figure": "time", "value": 8.123456, "unit": "times", "target": ">= 8"}
    return Figure(**{**told, **changes})


@pytest.mark.parametrize(
    ("target", "value", "is_met"),
    [
        (">= 8", 8, True),
        (">= 8", 7.99, False),
        ("<= 1.25", 1.25, True),
        ("<= 1.25", 1.26, False),
        ("> 0", 0, False),
        ("> 0", 0.1, True),
        ("< 2", 2, False),
        ("<= 1e-6", 5e-7, True),
    ],
)
def test_the_verdict_goes_by_the_sign_of_the_target(target, value, is_met):
    assert figure(target=target, value=value).is_met is is_met


def test_a_line_has_exactly_the_agreed_keys():
    assert json.loads(figure().as_line()) == {
        "bench": "growth",
        "figure": "time",
        "value": 8.1235,
        "unit": "times",
        "target": ">= 8",
        "ok": True,
    }


def test_the_verdict_is_of_the_value_and_not_of_its_rounding():
    line = json.loads(figure(value=7.999999999).as_line())
    assert (line["value"], line["ok"]) == (8.0, False)


def test_an_endless_value_is_no_json():
    with pytest.raises(ValueError):
        figure(value=float("inf")).as_line()


@pytest.mark.parametrize("target", ["8", ">=8", "about 8", ">= eight", ""])
def test_a_target_without_sign_and_number_is_refused(target):
    with pytest.raises(ValueError, match="a target reads like"):
        figure(target=target)

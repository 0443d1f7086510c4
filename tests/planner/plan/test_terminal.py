"""Lines for a terminal."""

from planner.plan.terminal import RULE, WIDTH, wrapped


def test_a_long_sentence_is_broken_within_the_width_and_keeps_its_words():
    words = "every word stays " * 20
    lines = wrapped(words, first="- ", further="    ").splitlines()
    assert max(map(len, lines)) <= WIDTH == len(RULE)
    assert [line[:4] for line in lines] == ["- ev", *["    "] * (len(lines) - 1)]
    assert " ".join(lines).split()[1:] == words.split()


def test_a_short_one_stays_as_it_is():
    assert wrapped("Order by mid November.") == "Order by mid November."

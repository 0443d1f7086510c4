"""The figures of plain data: from results told, and the measuring itself on a few movements."""

from planner.bench.plain_files import out_and_in, plain_data

TOLD = {
    "out": 5.0,
    "out_cpu": 4.5,
    "back": 16.0,
    "back_cpu": 15.0,
    "megabytes": 148.0,
    "megabytes_of_files": 16.0,
    "differ": 0,
}


class Keeper:
    """Gives what it was told instead of measuring."""

    def __init__(self, told):
        self.told, self.asked = told, []

    def result(self, task, **settings):
        self.asked.append((task.__name__, settings["movements"]))
        return self.told


def test_every_target_has_its_figure():
    keeper = Keeper(TOLD)
    found = list(plain_data(keeper))
    assert keeper.asked == [("out_and_in", 100_000)]
    assert [(figure.value, figure.unit, figure.target) for figure in found] == [
        (5.0, "s", "<= 30"),
        (16.0, "s", "<= 60"),
        (148.0, "MB", "<= 300"),
        (0, "files", "<= 0"),
    ]
    assert "load_all, proven (15 s of the processor)" in found[1].figure


def test_what_could_not_be_measured_gives_no_figure():
    assert list(plain_data(Keeper(None))) == []


def test_few_movements_go_out_and_in_the_same(tmp_path):
    found = out_and_in(folder=tmp_path, movements=300, yards=2, colonies=4, parts=70)
    assert found["differ"] == 0
    assert min(found["out"], found["back"], found["megabytes"], found["megabytes_of_files"]) > 0

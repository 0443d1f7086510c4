"""Workers as real processes: killed in mid-solve, stopped by the keeper, two at once, older than the books."""

import re
import signal
from pathlib import Path

import pytest

from tests.processes import waits_until

pytestmark = pytest.mark.skipif(not Path("/proc").is_dir(), reason="reads the system's list of processes")
LONG_SEARCH = {
    "scenarios": 300,
    "seconds": 20,
    "gap": 1e-5,
    "trial": 0,
}  # by cuts, far finer than it can prove soon
SEARCHING = ("weighing the seasons", "choosing packs")
PAGE = """
import django; django.setup()
from django.contrib.auth import get_user_model
from django.test import Client
client = Client(headers={{"host": "127.0.0.1"}})
client.force_login(get_user_model().objects.first())
print(client.{act}("/{path}", follow=True).content.decode())
"""


def page(books, path, act="get"):
    html = books.script(PAGE.format(path=path, act=act))
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html))


def searching(books, run):
    """The run's row once its solver is choosing by cuts."""

    def now():
        row = books.run(run)
        assert row["status"] in ("waiting", "working"), row["message"]
        return row["stage"] in SEARCHING and books.solvers() and row

    return waits_until(now)


def test_a_worker_killed_in_mid_solve_leaves_no_solver_and_its_run_is_taken_up_again(books):
    (run,) = books.ask(**LONG_SEARCH)
    first = books.worker()
    before = searching(books, run)
    first.send_signal(signal.SIGKILL)
    first.wait()
    waits_until(lambda: not books.solvers())
    left = books.run(run)
    assert (left["status"], left["attempts"], left["worker"]) == ("working", 1, before["worker"])

    second = books.worker()
    books.let_lease_run_out(run)
    again = searching(books, run)
    assert again["attempts"] == 2 and again["worker"] != before["worker"]
    assert re.search(
        rf"The planner broke off while ({'|'.join(SEARCHING)}). The run is taken up again",
        page(books, f"runs/{run}/"),
    )
    answer = page(books, f"runs/{run}/cancel/", "post")
    assert "Stopping: it ends at its next breath" in answer or "Stopped before it was done" in answer
    waits_until(lambda: books.run(run)["status"] == "cancelled" and not books.solvers())
    assert second.poll() is None


def test_two_workers_at_once_never_work_the_same_run(books):
    runs = books.ask(runs=4, scenarios=3, seconds=20, trial=0)
    told = "".join(worker.communicate()[0] for worker in [books.worker("--once"), books.worker("--once")])
    assert sorted(map(int, re.findall(r"Run (\d+) is done", told))) == runs
    assert [books.run(run)["attempts"] for run in runs] == [1] * len(runs)


def test_a_worker_older_than_the_books_takes_no_run_and_says_why(books):
    (run,) = books.ask(scenarios=3, trial=0)
    books.change(
        "INSERT INTO django_migrations (app, name, applied) "
        "VALUES ('planner', '0999_settings_of_next_year', '2001-01-01')"
    )
    worker = books.worker()
    told, _ = worker.communicate()
    assert worker.returncode == 1
    assert "The books were brought to a newer version than this worker" in told
    assert (books.run(run)["status"], books.run(run)["attempts"]) == ("waiting", 0)

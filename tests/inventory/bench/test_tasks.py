"""Tasks run on books of their own in a folder: nothing of the keeper's is read, eight writers lose nothing."""

from inventory.bench import tasks


def test_books_are_filled_and_measured_in_the_folder_told(tmp_path):
    size = {"movements": 300, "yards": 2, "colonies": 4, "parts": 70}
    assert tasks.fill_books(folder=tmp_path, **size)["holdings"] > 0
    assert (tmp_path / "keeper.sqlite3").exists()
    found = tasks.writers(folder=tmp_path)
    assert (found["lost"], found["acts"]) == (0, 400)
    assert tasks.check_books(folder=tmp_path)["faults"] == 0

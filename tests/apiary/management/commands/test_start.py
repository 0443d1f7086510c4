"""The real command as a keeper runs it: own data folder, real port, real static files, real worker."""

import contextlib
import http.cookiejar
import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.parse
import urllib.request
from pathlib import Path

import pytest

MANAGE = Path(__file__).resolve().parents[4] / "manage.py"
PATIENCE = 60  # seconds a slow machine may take


def free_port():
    with socket.create_server(("127.0.0.1", 0)) as door:
        return door.getsockname()[1]


@contextlib.contextmanager
def started(data, port, log):
    surroundings = {key: value for key, value in os.environ.items() if not key.startswith("DJANGO_")}
    surroundings |= {"DATA_DIR": str(data), "PYTHONUNBUFFERED": "1"}
    surroundings.pop("DATABASE_URL", None)
    with log.open("wb") as out:
        process = subprocess.Popen(
            [sys.executable, str(MANAGE), "start", "--port", str(port)],
            env=surroundings,
            stdout=out,
            stderr=subprocess.STDOUT,
            start_new_session=True,
        )
    try:
        yield process
    finally:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)
        process.wait()


def wait_for(pattern, log, process):
    for _try in range(PATIENCE * 10):
        if found := re.search(pattern, log.read_text(encoding="utf-8")):
            return found
        assert process.poll() is None, log.read_text(encoding="utf-8")
        time.sleep(0.1)
    raise AssertionError(log.read_text(encoding="utf-8"))


def workers(data):
    """Process ids of workers on this data folder, read from the system's list."""
    found = []
    for entry in Path("/proc").glob("[0-9]*"):
        with contextlib.suppress(OSError):
            line, surroundings = (entry / "cmdline").read_bytes(), (entry / "environ").read_bytes()
            if b"work_runs" in line and f"DATA_DIR={data}".encode() in surroundings:
                found.append(int(entry.name))
    return found


@pytest.fixture
def browser_of_a_keeper():
    """Keeps cookies and follows redirects."""
    return urllib.request.build_opener(urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar()))


@pytest.mark.skipif(not Path("/proc").is_dir(), reason="reads the system's list of processes")
def test_first_run_lets_the_keeper_in_and_sigterm_leaves_nobody_behind(tmp_path, browser_of_a_keeper):
    data, port, log = tmp_path / "data", free_port(), tmp_path / "log"
    with started(data, port, log) as process:
        link = wait_for(r"Sign in: (http://127\.0\.0\.1:\d+/\S+)", log, process)[1]
        page = browser_of_a_keeper.open(link).read().decode()
        sheet = re.search(r'href="(/static/apiary/look\.[0-9a-f]+\.css)"', page)[1]
        assert b"--paper" in browser_of_a_keeper.open(urllib.parse.urljoin(link, sheet)).read()
        token = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', page)[1]
        password = "forty frames of foundation"
        given = {"csrfmiddlewaretoken": token, "name": "Robin Ash", "password": password, "again": password}
        home = browser_of_a_keeper.open(link, data=urllib.parse.urlencode(given).encode()).read().decode()
        assert "First steps" in home
        with pytest.raises(urllib.error.HTTPError) as used:
            browser_of_a_keeper.open(link)
        assert used.value.code == 410
        for _try in range(PATIENCE * 10):
            if workers(data):
                break
            time.sleep(0.1)
        assert len(workers(data)) == 1
        process.send_signal(signal.SIGTERM)
        assert process.wait(timeout=PATIENCE) == 0
        assert workers(data) == []
    text = log.read_text(encoding="utf-8")
    assert text.count("Sign in:") == 1
    assert text.rstrip().endswith("Stopped.")

    with started(data, port, log) as process:  # the port is free again at once, and the keeper is known
        wait_for(rf"Serving at http://127\.0\.0\.1:{port}/", log, process)
        process.send_signal(signal.SIGINT)
        assert process.wait(timeout=PATIENCE) == 0
    assert "Sign in:" not in log.read_text(encoding="utf-8")


def test_a_port_in_use_ends_with_a_sentence_and_touches_no_data(tmp_path):
    with socket.create_server(("127.0.0.1", 0)) as door:
        port = door.getsockname()[1]
        log = tmp_path / "log"
        with started(tmp_path / "data", port, log) as process:
            assert process.wait(timeout=PATIENCE) == 1
    assert f"Port {port} on 127.0.0.1 is in use" in log.read_text(encoding="utf-8")
    assert not list((tmp_path / "data").glob("*.sqlite3"))

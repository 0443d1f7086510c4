"""Port, address, worker: what is refused and with which sentence, and that a worker is stopped and started again."""

import re
import socket
import subprocess
import sys
import urllib.parse

import pytest
from django.test import Client
from django.urls import reverse

from apiary import serving
from tests.makers import make_person


def test_a_port_in_use_says_so_and_names_another():
    with serving.open_port("127.0.0.1", 0) as door:
        port = door.getsockname()[1]
        with pytest.raises(
            serving.PortNotOpen, match=f"Port {port} on 127.0.0.1 is in use.*--port {port + 1}"
        ):
            serving.open_port("127.0.0.1", port)


def test_a_name_no_machine_has_is_refused():
    with pytest.raises(serving.PortNotOpen, match="is no address of this machine"):
        serving.open_port("no host of this machine", 8000)


@pytest.mark.parametrize("port", [-1, 65536, 99999])
def test_a_number_that_is_no_port_is_refused(port):
    with pytest.raises(serving.PortNotOpen, match=f"Port {port} is no port"):
        serving.open_port("127.0.0.1", port)


def test_an_address_of_another_machine_is_refused():
    # 192.0.2.0/24 is kept for examples and belongs to no machine (RFC 5737)
    with pytest.raises(serving.PortNotOpen, match=r"Cannot listen at 192\.0\.2\.1"):
        serving.open_port("192.0.2.1", 8000)


def test_the_address_is_one_a_browser_here_can_open():
    with serving.open_port("127.0.0.1", 0) as door:
        assert serving.address_of(door) == f"http://127.0.0.1:{door.getsockname()[1]}"


def test_a_site_for_the_whole_house_is_told_by_the_address_a_phone_can_open():
    with serving.open_port("0.0.0.0", 0) as door:
        address = urllib.parse.urlsplit(serving.address_of(door))
        assert (address.hostname, address.port) == (serving.own_address(), door.getsockname()[1])
        with socket.create_connection((address.hostname, address.port), timeout=5) as phone:
            assert phone.getpeername()[0] == serving.own_address()


def test_a_machine_without_a_network_is_told_by_its_own_name_for_itself(monkeypatch):
    class NoWay(socket.socket):
        def connect(self, where):
            raise OSError("Network is unreachable")

    monkeypatch.setattr(serving.socket, "socket", NoWay)
    assert serving.own_address() == "127.0.0.1"
    assert serving.own_address(socket.AF_INET6) == "::1"


def test_a_phone_on_the_same_network_signs_in(db):
    """Django checks a form's origin against the host it was asked at: any of this machine's names will do."""
    person = make_person()
    phone = Client(enforce_csrf_checks=True, headers={"host": "192.168.1.20:8000"})
    page = phone.get(reverse("sign-in")).content.decode()
    token = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', page)[1]
    given = {
        "csrfmiddlewaretoken": token,
        "username": person.username,
        "password": "long enough to guess",
    }
    answer = phone.post(reverse("sign-in"), given, headers={"origin": "http://192.168.1.20:8000"})
    assert (answer.status_code, answer.url) == (302, reverse("home"))
    assert phone.get(reverse("home")).status_code == 200
    elsewhere = phone.post(reverse("sign-in"), given, headers={"origin": "http://192.168.1.66:8000"})
    assert elsewhere.status_code == 403


@pytest.fixture
def worker():
    """A worker that sleeps in place of working."""
    worker = serving.Worker()
    worker.line = [sys.executable, "-c", "import time; time.sleep(60)"]
    yield worker
    worker.stop()


def test_a_worker_told_to_stop_is_gone(worker):
    worker.start()
    process = worker.process
    assert process.poll() is None
    worker.stop()
    assert process.poll() is not None


def test_a_worker_that_does_not_listen_is_killed(worker, monkeypatch):
    monkeypatch.setattr(serving, "STOP_SECONDS", 0.2)
    deaf = "import signal, time; signal.signal(signal.SIGTERM, signal.SIG_IGN); print('deaf'); time.sleep(60)"
    worker.line = [sys.executable, "-u", "-c", deaf]
    worker.process = subprocess.Popen(worker.line, stdout=subprocess.PIPE)
    assert worker.process.stdout.readline() == b"deaf\n"
    worker.stop()
    worker.process.stdout.close()
    assert worker.process.poll() == -9


def test_a_worker_that_ends_by_itself_is_started_again(worker, monkeypatch):
    monkeypatch.setattr(serving, "REST_SECONDS", 0.05)
    worker.line = [sys.executable, "-c", ""]
    worker.start()
    first = worker.process
    first.wait()
    for _try in range(200):
        if worker.process is not first:
            break
        worker.over.wait(0.05)
    assert worker.process is not first


def test_a_worker_never_started_may_be_stopped(worker):
    worker.stop()
    assert worker.process is None

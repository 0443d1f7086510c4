"""Serves the site from this machine: a port, the web, and beside it the worker that works out orders.

Takes host and port; gives back when told to stop (SIGTERM or Ctrl-C), with the worker stopped too.
Knows the worker by the name of its command alone. Writes nothing to the books.
"""

import contextlib
import errno
import os
import signal
import socket
import subprocess
import sys
import threading

from django.conf import settings
from django.core.management import call_command
from django.core.wsgi import get_wsgi_application
from waitress import create_server

WORKER = ("work_runs",)
STOP_SECONDS = 10  # what the worker gets to put its run back
REST_SECONDS, REST_AT_MOST = 3, 60  # before a worker that ended by itself is started again; doubled each time
WEB_THREADS = 8
EVERYWHERE = ("0.0.0.0", "::")
NEAR = {socket.AF_INET: "127.0.0.1", socket.AF_INET6: "::1"}
EXAMPLE = {socket.AF_INET: "192.0.2.1", socket.AF_INET6: "2001:db8::1"}  # RFC 5737, RFC 3849: no machine's


class PortNotOpen(Exception):
    """The address cannot be listened at; the text says why and what to do."""


def open_port(host, port):
    """A listening socket, or PortNotOpen."""
    if not 0 <= port <= 65535:
        raise PortNotOpen(f"Port {port} is no port: choose one from 1024 to 65535, for example --port 8000.")
    try:
        family, kind, proto, _name, where = socket.getaddrinfo(
            host, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE
        )[0]
        door = socket.socket(family, kind, proto)
    except OSError as why:
        raise PortNotOpen(f"{host} port {port} is no address of this machine ({why}).") from why
    try:
        if os.name == "posix":  # elsewhere it would let two programs share the port
            door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        door.bind(where)
        door.listen(64)
    except OSError as why:
        door.close()
        raise PortNotOpen(_why_not(host, port, why)) from why
    return door


def _why_not(host, port, why):
    if why.errno == errno.EADDRINUSE:
        return (
            f"Port {port} on {host} is in use: another program, or this one started twice, listens there. "
            f"Stop it, or choose another port, for example --port {port + 1}."
        )
    if why.errno == errno.EACCES:
        return f"Port {port} needs more rights than you have: choose one above 1023, for example --port 8000."
    return f"Cannot listen at {host} port {port}: {why.strerror}."


def address_of(door):
    """http://HOST:PORT of a socket as a browser takes it: one that listens everywhere by this machine's own address."""
    host, port = door.getsockname()[:2]
    if host in EVERYWHERE:
        host = own_address(door.family)
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"


def own_address(family=socket.AF_INET):
    """The address other machines of the network reach this one at; the one it calls itself by where there is none.

    Asks the system which way it would send to an address kept for examples; nothing is sent."""
    far, near = EXAMPLE[family], NEAR[family]
    try:
        with socket.socket(family, socket.SOCK_DGRAM) as asking:
            asking.connect((far, 9))
            return asking.getsockname()[0]
    except OSError:
        return near


def prepare():
    """Brings tables, catalogue and static files up to date; run again, it changes nothing."""
    settings.DATA_DIR.mkdir(parents=True, exist_ok=True)
    call_command("migrate", interactive=False, verbosity=0)
    call_command("load_catalogue", verbosity=0)
    call_command("collectstatic", interactive=False, verbosity=0)


def serve(door):
    """Serves at the socket until SIGTERM or Ctrl-C; the worker ends with it. To be called in the main thread."""
    before = {name: signal.signal(name, _stop) for name in (signal.SIGTERM, signal.SIGINT)}
    worker = Worker()
    try:
        worker.start()
        server = create_server(get_wsgi_application(), sockets=[door], threads=WEB_THREADS, ident=None)
        server.run()  # gives back on SystemExit, its threads ended
    except SystemExit:
        pass
    finally:
        for name in before:
            signal.signal(name, signal.SIG_IGN)
        worker.stop()
        door.close()
        for name, handler in before.items():
            signal.signal(name, handler)


def _stop(_signal, _frame):
    raise SystemExit(0)


class Worker:
    """The child process that works out orders, started again if it ends by itself."""

    def __init__(self, command=WORKER):
        self.line = [sys.executable, str(settings.BASE_DIR / "manage.py"), *command]
        self.process: subprocess.Popen | None = None
        self.over = threading.Event()
        self.door = threading.Lock()  # nobody starts a worker while it is being stopped
        self.watch = threading.Thread(target=self._watch, name="worker's watch", daemon=True)

    def start(self):
        self._begin()
        self.watch.start()

    def stop(self):
        """Asks it to leave; kills it where it does not."""
        with self.door:
            self.over.set()
        if self.process is None:
            return
        with contextlib.suppress(ProcessLookupError):
            self.process.terminate()
        try:
            self.process.wait(STOP_SECONDS)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()

    def _begin(self):
        self.process = subprocess.Popen(self.line, stdin=subprocess.DEVNULL)

    def _watch(self):
        rest = REST_SECONDS
        while self.process is not None and not self.over.is_set():
            try:
                self.process.wait(0.5)
            except subprocess.TimeoutExpired:
                continue
            if self.over.wait(rest):
                return
            rest = min(2 * rest, REST_AT_MOST)
            with self.door:
                if not self.over.is_set():
                    self._begin()

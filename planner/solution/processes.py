"""Python processes that work for this one: how they start and end, and what each does at its own start.

Takes the module to run; gives the process, spoken with through pipes. What is said to it and answered is its caller's.
"""

import contextlib
import os
import signal
import subprocess
import sys
import threading
import time

ROOT = os.path.abspath(os.path.join(os.path.dirname(__file__), os.pardir, os.pardir))
LOOK_SECONDS = 0.5


def started(module, *words, **settings):
    """`python -m module words` with this code on its path; `settings` as Popen takes them."""
    path = os.pathsep.join([ROOT, *filter(None, [os.environ.get("PYTHONPATH")])])
    return subprocess.Popen(
        [sys.executable, "-m", module, *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": path},
        **settings,
    )


def end_session(process):
    """Kills a process that leads its session with all of that session; harmless where it has ended."""
    with contextlib.suppress(ProcessLookupError, PermissionError):
        os.killpg(process.pid, signal.SIGKILL)
    close(process)


def end_alone(process):
    """Kills a process that shares our session; harmless where it has ended."""
    process.kill()
    close(process)


def close(process):
    """Waits for the end of a process and closes its pipes."""
    process.wait()
    for pipe in (process.stdin, process.stdout):
        with contextlib.suppress(BrokenPipeError):  # what it did not read any more
            pipe.close()


def own_output():
    """In the started process: standard output for answers alone; solvers greet there, from now on into nothing."""
    out = os.dup(1)
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    return out


def end_with(parent, *, session=True):
    """In the started process: it ends when its parent is gone, with its whole session or alone."""
    threading.Thread(target=_watch, args=(parent, session), daemon=True).start()


def _watch(parent, session):
    while os.getppid() == parent:
        time.sleep(LOOK_SECONDS)
    if session:
        os.killpg(os.getpgid(0), signal.SIGKILL)
    os.kill(os.getpid(), signal.SIGKILL)

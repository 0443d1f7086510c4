"""A queue of writers over all threads and processes: first come, first served, by locks on bytes of one file.

Takes the file's path and how many seconds to wait; `enter` gives False where that was not enough. Each queue object is
one place to stand in line, made by whoever waits. The file stays empty: the kernel keeps its locks, and drops those of
a killed process. Where the machine has no such locks (any but Linux) nobody waits here, and SQLite's own wait is left.
"""

import os
import struct
import sys
import time
import weakref

if sys.platform == "linux":
    import fcntl

HAS_LOCKS = sys.platform == "linux"
DOOR = 0  # the byte of the one who is in; every other locked one is somebody's in line: the moment they came
DOOR_SECONDS, LINE_SECONDS = 0.001, 0.004  # between looks of the first in line, and of the others
FLOCK = "hhqqi0q"  # the kernel's struct flock: type, whence, start, length, pid

_all: "weakref.WeakSet[Queue]" = weakref.WeakSet()


class Queue:
    """One who may stand in line. Entering twice is once; `leave` and `close` may be called at any time."""

    def __init__(self, path):
        self.path = path
        self.file: int | None = None
        self.is_in = False
        _all.add(self)

    def enter(self, seconds):
        """Waits for all who came before and for the one who is in; False where that takes longer."""
        if self.is_in or not HAS_LOCKS:
            return True
        try:
            self._open()
            self.is_in = self._wait(time.monotonic() + seconds)
        except (
            OSError
        ):  # a folder that takes no file or a disk that keeps no locks: SQLite's own wait is left
            self.close()
            return True
        except BaseException:
            self.close()
            raise
        return self.is_in

    def _wait(self, until):
        mine = self._stand()
        try:
            first = _looked(lambda: not self._is_locked(DOOR + 1, mine - 1), LINE_SECONDS, until)
            return first and _looked(lambda: self._lock(DOOR), DOOR_SECONDS, until)
        finally:
            self._unlock(mine)

    def leave(self):
        if self.is_in:
            self.is_in = False
            self._unlock(DOOR)

    def close(self):
        """Leaves and forgets the file."""
        self.is_in = False
        if self.file is not None:
            os.close(self.file)
            self.file = None

    def _open(self):
        if self.file is None:
            self.file = os.open(self.path, os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o600)

    def _stand(self):
        """The byte of a new place at the end of the line: nanoseconds of a clock that all processes share."""
        while True:
            mine = time.monotonic_ns()
            if self._lock(mine):
                return mine

    def _lock(self, byte):
        try:
            self._ask(fcntl.F_OFD_SETLK, fcntl.F_WRLCK, byte, 1)
        except BlockingIOError:
            return False
        return True

    def _unlock(self, byte):
        self._ask(fcntl.F_OFD_SETLK, fcntl.F_UNLCK, byte, 1)

    def _is_locked(self, first, length):
        """True where somebody else has a byte of these."""
        return self._ask(fcntl.F_OFD_GETLK, fcntl.F_WRLCK, first, length) != fcntl.F_UNLCK

    def _ask(self, what, kind, start, length):
        """Asks the kernel of so many bytes; gives the kind of lock it answers."""
        assert self.file is not None
        told = struct.pack(FLOCK, kind, os.SEEK_SET, start, length, 0)
        answer: bytes = fcntl.fcntl(self.file, what, told)
        return struct.unpack(FLOCK, answer)[0]


def _looked(found, seconds, until):
    """Looks again and again; True once it is so, False when the time is up."""
    while not found():
        left = until - time.monotonic()
        if left <= 0:
            return False
        time.sleep(min(seconds, left))
    return True


def _left_to_the_parent():
    """A forked child gives back what it holds of its parent's places without unlocking them."""
    for queue in list(_all):
        queue.close()


if HAS_LOCKS:
    os.register_at_fork(after_in_child=_left_to_the_parent)

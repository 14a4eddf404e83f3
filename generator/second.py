"""A copy of this process that does one thing, tells what came of it and ends with this one."""

import ctypes
import gc
import os
import pickle
import signal
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from typing import Generic, NoReturn, TypeVar

_SIGNAL_WHEN_PARENT_ENDS = 1  # PR_SET_PDEATHSIG
_ROOM_BYTES = 1 << 20  # what the system lets anybody ask for

Result = TypeVar("Result")


def can_be_made() -> bool:
    """Return whether a copy of this process is cheap, safe, and has a core of its own."""
    # the copy has one thread alone: a lock that another one held would never be opened in it
    is_safe = sys.platform == "linux" and threading.active_count() == 1
    return is_safe and (os.cpu_count() or 1) > 1


class SecondProcess(Generic[Result]):
    """A copy of this process that works from the moment it is made until it has told its result."""

    def __init__(self, work: Callable[[], Result]) -> None:
        # there is one only where copies can be made
        import fcntl

        self._reading, writing = os.pipe()
        # room for what it tells, so that it need not stay until it is asked
        with suppress(OSError):
            fcntl.fcntl(self._reading, fcntl.F_SETPIPE_SZ, _ROOM_BYTES)
        first = os.getpid()
        # what the collector looks through it writes to, and what is written to is no longer shared
        gc.freeze()
        self._process = os.fork()
        if not self._process:
            _work(work, writing, first)
        os.close(writing)

    def told(self) -> Result:
        """Return what its work returned, or raise what that raised.

        RuntimeError where it ended before it was done.
        """
        # read to its end: a full pipe would keep it from ending
        with os.fdopen(self._reading, "rb", closefd=False) as pipe:
            told = pipe.read()
        if not told:
            raise RuntimeError("The second process ended before it was done.")
        result: Result
        result, failed = pickle.loads(told)
        if failed is not None:
            raise failed
        return result

    def end(self) -> None:
        """End it, done or not."""
        os.close(self._reading)
        os.kill(self._process, signal.SIGKILL)
        os.waitpid(self._process, 0)
        gc.unfreeze()


def _work(work: Callable[[], object], writing: int, first: int) -> NoReturn:
    """Work, tell the first process and end, without its caller's cleaning up."""
    try:
        # the system ends this process at the moment the first ends, even if that is killed
        ctypes.CDLL(None).prctl(_SIGNAL_WHEN_PARENT_ENDS, signal.SIGKILL)
        # the first may have ended before the system was asked
        if os.getppid() == first:
            gc.disable()
            told = pickle.dumps(_came_of(work), pickle.HIGHEST_PROTOCOL)
            with os.fdopen(writing, "wb") as pipe:
                pipe.write(told)
    finally:
        os._exit(0)


def _came_of(work: Callable[[], object]) -> tuple[object, Exception | None]:
    try:
        return work(), None
    except Exception as failed:
        return None, failed

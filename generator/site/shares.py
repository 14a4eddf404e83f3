"""Splits the writing of pages between this process and a second one that is a copy of it."""

import ctypes
import os
import signal
import sys
import threading
from collections.abc import Sequence
from typing import NoReturn, TypeVar

# Below this many pages a second process costs more than it saves.
TWO_PROCESSES_FROM = 60

_SIGNAL_WHEN_PARENT_ENDS = 1  # PR_SET_PDEATHSIG

Item = TypeVar("Item")


class Shares:
    """Which process this is, once `split` was called, and how the second reports to the first."""

    def __init__(self) -> None:
        self.started_by = os.getpid()
        self.second = 0
        self.pipe = -1

    @property
    def is_second(self) -> bool:
        """Whether this is the second process, which must never return to the caller's code."""
        return os.getpid() != self.started_by

    def split(self, items: Sequence[Item]) -> Sequence[Item]:
        """The items that are the other process's to write; none where one process does it all.

        Returns in both processes. Splits only where a copy of a process is cheap and safe.
        """
        # the copy has one thread alone: a lock that another one held would never be opened in it
        is_safe = sys.platform == "linux" and threading.active_count() == 1
        if len(items) < TWO_PROCESSES_FROM or not is_safe or (os.cpu_count() or 1) < 2:
            return ()
        reading, writing = os.pipe()
        self.second = os.fork()
        self.pipe, unused = (reading, writing) if self.second else (writing, reading)
        os.close(unused)
        if self.is_second:
            self._end_with_first()
        return items[1::2] if self.second else items[::2]

    def _end_with_first(self) -> None:
        """Has the system end this process at the moment the first ends, even if that is killed."""
        ctypes.CDLL(None).prctl(_SIGNAL_WHEN_PARENT_ENDS, signal.SIGKILL)
        # the first may have ended before the system was asked
        if os.getppid() != self.started_by:
            os._exit(1)

    def stop_second(self) -> None:
        """Ends the second process, if it still runs, before its folder is cleared away."""
        if self.second:
            os.close(self.pipe)
            os.kill(self.second, signal.SIGKILL)
            os.waitpid(self.second, 0)
            self.second = 0

    def report(self, messages: Sequence[str], status: int) -> NoReturn:
        """Ends the second process, leaving `messages` for the first.

        `status` is 0, 1 or the number of the system's error that kept it from writing.
        """
        with os.fdopen(self.pipe, "wb") as pipe:
            pipe.write("\0".join(messages).encode())
        os._exit(status)

    def gather(self) -> list[str]:
        """What the second process had to say, once it is done; nothing if there is none.

        Raises the OSError that kept the second process from writing.
        """
        if not self.second:
            return []
        # read to its end before waiting: a full pipe would keep the second from ending
        with os.fdopen(self.pipe, "rb") as pipe:
            said = pipe.read().decode()
        second, self.second = self.second, 0
        messages = said.split("\0") if said else []
        status = os.waitstatus_to_exitcode(os.waitpid(second, 0)[1])
        if status > 1:
            raise OSError(status, os.strerror(status))
        if status and not messages:
            messages.append("The second process of the build ended early.")
        return messages

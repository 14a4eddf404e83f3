"""Does many tasks in two processes: this one, and a copy of it that ends with them."""

import ctypes
import gc
import os
import pickle
import signal
import sys
import threading
from collections.abc import Callable, Sequence
from typing import NoReturn, TypeVar

# Below this many tasks a second process costs more than it saves.
TWO_FROM = 60
# Tasks that a process takes at a time: so many parts that neither waits long for the other.
_PARTS = 250  # a number each in one byte
_SIGNAL_WHEN_PARENT_ENDS = 1  # PR_SET_PDEATHSIG

Result = TypeVar("Result")


def in_two(tasks: Sequence[Callable[[], Result]]) -> list[Result]:
    """Return what the tasks return, in their order.

    Two processes take tasks by turns where a copy of a process is cheap and safe; what tasks keep
    for one another they keep in either. Raises what the first task that fails raises, in whichever
    process, and RuntimeError where the second ended before it was done.
    """
    # the copy has one thread alone: a lock that another one held would never be opened in it
    is_safe = sys.platform == "linux" and threading.active_count() == 1
    if len(tasks) < TWO_FROM or not is_safe or (os.cpu_count() or 1) < 2:
        return [task() for task in tasks]
    return _divided(tasks)


def _divided(tasks: Sequence[Callable[[], Result]]) -> list[Result]:
    size = -(-len(tasks) // _PARTS)
    parts = [range(start, min(start + size, len(tasks))) for start in range(0, len(tasks), size)]
    waiting, filling = os.pipe()
    os.write(filling, bytes(range(len(parts))))
    os.close(filling)
    reading, writing = os.pipe()
    first = os.getpid()
    # what the collector looks through it writes to, and what is written to is no longer shared
    gc.freeze()
    second = os.fork()
    if not second:
        _second(tasks, parts, waiting, writing, first)
    os.close(writing)
    try:
        mine = _taken(tasks, parts, waiting)
        # read to its end before waiting: a full pipe would keep the second from ending
        with os.fdopen(reading, "rb", closefd=False) as pipe:
            told = pipe.read()
    finally:
        os.close(reading)
        os.close(waiting)
        os.kill(second, signal.SIGKILL)
        os.waitpid(second, 0)
        gc.unfreeze()
    if not told:
        raise RuntimeError("The second process ended before it was done.")
    results: dict[int, tuple[Result | None, BaseException | None]] = mine | pickle.loads(told)
    found: list[Result] = []
    for number in range(len(tasks)):
        # what comes after a task that failed may not have been done
        result, failed = results[number]
        if failed is not None:
            raise failed
        found.append(result)  # type: ignore[arg-type]  # there is one where nothing failed
    return found


def _taken(
    tasks: Sequence[Callable[[], Result]], parts: Sequence[range], waiting: int
) -> dict[int, tuple[Result | None, BaseException | None]]:
    """Return what came of the tasks this process took, by their numbers."""
    results: dict[int, tuple[Result | None, BaseException | None]] = {}
    while part := os.read(waiting, 1):
        for number in parts[part[0]]:
            try:
                results[number] = (tasks[number](), None)
            except Exception as failed:
                results[number] = (None, failed)
    return results


def _second(
    tasks: Sequence[Callable[[], Result]],
    parts: Sequence[range],
    waiting: int,
    writing: int,
    first: int,
) -> NoReturn:
    """Do a share of the tasks, tell the first process and end, without its caller's cleaning up."""
    try:
        # the system ends this process at the moment the first ends, even if that is killed
        ctypes.CDLL(None).prctl(_SIGNAL_WHEN_PARENT_ENDS, signal.SIGKILL)
        # the first may have ended before the system was asked
        if os.getppid() == first:
            gc.disable()
            told = pickle.dumps(_taken(tasks, parts, waiting), pickle.HIGHEST_PROTOCOL)
            with os.fdopen(writing, "wb") as pipe:
                pipe.write(told)
    finally:
        os._exit(0)

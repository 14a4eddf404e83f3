"""Does many tasks in two processes: this one, and a copy of it that ends with them."""

import os
from collections.abc import Callable, Sequence
from functools import partial

from generator.second import Result, SecondProcess, can_be_made

# Below this many tasks a second process costs more than it saves.
TWO_FROM = 60
# Tasks that a process takes at a time: so many parts that neither waits long for the other.
_PARTS = 250  # a number each in one byte


def in_two(tasks: Sequence[Callable[[], Result]]) -> list[Result]:
    """Return what the tasks return, in their order.

    Two processes take tasks by turns where a copy of a process is cheap and safe; what tasks keep
    for one another they keep in either. Raises what the first task that fails raises, in whichever
    process, and RuntimeError where the second ended before it was done.
    """
    if len(tasks) < TWO_FROM or not can_be_made():
        return [task() for task in tasks]
    return _divided(tasks)


def _divided(tasks: Sequence[Callable[[], Result]]) -> list[Result]:
    size = -(-len(tasks) // _PARTS)
    parts = [range(start, min(start + size, len(tasks))) for start in range(0, len(tasks), size)]
    waiting, filling = os.pipe()
    os.write(filling, bytes(range(len(parts))))
    os.close(filling)
    second = SecondProcess(partial(_taken, tasks, parts, waiting))
    try:
        results = _taken(tasks, parts, waiting) | second.told()
    finally:
        os.close(waiting)
        second.end()
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
) -> dict[int, tuple[Result | None, Exception | None]]:
    """Return what came of the tasks this process took, by their numbers."""
    results: dict[int, tuple[Result | None, Exception | None]] = {}
    while part := os.read(waiting, 1):
        for number in parts[part[0]]:
            try:
                results[number] = (tasks[number](), None)
            except Exception as failed:
                results[number] = (None, failed)
    return results

"""Does one task in a copy of this process that is made early, while the other core has no work."""

import os
import pickle
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from typing import TypeVar

from generator.second import Result, SecondProcess, can_be_made

_Handed = TypeVar("_Handed")
# Takes what the work needs, and returns what waits for its result.
Handing = Callable[[_Handed], Callable[[], Result]]


@contextmanager
def working_beside(
    work: Callable[[_Handed], Result], first: _Handed
) -> Iterator[Handing[_Handed, Result]]:
    """Yield what hands a copy of this process what its work needs.

    The copy does the work on `first` before, so that the libraries for it have come. Where copies
    are not cheap and safe, this process does the work at the moment it is waited for. What the work
    raises is raised, and RuntimeError where the copy ended before it was done.
    """
    if not can_be_made():
        yield lambda given: lambda: work(given)
        return
    reading, writing = os.pipe()

    def working() -> Result:
        # without this end of its own the pipe ends when the first process closes it
        os.close(writing)
        work(first)
        with os.fdopen(reading, "rb") as pipe:
            return work(pickle.load(pipe))

    second = SecondProcess(working)

    def handed(given: _Handed) -> Callable[[], Result]:
        # of a copy that has ended `told` says so
        with suppress(BrokenPipeError), os.fdopen(writing, "wb", closefd=False) as pipe:
            pickle.dump(given, pipe, pickle.HIGHEST_PROTOCOL)
        return second.told

    try:
        yield handed
    finally:
        os.close(reading)
        os.close(writing)
        second.end()

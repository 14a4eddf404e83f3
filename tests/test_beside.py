"""A copy made early does one task, and ends with the process that made it."""

import os
import threading
from pathlib import Path

import pytest

from generator.beside import working_beside


@pytest.fixture(autouse=True)
def copies(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    # A browser that another test opened in this process leaves a thread behind.
    monkeypatch.setattr(threading, "active_count", lambda: 1)


def _doubled(numbers: list[int]) -> tuple[list[int], int]:
    if 13 in numbers:
        raise OSError(28, "thirteen")
    return [2 * number for number in numbers], os.getpid()


def test_what_is_handed_over_comes_back_done_by_another_process() -> None:
    many = list(range(100_000))  # more than a pipe holds at once, both ways
    many.remove(13)
    with working_beside(_doubled, []) as handed:
        waits = handed(many)
        done, process = waits()
    assert done == [2 * number for number in many]
    assert process != os.getpid()
    with pytest.raises(ProcessLookupError):
        os.kill(process, 0)


def test_one_core_does_it_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 1)
    with working_beside(_doubled, []) as handed:
        assert handed([4])() == ([8], os.getpid())


def test_what_fails_there_is_raised_here() -> None:
    with working_beside(_doubled, []) as handed:
        waits = handed([13])
        with pytest.raises(OSError, match="thirteen") as failed:
            waits()
    assert failed.value.errno == 28


def test_a_copy_that_ends_early_is_noticed() -> None:
    first = os.getpid()

    def ending(_: list[int]) -> None:
        if os.getpid() != first:
            os._exit(1)

    with working_beside(ending, []) as handed, pytest.raises(RuntimeError, match="ended before"):
        handed([1])()


def test_nothing_is_left_of_a_copy_that_is_not_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    fork, made = os.fork, list[int]()

    def noted() -> int:
        made.append(fork())
        return made[-1]

    monkeypatch.setattr(os, "fork", noted)
    descriptors = len(list(Path("/proc/self/fd").iterdir()))
    with working_beside(_doubled, []):
        pass
    assert len(list(Path("/proc/self/fd").iterdir())) == descriptors
    (copy,) = made
    with pytest.raises(ProcessLookupError):
        os.kill(copy, 0)

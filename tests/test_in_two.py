"""Two processes share the tasks and neither outlives the other."""

import os
import select
import signal
import threading
import time
from functools import partial

import pytest

from generator.in_two import in_two


@pytest.fixture(autouse=True)
def two_from_two(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.in_two.TWO_FROM", 2)
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    # A browser that another test opened in this process leaves a thread behind.
    monkeypatch.setattr(threading, "active_count", lambda: 1)


def _slowly(number: int) -> tuple[int, int]:
    time.sleep(0.002)
    return number, os.getpid()


def _failing(number: int) -> int:
    if number % 3 == 2:
        raise OSError(28, f"task {number}")
    return number


@pytest.mark.parametrize("count", [2, 3, 61, 700])
def test_all_is_done_once_and_in_order_by_two(count: int) -> None:
    done = in_two([partial(_slowly, number) for number in range(count)])
    assert [number for number, _ in done] == list(range(count))
    assert os.getpid() in {process for _, process in done}
    assert len({process for _, process in done}) == 2 or count < 61


def test_few_tasks_are_left_to_one_process(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.in_two.TWO_FROM", 4)
    assert {process for _, process in in_two([partial(_slowly, 1)] * 3)} == {os.getpid()}
    assert in_two([]) == []


@pytest.mark.parametrize("count", [3, 60, 500])
def test_the_first_that_fails_is_told_whoever_did_it(count: int) -> None:
    with pytest.raises(OSError, match="task 2") as failed:
        in_two([partial(_failing, number) for number in range(count)])
    assert failed.value.errno == 28


def test_a_second_process_that_ends_early_is_noticed() -> None:
    first = os.getpid()

    def ending() -> None:
        if os.getpid() != first:
            os._exit(1)
        time.sleep(0.05)

    with pytest.raises(RuntimeError, match="ended before it was done"):
        in_two([ending] * 60)


def test_no_process_is_left_when_a_task_is_interrupted(monkeypatch: pytest.MonkeyPatch) -> None:
    first, fork, made = os.getpid(), os.fork, list[int]()

    def noted() -> int:
        made.append(fork())
        return made[-1]

    monkeypatch.setattr(os, "fork", noted)

    def interrupted() -> None:
        if os.getpid() == first:
            raise KeyboardInterrupt
        signal.pause()

    with pytest.raises(KeyboardInterrupt):
        in_two([interrupted] * 10)
    (second,) = made
    with pytest.raises(ProcessLookupError):
        os.kill(second, 0)


def test_the_second_process_ends_when_the_first_is_killed() -> None:
    reading, writing = os.pipe()
    first = os.fork()
    if not first:
        own = os.getpid()

        def waiting() -> None:
            if os.getpid() != own:
                os.write(writing, b"started")
            signal.pause()

        in_two([waiting] * 10)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        assert pipe.read(7) == b"started"
        os.kill(first, signal.SIGKILL)
        os.waitpid(first, 0)
        # The pipe ends when the last process that holds its other end is gone.
        assert select.select([pipe], [], [], 5)[0] == [pipe]
        assert pipe.read() == b""

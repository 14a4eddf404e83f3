"""Two processes share the pages and neither outlives the other."""

import os
import select
import signal
import threading

import pytest

from generator.site import shares
from generator.site.shares import Shares


@pytest.fixture(autouse=True)
def two_from_two(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shares, "TWO_PROCESSES_FROM", 2)
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    # A browser that another test opened in this process leaves a thread behind.
    monkeypatch.setattr(threading, "active_count", lambda: 1)


def test_each_process_leaves_out_what_the_other_writes() -> None:
    both = Shares()
    left_out = both.split("abcde")
    if both.is_second:
        both.report(["".join(left_out)], status=0)
    assert ("".join(left_out), both.gather()) == ("bd", ["ace"])
    assert both.gather() == []


def test_few_items_are_left_to_one_process() -> None:
    alone = Shares()
    assert alone.split("a") == ()
    assert (alone.is_second, alone.gather()) == (False, [])


def test_a_second_process_that_says_nothing_and_fails_is_noticed() -> None:
    both = Shares()
    both.split("ab")
    if both.is_second:
        both.report([], status=1)
    assert both.gather() == ["The second process of the build ended early."]


def test_the_second_process_is_ended_by_the_first() -> None:
    both = Shares()
    both.split("ab")
    if both.is_second:
        signal.pause()
    second = both.second
    both.stop_second()
    with pytest.raises(ProcessLookupError):
        os.kill(second, 0)
    assert both.gather() == []


def test_the_second_process_ends_when_the_first_is_killed() -> None:
    reading, writing = os.pipe()
    first = os.fork()
    if not first:
        both = Shares()
        both.split("ab")
        if both.is_second:
            os.write(writing, b"started")
            signal.pause()
        os.close(writing)
        signal.pause()
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        assert pipe.read(7) == b"started"
        os.kill(first, signal.SIGKILL)
        os.waitpid(first, 0)
        # The pipe ends when the last process that holds its other end is gone.
        assert select.select([pipe], [], [], 5)[0] == [pipe]
        assert pipe.read() == b""

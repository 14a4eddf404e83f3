"""Work done in children of this process, each a copy of it made for one task."""

import contextlib
import json
import os
import resource
import shutil
import signal
import sys
import tempfile
import traceback
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any, TypeVar

from tests.forked import first_ended

Task = TypeVar("Task")
MOST_BYTES = 6 << 30
# The machine may do other work too: by the clock a child may take so many times its seconds.
PATIENCE = 8


def in_children(
    tasks: Iterable[Task],
    work: Callable[[Task], Any],
    seconds: Callable[[Task], float] | None,
    jobs: int,
    scratch: Path,
) -> Iterator[tuple[Task, Any]]:
    """Yield each task with what its work answered, None where the child was stopped or broke.

    A child is stopped where it wants too much memory, or after so many seconds of the processor;
    one without a number of seconds sees to its own end.
    """
    waiting = deque(enumerate(tasks))
    running: dict[int, tuple[Task, Path]] = {}
    while waiting or running:
        while waiting and len(running) < jobs:
            number, task = waiting.popleft()
            own = scratch / str(number)
            own.mkdir(parents=True)
            sys.stdout.flush()
            child = os.fork()
            if child == 0:
                _do(task, work, seconds(task) if seconds else None, own)
            running[child] = (task, own)
        ended, _ = first_ended(running)
        task, own = running.pop(ended)
        answer = own / "answer.json"
        yield task, json.loads(answer.read_text("utf-8")) if answer.is_file() else None
        shutil.rmtree(own)


def _do(task: Task, work: Callable[[Task], Any], seconds: float | None, own: Path) -> None:
    """Do the work in the child and end it: nothing of the parent is run on the way out."""
    try:
        _limit_memory()
        if seconds is not None:
            _limit_time(int(seconds) + 1)
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        tempfile.tempdir = str(own)
        answer = json.dumps(work(task))
        (own / "answer.tmp").write_text(answer, encoding="utf-8")
        (own / "answer.tmp").rename(own / "answer.json")
    except BaseException:
        (own / "broke.txt").write_text(traceback.format_exc(), encoding="utf-8")
    finally:
        os._exit(0)


def _limit_time(seconds: int) -> None:
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))
    signal.signal(signal.SIGALRM, signal.SIG_DFL)
    signal.alarm(seconds * PATIENCE)


def _limit_memory() -> None:
    with contextlib.suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))

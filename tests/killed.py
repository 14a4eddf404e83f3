"""Kills a program at moments of its work, whatever it does: a build, a save, an archive."""

import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator

from tests.book.sites import CHECKOUT


def killed(program: str, *words: object, kills: int, seed: int, within_s: float) -> Iterator[int]:
    """Start a program again and again, and kill it; yields after each kill, for a look.

    The program prints `ready` once it begins with what it does for ever; it is killed at a moment
    within so many seconds from then on.
    """
    moments = random.Random(seed)
    for number in range(kills):
        child = subprocess.Popen(
            [sys.executable, "-c", program, *map(str, words)], cwd=CHECKOUT, stdout=subprocess.PIPE
        )
        assert child.stdout is not None
        with child.stdout:
            assert child.stdout.readline() == b"ready\n"
            time.sleep(moments.uniform(0, within_s))
            child.send_signal(signal.SIGKILL)
            child.wait()
        yield number

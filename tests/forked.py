"""Children of this process, waited for one by one and not for those that others made."""

import os
import time
from collections.abc import Iterable

LOOK_AGAIN_S = 0.002


def first_ended(children: Iterable[int]) -> tuple[int, int]:
    """Wait until one of these children ends, and return it with its status."""
    them = list(children)
    while True:
        for child in them:
            ended, status = os.waitpid(child, os.WNOHANG)
            if ended:
                return ended, status
        time.sleep(LOOK_AGAIN_S)

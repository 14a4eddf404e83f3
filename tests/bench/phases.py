"""Times the phases of one build in a process of its own, as a command has them.

Run with a property folder and a folder for the pages it prints what each phase took.
"""

import gc
import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.book.make import make_book  # noqa: E402 - after the path above
from generator.inventory.load import load_inventory  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.site.publish import publish  # noqa: E402 - after the path above
from tests.bench.planning import AS_OF  # noqa: E402 - after the path above
from tests.properties import SEASON  # noqa: E402 - after the path above


def taken(folder: Path, out: Path) -> dict[str, float]:
    """Build the owner's book once: seconds of each phase, and how many pages it has."""
    # as in a command, which does without the collector
    gc.disable()
    found: dict[str, float] = {}

    def timed(name: str, work: Callable[[], Any]) -> Any:
        begun = time.perf_counter()
        done = work()
        found[name] = time.perf_counter() - begun
        return done

    inventory = timed("read", lambda: load_inventory(folder).inventory)
    plan = timed("plan", lambda: make_plan(inventory, SEASON, AS_OF))
    book = timed("book", lambda: make_book(plan))
    problems = timed("site", lambda: publish(book, out))
    assert problems == ()
    return {**found, "pages": float(len(book.pages))}


if __name__ == "__main__":
    print(json.dumps(taken(Path(sys.argv[1]), Path(sys.argv[2]))))

"""What pages and pictures cost that came after the limits of a build were set, each by itself.

They stay inside those limits; nothing here fails a run.
"""

import gc
import time
from collections.abc import Callable, Iterator
from typing import Any

from generator.book.homes import homes_of
from generator.book.pages.can_do import can_do_page
from generator.book.pages.pictures_ground import (
    job_ground,
    place_ground,
    stand_ground,
    walk_ground,
    whole_ground,
)
from generator.book.pages.stands_walks import stand_page
from generator.book.pages.wind_months import wind_months_page
from generator.book.pages.winds import wind_card_page
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.bench.planning import AS_OF
from tests.properties import SEASON

RUNS = 3
MS_IN_S = 1000


def drawings(plan: Plan) -> Iterator[Any]:
    """Draw the ground of every page that has a drawing of it."""
    yield from (place_ground(plan, place) for place in plan.places)
    yield from (job_ground(plan, job) for job in plan.jobs)
    yield from (stand_ground(plan, stand) for stand in plan.land.stands)
    yield from (walk_ground(plan, route) for route in plan.land.routes)
    yield whole_ground(plan)


def winds(plan: Plan) -> Iterator[Any]:
    """Make the pages that winds stand on: of each stand, of each month, and the card."""
    yield from (stand_page(plan, stand) for stand in plan.land.stands)
    yield from wind_months_page(plan)
    yield wind_card_page(plan)


def days(plan: Plan) -> Iterator[Any]:
    """Make the pages of what can be done on a day."""
    yield from can_do_page(plan)


PARTS: dict[str, Callable[[Plan], Iterator[Any]]] = {
    "drawings of the ground": drawings,
    "pages of winds and stands": winds,
    "pages of what a day allows": days,
}


def tell_later(inventory: Inventory, whose: str) -> None:
    """Print what each costs in all and by the page, at work, the least of several."""
    print(f"\nwhat came later, on {whose}; the least of {RUNS}, at work")
    for name, made in PARTS.items():
        taken, count = [], 0
        for _ in range(RUNS):
            # what a plan keeps is made anew
            plan = make_plan(inventory, SEASON, AS_OF)
            homes_of(plan)
            # as in a command, which does without the collector
            gc.collect()
            gc.disable()
            begun = time.process_time()
            count = sum(one is not None for one in made(plan))
            taken.append(MS_IN_S * (time.process_time() - begun))
            gc.enable()
        each = f"{min(taken) / count:.2f} ms each" if count else "none"
        print(f"  {name:48s} {min(taken):8.1f} ms, {count} of them, {each}")

"""One damaged property through reading and planning, and on request through book and site."""

from __future__ import annotations

import datetime
import math
import shutil
from collections.abc import Iterable
from pathlib import Path

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.inventory.problems import Problem
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.years_ahead import years_ahead
from generator.run_day import FIRST_DAY, LAST_DAY
from generator.site.publish import publish
from generator.working import Quantity
from tests.fuzz.damage import Damaged

AS_OF = datetime.date(2026, 8, 20)
OF_THE_PROGRAM = ("Traceback", "object at 0x", "<class", "<generator", "NoneType", "Error(")


def write(damaged: Damaged, folder: Path) -> Path:
    """Write the files of a damaged property into a folder made for them, and return it."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    for name, content in damaged.files.items():
        path = folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)
    return folder


def tried(folder: Path, sites: Path | None = None, *, books: bool = False) -> str:
    """Return how far a property folder gets: "faults", "refused", "plan", "book" or "site".

    Raises whatever goes wrong on the way, and AssertionError for a fault that is no sentence or a
    number that is none. With `sites` every reader's book is published there.
    """
    loaded = load_inventory(folder)
    if loaded.inventory is None:
        _are_clear(loaded.problems)
        return "faults"
    typed = loaded.inventory.property
    as_of = typed.as_of or AS_OF
    if not FIRST_DAY <= as_of <= LAST_DAY:
        return "refused"
    plan = make_plan(loaded.inventory, typed.season, as_of)
    _has_numbers(plan)
    years_ahead(plan)
    plans = [plan, *(seen_by(plan, reader) for reader in loaded.inventory.readers)]
    if not books and sites is None:
        return "plan"
    for number, one in enumerate(plans):
        book = make_book(one)
        if sites is not None:
            problems = publish(book, sites / str(number))
            assert not problems, problems
    return "book" if sites is None else "site"


def _are_clear(problems: Iterable[Problem]) -> None:
    told = [str(one) for one in problems]
    assert told, "no inventory and no fault"
    for one in told:
        assert not any(word in one for word in OF_THE_PROGRAM), one
        assert len(one) < 5000, one[:300]


def _has_numbers(plan: Plan) -> None:
    """Every number that was worked out is one."""
    for job in plan.jobs:
        for figure in job.every_number():
            if isinstance(figure, Quantity):
                assert math.isfinite(figure.value), f"{figure.id} is {figure.value}"

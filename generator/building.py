"""Plans a season and builds one reader's book; says early what would keep it from its place."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator.said import FolderTrouble, Progress, as_troubles, how_many, say_old
from generator.typed import safe

if TYPE_CHECKING:
    from generator.book.exports import Filing
    from generator.book.model import LeftFolder
    from generator.inventory.load import Loaded
    from generator.plan.model.plan import Plan
    from generator.run_day import DayOfRun
    from generator.scanning import Scan


def planned(loaded: Loaded, season: int | None, day: DayOfRun) -> Plan:
    """Return the owner's plan of a season, that of the folder where none is given."""
    from generator.plan.build.season_plan import make_plan

    assert loaded.inventory is not None
    plan = make_plan(loaded.inventory, season or loaded.inventory.property.season, day.date)
    say_old(plan)
    return plan


def build_one(
    plan: Plan,
    left: tuple[LeftFolder, ...],
    filing: Filing,
    target: Path,
    folder: Path,
    progress: Progress,
    scan: Scan | None = None,
) -> None:
    """Build one book, which `scan` looks at before it takes its place.

    Raises UsageError or Failed with what kept it from being built.
    """
    from generator.book.make import make_book
    from generator.site.publish import publish

    progress.say(f"Writing the book for {target.name} ...")
    with as_troubles():
        book = make_book(plan, left, filing)
        progress.say(f"Building {how_many(len(book.pages), 'page')} for {target.name} ...")
        problems = publish(book, target, property_folder=folder, scan=scan)
    if problems:
        raise FolderTrouble("The pages do not hold together:\n" + "\n".join(map(safe, problems)))


def refused_at_once(targets: Iterable[Path], folder: Path) -> dict[str, click.ClickException]:
    """Return by reader what keeps a book from its place, as it can be seen before any work."""
    from generator.site import publish

    troubles: dict[str, click.ClickException] = {}
    for target in targets:
        try:
            with as_troubles():
                publish.refuse_at_once(target, folder)
        except click.ClickException as trouble:
            troubles[target.name] = trouble
    return troubles

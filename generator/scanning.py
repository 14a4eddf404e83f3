"""Holds what a reader gets against what is kept from them; a hit keeps it from being handed out."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import Protocol

from generator.inventory.schema import Inventory, Reader
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_values import TypedValue, kept_from, typed_values
from generator.site.containers import NotReadable
from generator.site.leaks import LEAKS_TOLD, Leak, Search


class Scan(Protocol):
    """Looks at folders, files and archives; returns in sentences what must not be in them."""

    def __call__(self, *places: Path) -> str:
        """Return what was found and what to do; nothing where nothing was."""


class LeakScan:
    """The leak scan of one property, for all its readers."""

    def __init__(self, inventory: Inventory) -> None:
        self.inventory = inventory

    @cached_property
    def typed(self) -> tuple[TypedValue, ...]:
        """Every value that may be kept from somebody; nobody asks where the owner builds alone."""
        return typed_values(self.inventory)

    def of(self, reader: Reader, view: Plan) -> Scan:
        """Return what looks at all that a reader gets; `view` is the plan of their book."""
        kept = kept_from(self.typed, self.inventory, reader, view)
        search = Search(kept.values)

        def scan(*places: Path) -> str:
            try:
                return _told(search.leaks_in(places, kept.shown))
            except NotReadable as closed:
                return f"it cannot be searched for what this reader may not see: {closed}."

        return scan


def _told(leaks: Sequence[Leak]) -> str:
    """Return in sentences what was found and what to do; nothing where nothing was."""
    if not leaks:
        return ""
    lines = [f'{leak.file} holds "{leak.text}": {leak.told}.' for leak in leaks[:LEAKS_TOLD]]
    more = [f"And {len(leaks) - LEAKS_TOLD} more."] if len(leaks) > LEAKS_TOLD else []
    return "\n".join(
        [
            "it holds what this reader may not see, so it was not put in its place:",
            *lines,
            *more,
            "No page should print that. Until the program is mended, say it in other words where "
            "it is typed, or leave it out, and build again. An older book of theirs stays as it "
            "was.",
        ]
    )

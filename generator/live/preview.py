"""Makes a book anew: first the page that is being looked at, then all others."""

import shutil
import time
from collections.abc import Callable
from pathlib import Path

import click

from generator.book.make import Part, owners_files, put_together, tasks_of
from generator.book.model import Book, Page
from generator.dataclass import dataclass
from generator.inventory.load import Loaded
from generator.live.told import Told
from generator.plan.model.plan import Plan
from generator.site.build import build
from generator.site.put import published
from generator.site.standing import Standing, shape_of


@dataclass(frozen=True, slots=True)
class Renewed:
    """What came of one round: pages put anew, seconds to the page looked at and to the last."""

    pages: int
    looked_at_s: float | None
    whole_s: float


class Preview:
    """The pages of one reader in a folder of their own, which is this program's alone."""

    def __init__(
        self,
        read: Callable[[], Loaded],
        planned: Callable[[Loaded], Plan],
        folder: Path,
        told: Told,
    ) -> None:
        self.read, self.planned, self.folder, self.told = read, planned, folder, told
        self.standing: Standing | None = None
        self.site = folder
        self.rounds = 0
        # the files of the pages that each task made last
        self.made: dict[tuple[str, ...], tuple[str, ...]] = {}

    def renew(self, is_stale: Callable[[], bool]) -> Renewed | None:
        """Make the book anew from the files as they are now.

        None where they have a fault, which is told, or changed again meanwhile: the last good pages
        stay.
        """
        begun = time.monotonic()
        plan = self._plan()
        if plan is None:
            return None
        tasks, parts = tasks_of(plan), dict[tuple[str, ...], Part]()
        looked_at = self.told.looked_at
        first = [task for task in tasks if looked_at in self.made.get(task.key, ())]
        for task in first:
            parts[task.key] = task.make()
        early = self._put([entry.page for task in first for entry in parts[task.key][0]])
        looked_at_s = time.monotonic() - begun if first else None
        for task in tasks:
            if is_stale():
                return None
            if task.key not in parts:
                parts[task.key] = task.make()
        made = [parts[task.key] for task in tasks]
        count = early + self._stand(put_together(plan, made, owners_files(plan)()))
        self.made = {task.key: _files_of(parts[task.key]) for task in tasks}
        return Renewed(count, looked_at_s, time.monotonic() - begun)

    def _plan(self) -> Plan | None:
        try:
            loaded = self.read()
            if loaded.inventory is None:
                self.told.new_faults(tuple(map(str, loaded.problems)))
                return None
            return self.planned(loaded)
        except click.ClickException as trouble:
            # a word of the command that cannot be meant is no fault that a save would mend
            if self.standing is None and isinstance(trouble, click.UsageError):
                raise
            self.told.new_faults((trouble.format_message(),))
            return None

    def _put(self, pages: list[Page]) -> int:
        """Put pages anew whose place among the others is as it was; return how many differ."""
        if self.standing is None:
            return 0
        known = self.standing.pages
        same = [page for page in pages if known.get(page.address) == (page.title, page.group)]
        new = [published(page.address) for page in same if self.standing.put(self.site, page)]
        if new:
            self.told.new_pages(new)
        return len(new)

    def _stand(self, book: Book) -> int:
        """Have a whole book stand, and return how many pages of it are new."""
        if self.standing is None or self.standing.shape != shape_of(book):
            return self._stand_anew(book)
        count = self._put(list(book.pages))
        self.told.new_faults(self.standing.complete(self.site, book))
        return count

    def _stand_anew(self, book: Book) -> int:
        self.rounds += 1
        old, new = self.site, self.folder / f"site-{self.rounds}"
        problems, standing = build(book, self.folder / f"build-{self.rounds}", new)
        shutil.rmtree(self.folder / f"build-{self.rounds}", ignore_errors=True)
        if standing is None:
            shutil.rmtree(new, ignore_errors=True)
            self.told.new_faults(problems)
            return 0
        self.standing, self.site = standing, new
        self.told.new_site(new)
        self.told.new_faults(problems)
        if old != self.folder:
            shutil.rmtree(old, ignore_errors=True)
        return len(book.pages)


def _files_of(part: Part) -> tuple[str, ...]:
    return tuple(published(entry.page.address) for entry in part[0])

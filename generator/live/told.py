"""What the maker of pages tells the server, and the server the maker, between threads."""

import threading
from collections.abc import Iterable
from pathlib import Path

from generator.dataclass import dataclass


@dataclass(frozen=True, slots=True)
class News:
    """What an open page is told: how new the book is, whether the page is, and what is wrong."""

    version: int
    again: bool
    faults: tuple[str, ...]


class Told:
    """The state of a preview. Each change is a version; pages know which one changed them."""

    def __init__(self) -> None:
        self._changed = threading.Condition()
        self._site: Path | None = None
        self._version = 0
        self._pages: dict[str, int] = {}
        # the version since which all pages are new, and that of the faults
        self._all, self._faulted = 0, 0
        self._faults: tuple[str, ...] = ()
        self._looked_at = ""

    @property
    def version(self) -> int:
        """How new the book is."""
        with self._changed:
            return self._version

    @property
    def site(self) -> Path | None:
        """The folder of the pages, once there is one."""
        with self._changed:
            return self._site

    @property
    def faults(self) -> tuple[str, ...]:
        """What keeps the pages from being made anew."""
        with self._changed:
            return self._faults

    @property
    def looked_at(self) -> str:
        """The page that was asked for last."""
        with self._changed:
            return self._looked_at

    def look_at(self, page: str) -> None:
        """Note which page somebody has open."""
        with self._changed:
            self._looked_at = page

    def new_site(self, site: Path) -> None:
        """Tell that all pages stand anew, in a folder."""
        with self._changed:
            self._version += 1
            self._site, self._all = site, self._version
            self._changed.notify_all()

    def new_pages(self, pages: Iterable[str]) -> None:
        """Tell which pages were put anew."""
        with self._changed:
            self._version += 1
            self._pages |= dict.fromkeys(pages, self._version)
            self._changed.notify_all()

    def new_faults(self, faults: tuple[str, ...]) -> None:
        """Tell what keeps the pages from being made, or that nothing does any more."""
        with self._changed:
            if faults != self._faults:
                self._version += 1
                self._faults, self._faulted = faults, self._version
                self._changed.notify_all()

    def wait(self, version: int, page: str, seconds: float) -> News:
        """Return what is new to a page of a version, at once or as soon as something is."""
        with self._changed:
            self._looked_at = page
            self._changed.wait_for(lambda: self._is_news(version, page), seconds)
            return News(self._version, self._again(version, page), self._faults)

    def _is_news(self, version: int, page: str) -> bool:
        return self._again(version, page) or self._faulted > version

    def _again(self, version: int, page: str) -> bool:
        return max(self._all, self._pages.get(page, 0)) > version

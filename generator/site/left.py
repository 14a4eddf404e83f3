"""Names folders of an earlier build whose readers are gone; changes and deletes nothing."""

from collections.abc import Collection
from pathlib import Path

from generator.book.model import LeftFolder
from generator.site.exchange import SITE_MARK, marked_day


def left_folders(books: Path, readers: Collection[str]) -> tuple[LeftFolder, ...]:
    """The folders of ours in `books` that are no reader's any more, by name, with their days.

    A folder is ours by its mark alone; a link is looked at as the folder it leads to.
    """
    try:
        inside = sorted(books.iterdir()) if books.is_dir() else []
    except OSError:
        return ()
    return tuple(
        LeftFolder(one.name, marked_day(one))
        for one in inside
        if one.name not in readers and (one / SITE_MARK).is_file()
    )

"""Names folders of an earlier build whose readers are gone; changes and deletes nothing."""

from collections.abc import Collection
from pathlib import Path

from generator.book.model import LeftFolder
from generator.site.mark import mark_of


def left_folders(books: Path, readers: Collection[str]) -> tuple[LeftFolder, ...]:
    """The folders of ours in `books` that are no reader's any more, by name, with their days.

    A folder is ours by its mark alone; a link is looked at as the folder it leads to.
    """
    try:
        inside = sorted(books.iterdir()) if books.is_dir() else []
    except OSError:
        return ()
    marks = {folder.name: mark_of(folder) for folder in inside if folder.name not in readers}
    return tuple(LeftFolder(name, mark.as_of) for name, mark in marks.items() if mark is not None)

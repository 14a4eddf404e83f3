"""Names folders of an earlier build whose readers are gone; changes and deletes nothing."""

from collections.abc import Collection
from pathlib import Path

from generator.book.model import LeftFolder
from generator.site.mark import marks_in


def left_folders(books: Path, readers: Collection[str]) -> tuple[LeftFolder, ...]:
    """The folders of ours in `books` that are no reader's any more, by name, with their days.

    A folder is ours by its mark alone; a link is looked at as the folder it leads to.
    """
    marks = marks_in(books)
    return tuple(LeftFolder(name, marks[name].as_of) for name in marks if name not in readers)

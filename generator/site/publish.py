"""Takes a book all the way to a site in its folder, or leaves the folder as it was."""

from pathlib import Path

from generator.book.model import Book
from generator.site.build import build
from generator.site.exchange import SITE_MARK, exchange, mark_site, workshop
from generator.site.links import check_links
from generator.site.stage import stage


class Refused(Exception):  # noqa: N818 - a refusal, not an error
    """The target must not be written to; the message is one sentence for the user."""


def publish(book: Book, target: Path, property_folder: Path | None = None) -> tuple[str, ...]:
    """Builds the site of `book` and puts it where `target` is, whole; returns the problems.

    With problems, and when killed at any moment, what was at `target` still stands. Raises Refused
    where `target` holds something that is not ours, cannot be made, or is the property folder,
    inside it or around it.
    """
    target = target.absolute()
    _refuse_unfit(target, property_folder)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with workshop(target) as folder:
            # A build that ended between two renames has just been repaired: look again.
            _refuse_unfit(target, property_folder)
            problems = _made(book, folder)
            if not problems:
                exchange(folder / "site", target, folder / "old")
            return problems
    except (PermissionError, FileExistsError, NotADirectoryError) as error:
        raise Refused(f"{target} cannot be written: {error.strerror}.") from error


def _made(book: Book, folder: Path) -> tuple[str, ...]:
    site = folder / "site"
    problems = build(stage(book, folder / "tree"), site)
    if problems:
        return problems
    problems = check_links(site, {page.address: page.safety_keys for page in book.pages})
    mark_site(site, book.as_of)
    return problems


def _refuse_unfit(target: Path, property_folder: Path | None) -> None:
    if target.is_symlink():
        raise Refused(f"{target} is a link to another place; give the place itself.")
    if property_folder is not None:
        place, ground = target.resolve(), property_folder.resolve()
        if place == ground or ground in place.parents:
            raise Refused(f"{target} lies in the property folder, which a build never changes.")
        if place in ground.parents:
            raise Refused(f"{target} holds the property folder and would be replaced as a whole.")
    if not target.exists():
        return
    if not target.is_dir():
        raise Refused(f"{target} is a file, not a folder.")
    if any(target.iterdir()) and not (target / SITE_MARK).is_file():
        raise Refused(f"{target} holds something else; give an empty or a new folder.")

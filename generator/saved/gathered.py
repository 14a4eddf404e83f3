"""What of a property folder is saved, and what is left out and why."""

import os
from collections.abc import Iterator
from pathlib import Path

from generator.dataclass import dataclass
from generator.inventory.files import WHAT_WORDS, What, is_link, what_is
from generator.inventory.folder import is_left_by_an_editor
from generator.saved.names import MOST_SAVED, name_fault
from generator.site.mark import SITE_MARK

CACHES = ("__pycache__", "node_modules")


class NotSaved(Exception):  # noqa: N818 - a refusal, not an error
    """The folder cannot be saved, or an archive cannot be put beside; a sentence says why."""


@dataclass(frozen=True, slots=True)
class ToSave:
    """Paths from the folder, with forward slashes: those saved; those left out, each with why."""

    names: tuple[str, ...]
    left_out: tuple[tuple[str, str], ...]


def gathered(folder: Path) -> ToSave:
    """Return what lies in a property folder and is saved. Raises NotSaved where some cannot be."""
    names: list[str] = []
    left_out: list[tuple[str, str]] = []
    for name, why_not in _everything(folder):
        if why_not is not None:
            left_out.append((name, why_not))
            continue
        fault = name_fault(name)
        if fault is not None:
            raise NotSaved(f"{name} {fault}: give it another name, and save again.")
        names.append(name)
    folded: dict[str, str] = {}
    for name in names:
        if folded.setdefault(name.casefold(), name) != name:
            raise NotSaved(
                f"{name} and {folded[name.casefold()]} are one name on many systems: give one of "
                "them another, and save again."
            )
    if len(names) > MOST_SAVED:
        raise NotSaved(f"There are {len(names)} files, and at most {MOST_SAVED} are saved.")
    return ToSave(tuple(names), tuple(left_out))


def _everything(folder: Path, above: str = "") -> Iterator[tuple[str, str | None]]:
    """Yield every file by its name, with why it is left out; a folder left out stands for all."""
    with os.scandir(folder) as entries:
        found = sorted(entry.name for entry in entries)
    for last in found:
        path, name = folder / last, f"{above}{last}"
        what = what_is(path)
        shown = f"{name}/" if what == "folder" else name
        why_not = _why_left_out(path, what, deep=bool(above))
        if why_not is not None:
            yield shown, why_not
        elif what == "folder":
            yield from _everything(path, f"{name}/")
        else:
            yield name, None


def _why_left_out(path: Path, what: What, *, deep: bool) -> str | None:
    if path.name.startswith("."):
        return "is hidden"
    if what == "closed":
        raise NotSaved(f"{path} cannot be opened: nothing was saved.")
    if what == "folder":
        if path.name in CACHES:
            return "is made anew by itself"
        if (path / SITE_MARK).is_file():
            return "is a built book, which a build makes anew"
        # deeper it could lead round in a circle
        return "is a link to a folder" if deep and is_link(path) else None
    if what != "file":
        return WHAT_WORDS[what]
    return "was left by an editor" if is_left_by_an_editor(path.name) else None

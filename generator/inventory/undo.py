"""Takes an entry of the log back by another that corrects it; both stay.

An entry is taken back by one that says `not_done`. A correction is taken back by one that says
again what the corrected entry said, so that what it had replaced is in force once more: taking back
what took an entry back brings the entry back.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from generator.inventory.entry import NotMeantError
from generator.inventory.files import content_of
from generator.inventory.log import LogEntry
from generator.inventory.problems import listed, meant_or_listed, shown_value
from generator.inventory.record import LOG, Asks, Recorded, write_entry
from generator.inventory.schema import Inventory
from generator.inventory.yaml_positions import read_document
from generator.inventory.yaml_text import MOST_BYTES

# What an entry has of its own, and one that says the same again has not.
_OF_ONE_ENTRY = ("id", "corrects")
TAKEN_BACK = "Taken back."


def entry_to_undo(folder: Path, inventory: Inventory, named: str | None) -> LogEntry:
    """Return the entry that is taken back: the one named, else the last that was recorded.

    The last is told by the time of its file. Raises NotMeantError where there is none, where it
    cannot be told, or where a correction took its place already.
    """
    entry = _named(inventory, named) if named is not None else _last(folder, inventory)
    for later in inventory.entries:
        if later.corrects == entry.id:
            raise NotMeantError(
                f"entry {entry.id} counts no longer: {later.id} corrects it. Take that one back "
                f"with --entry {later.id}"
            )
    return entry


def undo_entry(folder: Path, identity: str, asks: Asks) -> Recorded:
    """Write the entry that takes another back, or return the faults it would make."""

    def correction(inventory: Inventory) -> dict[str, Any]:
        return _taking_back(folder, inventory, entry_to_undo(folder, inventory, identity))

    return write_entry(folder, correction, asks, yes=True)


def _named(inventory: Inventory, identity: str) -> LogEntry:
    by_id = {entry.id: entry for entry in inventory.entries}
    if identity not in by_id:
        near = meant_or_listed(identity, sorted(by_id))
        raise NotMeantError(f"there is no entry {shown_value(identity)}; {near}")
    return by_id[identity]


def _last(folder: Path, inventory: Inventory) -> LogEntry:
    # a file of its own that goes by its id is what is written here
    recorded = [entry for entry in inventory.entries if entry.where.file == _file_of(entry.id)]
    if not recorded:
        raise NotMeantError(
            "no entry was written by handbook record; take one that you typed back by --entry"
        )
    times = {entry.id: (folder / _file_of(entry.id)).stat().st_mtime_ns for entry in recorded}
    latest = max(times.values())
    last = [entry for entry in recorded if times[entry.id] == latest]
    if len(last) > 1:
        names = listed([entry.id for entry in last], "and")
        raise NotMeantError(
            f"it cannot be told which entry was written last: {names} have files of the same time, "
            "as where a folder was copied. Say which one with --entry"
        )
    return last[0]


def _file_of(identity: str) -> str:
    return f"{LOG}/{identity}.yaml"


def _taking_back(folder: Path, inventory: Inventory, entry: LogEntry) -> dict[str, Any]:
    """Return the keys of the entry that takes one back, of the same day, so that it counts then."""
    if entry.corrects is None:
        day = entry.done_on.isoformat()
        return {"done_on": day, "corrects": entry.id, "not_done": True, "note": TAKEN_BACK}
    replaced = _as_typed(folder, _named(inventory, entry.corrects))
    again = {key: value for key, value in replaced.items() if key not in _OF_ONE_ENTRY}
    return {"done_on": again.pop("done_on"), "corrects": entry.id, **again}


def _as_typed(folder: Path, entry: LogEntry) -> dict[str, Any]:
    """Return what was typed for an entry, in its own keys and units."""
    name = entry.where.file
    content = content_of(folder / name, MOST_BYTES)
    document = read_document(content, name, frozenset())[0] if isinstance(content, bytes) else None
    data: Any = document.data if document is not None else {"entries": []}
    return next(dict(typed) for typed in data["entries"] if typed["id"] == entry.id)

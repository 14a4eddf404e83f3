"""Writes down one sit: checked together with the whole folder before a byte of it is written."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.entry import NotMeantError, file_of_one, free_id, written_day
from generator.inventory.load import load_inventory
from generator.inventory.plain_values import US
from generator.inventory.record import put_new
from generator.inventory.write import one_writer

_KEPT_IN = "sits"
# Keys of a sit that an option of the command stands for.
_OPTIONS = {
    "sits_on": "--on", "stand": "--sit", "from_time": "--from", "until_time": "--until",
    "person": "--by", "walk_in": "--walk-in", "walk_out": "--walk-out", "note": "--note",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class TypedSit:
    """What was typed for one sit, as text."""

    sits_on: str
    stand: str
    from_time: str | None = None
    until_time: str | None = None
    person: str | None = None
    walk_in: str | None = None
    walk_out: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class RecordedSit:
    """The name of the file of a sit that was written, and what it says; or faults in words."""

    name: str
    told: str
    faults: tuple[str, ...] = ()


def record_sit(folder: Path, typed: TypedSit) -> RecordedSit:
    """Write what was typed as one new file in the folder of sits, or return its faults.

    Raises NotMeantError where hours are left out, and OSError where the folder cannot be read or
    written.
    """
    if typed.from_time is None or typed.until_time is None:
        raise NotMeantError(
            "--sit needs --from and --until: from leaving the gate until back at it"
        )
    with one_writer(folder):
        before = load_inventory(folder)
        if before.inventory is None:
            return RecordedSit("", "", tuple(map(str, before.problems)))
        data = _keys(typed, us_dates=before.inventory.property.dates == US)

        def made(taken: set[str]) -> tuple[str, bytes]:
            identity = free_id(f"{data['sits_on']}-{typed.stand}", taken)
            return identity, file_of_one(_KEPT_IN, identity, data)

        ids = {sit.id for sit in before.inventory.sits}
        put = put_new(folder, _KEPT_IN, ids, made, _OPTIONS, lambda _: ())
        if put.inventory is None:
            return RecordedSit("", "", put.faults)
        stands = {stand.id: stand.name for stand in put.inventory.stands}
        hours = f"{typed.from_time} to {typed.until_time}"
        return RecordedSit(put.name, f"A sit at {stands[typed.stand]}, {data['sits_on']}, {hours}.")


def _keys(typed: TypedSit, *, us_dates: bool) -> dict[str, Any]:
    found = {name: getattr(typed, name) for name in _OPTIONS}
    found["sits_on"] = written_day(typed.sits_on, us_dates)
    return {name: value for name, value in found.items() if value is not None}

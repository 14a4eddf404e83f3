"""The commands that write into the log: one new entry, and one that takes another back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from generator.said import FolderTrouble, asked_words, how_many, loaded_from, say_faults
from generator.typed import HERE, PropertyFolder, as_text, safe, told, why

if TYPE_CHECKING:
    from generator.inventory.log import LogEntry
    from generator.inventory.record import Recorded
    from generator.inventory.schema import Inventory


@click.command("record")
@click.argument("folder", type=PropertyFolder(), default=HERE)
@click.option(
    "--on", "done_on", required=True, metavar="DAY", help="Day it was done, such as 2027-03-14."
)
@click.option("--job", metavar="JOB", help="Job it was, as place/season/step.")
@click.option("--planting", metavar="ID", help="Planting it was done on, with --step.")
@click.option("--step", metavar="ID", help="Step of its step plan, with --planting.")
@click.option("--finished", is_flag=True, help="Nothing of the job is left to do.")
@click.option("--answer", type=click.Choice(["yes", "no"]), help="Answer to what the step asks.")
@click.option("--not-doing", metavar="WHY", help="The job will not be done, and why.")
@click.option("--seen", multiple=True, metavar="MARKER", help="Season marker seen that day.")
@click.option("--area", metavar="AMOUNT", help="Ground it was done on, such as 0.5_ac.")
@click.option("--by", metavar="WHO", help="Who did it.")
@click.option("--used", multiple=True, metavar="ITEM=AMOUNT", help="Used, such as brew=32_fl_oz.")
@click.option("--bought", multiple=True, metavar="ITEM=AMOUNT", help="Bought, such as brew=2_gal.")
@click.option("--cost", "costs", multiple=True, metavar="DOLLARS", help="Paid for each --bought.")
@click.option("--recorded-on", metavar="DAY", help="Day it is written down.")
@click.option("--corrects", metavar="ENTRY", help="Earlier entry that this one replaces.")
@click.option("--note", metavar="WORDS", help="A note of your own.")
@click.option("--sit", metavar="STAND", help="A sit to come: the stand somebody sits at.")
@click.option("--from", "from_time", metavar="TIME", help="Of a sit: leaves the gate, like 15:00.")
@click.option("--until", "until_time", metavar="TIME", help="Of a sit: back at the gate.")
@click.option("--walk-in", metavar="WALK", help="Of a sit: the walk they go in by.")
@click.option("--walk-out", metavar="WALK", help="Of a sit: the walk they come out by.")
@click.option(
    "--set", "settings", multiple=True, metavar="NAME=VALUE",
    help="Anything else of an entry, such as sprayed.wind_mph=6.",
)  # fmt: skip
@click.option("--yes", is_flag=True, help="Write it though it says what can hardly be.")
def record_command(folder: Path, yes: bool, **typed: Any) -> None:
    """Write one new entry into the log of a property folder.

    The entry gets a file of its own in the folder log; no file that is there is changed, and
    nothing is written if the entry has a fault. A season marker that was --seen moves the jobs of
    its season that wait for it, and those that moved are named. What cannot be, or hardly, is
    asked, such as more used than was there, and is written only with --yes. --seen, --used,
    --bought, --cost and --set may stand more than once.

    With --sit it writes who hunts where, into the folder sits: --on is the day, --by who it is.
    """
    sit = {name: typed.pop(name) for name in SIT_ALONE}
    if any(sit.values()):
        _record_sit(folder, sit, typed)
        return
    from generator.inventory.entry import Typed
    from generator.inventory.record import record_entry

    with _refusals_told(folder):
        given = Typed(**{name: as_text(value) for name, value in typed.items()})
        recorded = record_entry(folder, given, asked_words, yes=yes)
    _say_recorded(folder, recorded)


# What is said of a sit alone; beside it stand these of the others.
SIT_ALONE = ("sit", "from_time", "until_time", "walk_in", "walk_out")
OF_A_SIT = ("done_on", "by", "note")


def _record_sit(folder: Path, sit: Mapping[str, str | None], typed: Mapping[str, Any]) -> None:
    """Write down who sits where, or end with what keeps it from being written."""
    from generator.inventory.record_sit import TypedSit, record_sit

    beside = [name for name, value in typed.items() if value and name not in OF_A_SIT]
    if sit["sit"] is None or beside:
        raise click.UsageError(
            "a sit is --sit with --on, --from, --until, --by, --walk-in, --walk-out and --note, "
            "and none of the other options"
        )
    on, by, note = (as_text(typed[name]) for name in OF_A_SIT)
    stand, *rest = (as_text(sit[name]) for name in SIT_ALONE)
    assert on is not None
    assert stand is not None
    start, end, walk_in, walk_out = rest
    with _refusals_told(folder):
        given = TypedSit(on, stand, start, end, by, walk_in, walk_out, note)
        recorded = record_sit(folder, given)
    for fault in recorded.faults:
        click.echo(safe(fault), err=True)
    if recorded.faults:
        raise FolderTrouble(f"{how_many(len(recorded.faults), 'fault')}. Nothing was written.")
    click.echo(told(folder / recorded.name))
    click.echo(safe(recorded.told))


@click.command("undo")
@click.argument("folder", type=PropertyFolder(), default=HERE)
@click.option("--entry", metavar="ENTRY", help="Take this entry back, and not the last one.")
@click.option("--yes", is_flag=True, help="Do not ask.")
def undo_command(folder: Path, entry: str | None, yes: bool) -> None:
    """Take back the last entry that `handbook record` wrote.

    It stays in the log, and a new entry corrects it, so that it counts as not done. Where it was
    itself a correction, what it had replaced counts again: to undo an undo brings the entry back.
    """
    from generator.inventory.record import entry_told
    from generator.inventory.undo import entry_to_undo, undo_entry

    loaded = loaded_from(folder)
    say_faults(loaded, "Nothing was taken back.")
    assert loaded.inventory is not None
    with _refusals_told(folder):
        last = entry_to_undo(folder, loaded.inventory, entry)
        says = entry_told(last, loaded.inventory)
        click.echo(safe(f"Entry {last.id} of {last.done_on} says: {says}."))
        if last.corrects is not None:
            click.echo(safe(f"It corrects entry {last.corrects}, which then counts again."))
        if not yes and not click.confirm("Take it back? Both stay in the log"):
            click.echo("Nothing was written.")
            return
        recorded = undo_entry(folder, last.id, asked_words)
    _say_recorded(folder, recorded)


@contextmanager
def _refusals_told(folder: Path) -> Iterator[None]:
    """Turn what cannot be meant, and what the system refuses, into sentences."""
    from generator.inventory.entry import NotMeantError

    try:
        yield
    except NotMeantError as wrong:
        raise click.UsageError(safe(str(wrong))) from None
    except OSError as error:
        said = f"{told(folder)} takes no entry: {why(error)}. Nothing was written."
        raise FolderTrouble(said) from None


def _say_recorded(folder: Path, recorded: Recorded) -> None:
    """Print what came of an entry, or end with what kept it from being written."""
    for fault in recorded.faults:
        click.echo(safe(fault), err=True)
    for asked in recorded.asked:
        click.echo(safe(asked), err=True)
    if recorded.asked and recorded.entry is None:
        raise FolderTrouble(
            "Nothing was written. The files have no fault; this can hardly be. Give the command as "
            "it was, or the same with --yes where it was so."
        )
    if recorded.entry is None or recorded.inventory is None:
        raise FolderTrouble(f"{how_many(len(recorded.faults), 'fault')}. Nothing was written.")
    click.echo(told(folder / recorded.name))
    click.echo(safe(recorded.told()))
    for moved in _moved(recorded.inventory, recorded.entry):
        click.echo(safe(moved))


def _moved(inventory: Inventory, entry: LogEntry) -> Iterator[str]:
    """Yield which jobs an entry moved, that says a season marker was seen or takes that back."""
    # planning is heavy to load, and most entries say nothing of a marker
    if not any(one.markers_seen for one in inventory.entries):
        return
    from generator.plan.views.moved import jobs_moved

    moved = jobs_moved(inventory, entry)
    if entry.markers_seen and not moved:
        yield "No job of its season moved."
    yield from (one.told() for one in moved)

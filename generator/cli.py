"""The commands. The only part that prints; each command imports what it needs when it runs."""

from __future__ import annotations

import datetime
import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from generator import __version__

if TYPE_CHECKING:
    from generator.book.model import LeftFolder
    from generator.inventory.load import Loaded
    from generator.inventory.schema import Inventory, Reader
    from generator.plan.model import Plan

FOLDER = click.Path(exists=True, file_okay=False, path_type=Path)
TARGET = click.Path(file_okay=False, path_type=Path)
DAY = click.DateTime(["%Y-%m-%d"])
OWNER = "owner"


class Failed(click.ClickException):
    """Something is wrong with the folder; the sentence says what to do. Exit code 1."""

    exit_code = 1


class _Season(click.ParamType[int]):
    """A year from 1990 to 2100; the refusal says so in words."""

    name = "year"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> int:
        """Return the year that was typed; raises BadParameter where it is none."""
        if not value.isdecimal() or not 1990 <= int(value) <= 2100:
            self.fail(f"{_safe(value)} is not a year from 1990 to 2100.", param, ctx)
        return int(value)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="%(version)s")
def main() -> None:
    """Make a habitat handbook from a folder of plain text files.

    Start with `handbook new my-land`, type what you know, then `handbook build my-land`.
    Exit codes: 0 done, 1 something in the folder is wrong, 2 the command was used wrongly.
    """


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
def new(folder: Path) -> None:
    """Begin a property folder with a small example to type over."""
    import json

    from generator.inventory.json_schema import file_schemas
    from generator.lookup import shipped

    files = {one.name: one.read_bytes() for one in sorted(shipped("starter").glob("*.yaml"))}
    for name, schema in file_schemas().items():
        files[f"schema/{name}.json"] = json.dumps(schema, indent=1).encode()
    _write_new(folder, files)
    click.echo(f"{_told(folder)} is ready. Open property.yaml in it and type over the example.")
    click.echo(f"Then: handbook build {_told(folder)}")


@main.command()
@click.argument("folder", type=FOLDER)
@click.option("--strict", is_flag=True, help="Plan too, and end with 1 if there is a stop.")
def check(folder: Path, strict: bool) -> None:
    """Read a property folder and name every fault in it."""
    loaded = _load(folder)
    _say_faults(loaded)
    if not strict:
        click.echo("No faults.")
        return
    plan = _plan(loaded, None, None)
    stops = [one for one in plan.findings if one.severity == "stop"]
    for one in plan.findings:
        click.echo(_safe(f"{one.severity} {one.code} {one.subject}: {one.words} {one.cure}"))
    click.echo(f"No faults. {_counted(len(stops), 'stop')}.")
    if stops:
        raise click.exceptions.Exit(1)


@main.command()
@click.argument("folder", type=FOLDER)
@click.option("--for", "for_reader", metavar="READER", help="Build for one reader only.")
@click.option("--season", type=_Season(), metavar="YEAR", help="Season, named by its spring.")
@click.option(
    "--as-of", type=DAY, metavar="DAY", help="Day the plan is made for, such as 2027-01-15."
)
@click.option("--out", type=TARGET, metavar="FOLDER", help="Where the books go.")
def build(
    folder: Path,
    for_reader: str | None,
    season: int | None,
    as_of: datetime.datetime | None,
    out: Path | None,
) -> None:
    """Build the handbook: one folder of pages for the owner and one for each other reader.

    They go beside the property folder, into NAME-handbook/READER, unless --out says where.
    """
    from generator.book.make import make_book
    from generator.plan.readers import seen_by
    from generator.site.left import left_folders
    from generator.site.publish import Refused, publish

    progress = _Progress()
    loaded = _load(folder)
    _say_faults(loaded)
    plan = _plan(loaded, season, as_of.date() if as_of else None)
    assert loaded.inventory is not None
    target = out or folder.resolve().parent / f"{folder.resolve().name}-handbook"
    left = left_folders(target, [OWNER, *(one.id for one in loaded.inventory.readers)])
    for name, reader in _readers(loaded.inventory, for_reader):
        progress.say(f"Writing the book for {name} ...")
        book = make_book(plan, left) if reader is None else make_book(seen_by(plan, reader))
        progress.say(f"Building {_counted(len(book.pages), 'page')} for {name} ...")
        try:
            problems = publish(book, target / name, property_folder=folder)
        except Refused as refused:
            raise click.UsageError(_safe(str(refused))) from None
        if problems:
            raise Failed("The pages do not hold together:\n" + "\n".join(map(_safe, problems)))
        click.echo(f"{name}: {_safe(str(target / name / 'index.html'))}")
        if reader is None:
            _say_stops(plan)
    for one in left:
        _say_left(target, one)


@main.command()
@click.argument("folder", type=FOLDER)
@click.argument("number", required=False)
@click.option("--season", type=_Season(), metavar="YEAR", help="Season, named by its spring.")
def explain(folder: Path, number: str | None, season: int | None) -> None:
    """Show how a number was worked out, or list the numbers there are."""
    from generator.plan.numbers import explained, numbers_of

    loaded = _load(folder)
    _say_faults(loaded)
    numbers = numbers_of(_plan(loaded, season, None))
    if number is None:
        for name in sorted(numbers):
            click.echo(name)
        return
    if number not in numbers:
        from generator.inventory.problems import nearest

        near = nearest(number, numbers)
        hint = f" Did you mean {near}?" if near else " Without a name, the command lists them."
        raise click.UsageError(f"There is no number {_safe(number)}.{hint}")
    for line in explained(numbers[number]):
        click.echo(_safe(line))


@main.command()
@click.argument("folder", type=FOLDER)
@click.option(
    "--on", "done_on", required=True, metavar="DAY", help="Day it was done, such as 2027-03-14."
)
@click.option("--job", metavar="JOB", help="Job it was, as place/season/step.")
@click.option("--planting", metavar="ID", help="Planting it was done on, with --step.")
@click.option("--step", metavar="ID", help="Step of its step plan, with --planting.")
@click.option("--finished", is_flag=True, help="Nothing of the job is left to do.")
@click.option("--answer", type=click.Choice(["yes", "no"]), help="Answer to what the step asks.")
@click.option("--area", metavar="AMOUNT", help="Ground it was done on, such as 0.5_ac.")
@click.option("--by", metavar="WHO", help="Who did it.")
@click.option("--used", multiple=True, metavar="ITEM=AMOUNT", help="Used, such as brew=32_fl_oz.")
@click.option("--bought", multiple=True, metavar="ITEM=AMOUNT", help="Bought, such as brew=2_gal.")
@click.option("--cost", "costs", multiple=True, metavar="DOLLARS", help="Paid for each --bought.")
@click.option("--recorded-on", metavar="DAY", help="Day it is written down.")
@click.option("--corrects", metavar="ENTRY", help="Earlier entry that this one replaces.")
@click.option("--note", metavar="WORDS", help="A note of your own.")
@click.option(
    "--set", "settings", multiple=True, metavar="NAME=VALUE",
    help="Anything else of an entry, such as sprayed.wind_mph=6.",
)  # fmt: skip
@click.option("--yes", is_flag=True, help="Write it though it says what can hardly be.")
def record(folder: Path, yes: bool, **typed: Any) -> None:
    """Write one new entry into the log of a property folder.

    The entry gets a file of its own in the folder log; no file that is there is changed, and
    nothing is written if the entry has a fault. What cannot be, or hardly, is asked, such as more
    used than was there, and is written only with --yes. --used, --bought, --cost and --set may
    stand more than once.
    """
    from generator.inventory.entry import NotMeantError, Typed
    from generator.inventory.record import record_entry

    try:
        recorded = record_entry(folder, Typed(**typed), _asked_by, yes=yes)
    except NotMeantError as wrong:
        raise click.UsageError(_safe(str(wrong))) from None
    except OSError as error:
        raise Failed(f"{_safe(str(error.filename))} cannot be used: {error.strerror}.") from None
    for problem in recorded.problems:
        click.echo(_safe(str(problem)), err=True)
    for asked in recorded.asked:
        click.echo(_safe(asked), err=True)
    if recorded.asked and recorded.entry is None:
        raise Failed(
            "Nothing was written. The files have no fault; this can hardly be. Give the command as "
            "it was, or the same with --yes where it was so."
        )
    if recorded.entry is None or recorded.inventory is None:
        raise Failed(f"{_counted(len(recorded.problems), 'fault')}. Nothing was written.")
    click.echo(_told(folder / recorded.name))
    click.echo(_safe(recorded.told()))


@main.command()
@click.option("--out", type=TARGET, metavar="FOLDER", help="New folder for the files.")
def schema(out: Path | None) -> None:
    """Print the rules of the files as JSON Schema, or write one file for each with --out."""
    import json

    from generator.inventory.json_schema import file_schemas

    schemas = file_schemas()
    if out is None:
        click.echo(json.dumps(schemas, indent=1))
        return
    files = {f"{name}.json": json.dumps(one, indent=1).encode() for name, one in schemas.items()}
    _write_new(out, files)
    click.echo(f"{_told(out)} holds {_counted(len(files), 'file')}.")


def _write_new(folder: Path, files: dict[str, bytes]) -> None:
    from generator.inventory.write import write_new_folder

    try:
        write_new_folder(folder, files)
    except FileExistsError:
        raise click.UsageError(f"{_told(folder)} is there already; choose a new name.") from None
    except OSError as error:
        raise Failed(f"{_told(folder)} cannot be made: {error.strerror}.") from None


def _asked_by(before: Inventory, after: Inventory) -> tuple[str, ...]:
    from generator.plan.doubts import asked_by

    return tuple(f"asked {one.code} {one.subject}: {one.words} {one.cure}"
                 for one in asked_by(before, after))  # fmt: skip


def _load(folder: Path) -> Loaded:
    from generator.inventory.load import load_inventory

    try:
        return load_inventory(folder)
    except OSError as error:
        raise Failed(f"{_safe(str(error.filename))} cannot be read: {error.strerror}.") from None


def _say_faults(loaded: Loaded) -> None:
    for problem in loaded.problems:
        click.echo(_safe(str(problem)), err=True)
    if loaded.problems:
        raise Failed(f"{_counted(len(loaded.problems), 'fault')}. Nothing was built.")


def _plan(loaded: Loaded, season: int | None, as_of: datetime.date | None) -> Plan:
    from generator.plan.build import make_plan

    assert loaded.inventory is not None
    typed = as_of or loaded.inventory.property.as_of
    day = typed or loaded.last_recorded
    if day is None:
        raise Failed(
            "No day is written down anywhere. Type as_of: in property.yaml, as in "
            "as_of: 2027-01-15, or give --as-of."
        )
    season = season or loaded.inventory.property.season
    return make_plan(loaded.inventory, season, day, as_of_typed=typed is not None)


def _readers(inventory: Inventory, wanted: str | None) -> list[tuple[str, Reader | None]]:
    everyone: list[tuple[str, Reader | None]] = [(OWNER, None)]
    everyone += [(reader.id, reader) for reader in inventory.readers]
    chosen = [
        (name, reader)
        for name, reader in everyone
        if wanted in (None, name) or (reader is not None and reader.kind == wanted)
    ]
    if not chosen:
        names = ", ".join(name for name, _ in everyone)
        raise click.UsageError(f"There is no reader {_safe(str(wanted))}. Readers: {names}.")
    return chosen


def _say_stops(plan: Plan) -> None:
    stops = sum(one.severity == "stop" for one in plan.findings)
    if stops:
        click.echo(f"{_counted(stops, 'stop')}: see Stops, cautions and notes in the book.")


def _say_left(books: Path, left: LeftFolder) -> None:
    of = f"as of {left.as_of}" if left.as_of is not None else "of a day it does not say"
    click.echo(
        f"{_told(books / left.name)} still lies there, {of}, and no reader of this name is in "
        "readers.yaml. Delete it yourself, and ask for copies you gave away."
    )


def _counted(count: int, word: str) -> str:
    return f"1 {word}" if count == 1 else f"{count} {word}s"


def _safe(text: str) -> str:
    """Return text a terminal shows as text: nothing in it can move the cursor or hide."""
    return "".join(one if one.isprintable() else "\N{REPLACEMENT CHARACTER}" for one in text)


def _told(path: Path) -> str:
    """Return a path as a terminal shows it and takes it back: in quotes where it has a space."""
    text = _safe(str(path))
    return f'"{text}"' if " " in text else text


class _Progress:
    """Says what is being done, once the command has run for more than a second.

    Without a thread: a second thread would keep the pages from being written by two processes.
    """

    def __init__(self) -> None:
        self.begun = time.monotonic()

    def say(self, text: str) -> None:
        """Print the text unless the command has only just begun."""
        if time.monotonic() - self.begun > 1:
            click.echo(text, err=True)

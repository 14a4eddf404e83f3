"""The commands. The only part that prints; each command imports what it needs when it runs."""

from __future__ import annotations

from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator import __version__
from generator.building import build_one, planned, refused_at_once
from generator.import_command import import_command
from generator.log_commands import record_command, undo_command
from generator.pack_command import pack_command
from generator.run_day import day_of_run
from generator.said import (
    Commands,
    FolderTrouble,
    Progress,
    card_notes,
    how_many,
    loaded_from,
    reader_wanted,
    readers_wanted,
    refuse_stripped,
    say_causes,
    say_faults,
    say_findings,
    say_left,
    say_not_built,
    say_stops,
    spell_out,
)
from generator.save_commands import restore_command, save_command
from generator.start_commands import new_command, say_next, schema_command
from generator.typed import (
    AS_OF,
    HERE,
    OWNER,
    DayGiven,
    DayType,
    FolderOrNumber,
    PortTyped,
    PropertyFolder,
    SeasonTyped,
    TargetFolder,
    books_beside,
    is_here,
)
from generator.typed import safe as _safe
from generator.typed import why as _why

if TYPE_CHECKING:
    from generator.inventory.load import Loaded
    from generator.plan.model.plan import Plan

_FOLDER = PropertyFolder()
DAY_TYPED = DayType()


@click.group(
    cls=Commands,
    context_settings={"help_option_names": ["-h", "--help"]},
    invoke_without_command=True,
)
@click.version_option(__version__, message="%(version)s")
@click.pass_context
def main(context: click.Context) -> None:
    """Make a habitat handbook from a folder of plain text files.

    Start with `handbook new my-land`, type what you know, then `handbook build my-land`.
    Exit codes: 0 done, 1 something in the folder is wrong, 2 the command was used wrongly.

    Inside a property folder FOLDER may be left out: `handbook check`. Alone, `handbook` says what
    to do next.
    """
    refuse_stripped()
    spell_out()
    if context.invoked_subcommand is None:
        say_next()


@main.command()
@click.argument("folder", type=_FOLDER, default=HERE)
@click.option("--strict", is_flag=True, help="Plan too, and end with 1 if there is a stop.")
@click.option(
    "--as-of", type=DAY_TYPED, metavar="DAY", help=f"With --strict: {AS_OF[0].lower()}{AS_OF[1:]}"
)
def check(folder: Path, strict: bool, as_of: DayGiven | None) -> None:
    """Read a property folder and name every fault in it."""
    if as_of is not None and not strict:
        raise click.UsageError("--as-of goes with --strict: a plain check plans nothing.")
    loaded = loaded_from(folder)
    say_faults(loaded, "Nothing was planned." if strict else "")
    if not strict:
        say_findings(card_notes(loaded))
        click.echo("No faults.")
        return
    day = day_of_run(loaded, as_of)
    click.echo(day.told)
    plan = planned(loaded, None, day)
    stops = [finding for finding in plan.findings if finding.severity == "stop"]
    say_findings(plan.findings)
    say_causes(plan)
    click.echo(f"No faults. {how_many(len(stops), 'stop')}.")
    if stops:
        raise click.exceptions.Exit(1)


@main.command("build")
@click.argument("folder", type=_FOLDER, default=HERE)
@click.option("--for", "for_reader", metavar="READER", help="Build for one reader only.")
@click.option("--season", type=SeasonTyped(), metavar="YEAR", help="Season, named by its spring.")
@click.option("--as-of", type=DAY_TYPED, metavar="DAY", help=AS_OF)
@click.option("--out", type=TargetFolder(), metavar="FOLDER", help="Where the books go.")
@click.option("--fresh", is_flag=True, help="Do without what earlier runs kept to be faster.")
def build_command(
    folder: Path,
    for_reader: str | None,
    season: int | None,
    as_of: DayGiven | None,
    out: Path | None,
    fresh: bool,
) -> None:
    """Build the handbook, a folder of pages for each reader.

    They go beside the property folder, into NAME-handbook/READER, unless --out says where, and the
    same pages as one file for a phone beside that, READER.html. A reader whose pages cannot be
    built is named at the end; the others are built.
    """
    from generator.beside import working_beside
    from generator.book.exports import NO_ROWS, filed_at_last, owner_files
    from generator.kept import STORE
    from generator.plan.readers.seen_by import seen_by
    from generator.scanning import LeakScan
    from generator.site.left import left_folders
    from generator.site.one_file import file_beside

    STORE.is_used = not fresh
    progress = Progress()
    # as early as can be: its libraries come while the files are read
    is_owners = for_reader in (None, OWNER)
    making = working_beside(owner_files, NO_ROWS) if is_owners else nullcontext(filed_at_last)
    filing = click.get_current_context().with_resource(making)
    loaded = loaded_from(folder)
    say_faults(loaded, "Nothing was built.")
    day = day_of_run(loaded, as_of)
    assert loaded.inventory is not None
    target = out or books_beside(folder)
    readers = readers_wanted(loaded.inventory, for_reader)
    troubles = refused_at_once([target / name for name, _ in readers], folder)
    if len(troubles) == len(readers):
        say_not_built(troubles, readers)
    click.echo(day.told)
    plan = planned(loaded, season, day)
    left = left_folders(target, [OWNER, *(person.id for person in loaded.inventory.readers)])
    scan = LeakScan(loaded.inventory)
    for name, reader in (pair for pair in readers if pair[0] not in troubles):
        try:
            own = plan if reader is None else seen_by(plan, reader)
            look = None if reader is None else scan.of(reader, own)
            build_one(own, left, filing, target / name, folder, progress, look)
        except click.ClickException as trouble:
            troubles[name] = trouble
            continue
        pages = _safe(str(target / name / "index.html"))
        click.echo(f"{name}: {pages}, and for a phone {_safe(file_beside(target / name).name)}")
        if reader is None:
            say_stops(plan)
    for left_folder in left:
        say_left(target, left_folder)
    say_not_built(troubles, readers)


@main.command("serve")
@click.argument("folder", type=_FOLDER, default=HERE)
@click.option("--for", "for_reader", metavar="READER", help="Whose book; yours, unless you say.")
@click.option("--season", type=SeasonTyped(), metavar="YEAR", help="Season, named by its spring.")
@click.option("--as-of", type=DAY_TYPED, metavar="DAY", help=AS_OF)
@click.option("--port", type=PortTyped(), metavar="PORT", help="Port; any that is free.")
@click.option("--no-browser", is_flag=True, help="Do not open the browser.")
def serve_command(
    folder: Path,
    for_reader: str | None,
    season: int | None,
    as_of: DayGiven | None,
    port: int | None,
    no_browser: bool,
) -> None:
    """Show one reader's pages while you type, made anew on each save.

    They stand on this machine alone and nowhere else, until Ctrl-C. A fault is told here and on the
    page, and the last good page stays.
    """
    from generator.inventory.known import Known
    from generator.live.run import run_preview
    from generator.plan.readers.seen_by import seen_by

    known = Known()

    def plan_of_reader(loaded: Loaded) -> Plan:
        assert loaded.inventory is not None
        plan = planned(loaded, season, day_of_run(loaded, as_of))
        _, reader = reader_wanted(loaded.inventory, for_reader or OWNER)
        return plan if reader is None else seen_by(plan, reader)

    try:
        run_preview(
            folder,
            lambda: loaded_from(folder, known),
            plan_of_reader,
            port or 0,
            lambda text: click.echo(_safe(text)),
            opens_browser=not no_browser,
        )
    except OSError as error:
        raise FolderTrouble(f"The pages cannot be shown: {_why(error)}.") from None


@main.command("explain")
@click.argument("folder", type=FolderOrNumber(), required=False)
@click.argument("number", required=False)
@click.option("--season", type=SeasonTyped(), metavar="YEAR", help="Season, named by its spring.")
@click.option("--as-of", type=DAY_TYPED, metavar="DAY", help=AS_OF)
def explain_command(
    folder: str | None,
    number: str | None,
    season: int | None,
    as_of: DayGiven | None,
) -> None:
    """Show how a number was worked out, or list the numbers there are."""
    from generator.book.money_views import view_numbers
    from generator.plan.views.numbers import explained, numbers_of

    if folder is not None and number is None and not Path(folder).is_dir() and is_here():
        folder, number = None, folder  # in a property folder a number may stand alone
    loaded = loaded_from(_FOLDER.convert(folder or HERE, None, click.get_current_context()))
    say_faults(loaded, "Nothing was worked out.")
    day = day_of_run(loaded, as_of)
    click.echo(day.told, err=True)  # beside what is asked for, so that a list of numbers stays one
    plan = planned(loaded, season, day)
    numbers = numbers_of(plan, view_numbers(plan))
    if number is None:
        for name in sorted(numbers):
            click.echo(name)
        return
    if number not in numbers:
        from generator.inventory.meant import nearest

        near = " or ".join(nearest(number, numbers))
        hint = f" Did you mean {near}?" if near else " Without a name, the command lists them."
        raise click.UsageError(f"There is no number {_safe(number)}.{hint}")
    for line in explained(numbers[number]):
        click.echo(_safe(line))


for command in (
    *(new_command, schema_command, pack_command),
    *(record_command, undo_command, save_command, restore_command, import_command),
):
    main.add_command(command)

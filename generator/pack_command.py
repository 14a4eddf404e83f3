"""The command that packs one reader's book into an archive to hand over."""

from __future__ import annotations

from pathlib import Path

import click

from generator.building import build_one, planned
from generator.run_day import day_of_run
from generator.said import Progress, as_troubles, loaded_from, reader_wanted, say_faults, say_stops
from generator.typed import (
    AS_OF,
    HERE,
    OWNER,
    DayGiven,
    DayType,
    PropertyFolder,
    SeasonTyped,
    TargetFolder,
    books_beside,
    safe,
)

_BYTES_IN_MB = 1_000_000


@click.command("pack")
@click.argument("folder", type=PropertyFolder(), default=HERE)
@click.option("--for", "for_reader", required=True, metavar="READER", help="Whose book.")
@click.option("--to", "into", type=TargetFolder(), metavar="FOLDER", help="Folder it goes to.")
@click.option("--season", type=SeasonTyped(), metavar="YEAR", help="Season, named by its spring.")
@click.option("--as-of", type=DayType(), metavar="DAY", help=AS_OF)
def pack_command(
    folder: Path, for_reader: str, into: Path | None, season: int | None, as_of: DayGiven | None
) -> None:
    """Pack one reader's book into an archive to hand over.

    The book is built anew for it, so it is never older than your files; pages that were built
    before stay as they are. The archive has the day of the book in its name. It goes beside the
    property folder, or where --to says.
    """
    from generator.book.exports import filed_at_last
    from generator.plan.readers.seen_by import seen_by
    from generator.scanning import LeakScan
    from generator.site.left import left_folders
    from generator.site.pack import archive_name, pack, refuse_place

    progress = Progress()
    loaded = loaded_from(folder)
    say_faults(loaded, "Nothing was packed.")
    day = day_of_run(loaded, as_of)
    assert loaded.inventory is not None
    name, reader = reader_wanted(loaded.inventory, for_reader)
    place = into or folder.resolve().parent
    target = place / archive_name(name, day.date)
    with as_troubles():
        refuse_place(place, folder)
    click.echo(day.told)
    plan = planned(loaded, season, day)
    names = [OWNER, *(person.id for person in loaded.inventory.readers)]
    left = left_folders(books_beside(folder), names)
    own = plan if reader is None else seen_by(plan, reader)
    look = None if reader is None else LeakScan(loaded.inventory).of(reader, own)

    def build(book: Path) -> None:
        build_one(own, left, filed_at_last, book, folder, progress)

    with as_troubles():
        pack(target, name, build, look)
    megabytes = target.stat().st_size / _BYTES_IN_MB
    click.echo(f"{name}: {safe(str(target))}, {megabytes:.1f} MB")
    if reader is None:
        say_stops(plan)

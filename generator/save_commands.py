"""The commands that keep a property folder: save it as an archive, and put one back beside it."""

from __future__ import annotations

from pathlib import Path

import click

from generator.inventory.files import BYTES_IN_MB
from generator.run_day import day_of_saving
from generator.said import FolderTrouble, how_many
from generator.typed import HERE, DayGiven, DayType, PropertyFolder, safe, told, why

_INTO = click.Path(exists=True, file_okay=False, path_type=Path)


@click.command("save")
@click.argument("folder", type=PropertyFolder(), default=HERE)
@click.option("--to", "into", type=_INTO, metavar="DIR", help="Where the archive goes.")
@click.option("--on", "given", type=DayType(), metavar="DAY", help="Day in its name; today.")
def save_command(folder: Path, into: Path | None, given: DayGiven | None) -> None:
    """Save a property folder, its log and all, as one archive.

    It goes beside the property folder unless --to says where, such as a stick, and never over
    another. It is read back, and every file held against its SHA-256, before this says that it is
    saved. Built books, caches and hidden files are left out.
    """
    from generator.saved.archive import save
    from generator.saved.gathered import NotSaved

    day = day_of_saving(given)
    try:
        saved = save(folder, into or folder.resolve().parent, day)
    except NotSaved as refused:
        raise FolderTrouble(safe(str(refused))) from None
    except OSError as error:
        place = f"{told(Path(error.filename))}: " if isinstance(error.filename, str) else ""
        raise FolderTrouble(f"{place}{why(error)}. Nothing was saved.") from None
    for name, reason in saved.left_out:
        click.echo(safe(f"left out: {name} {reason}"))
    size = f"{saved.size_bytes / BYTES_IN_MB:.1f} MB"
    click.echo(f"{told(saved.archive)}: {how_many(saved.file_count, 'file')}, {size}.")
    click.echo("Read back: every file is what its SHA-256 says. Keep it on another device too.")


@click.command("restore")
@click.argument("archive", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--to", "into", type=_INTO, metavar="DIR", help="Where the new folder goes.")
def restore_command(archive: Path, into: Path | None) -> None:
    """Put a saved property folder beside what is there, as a new folder.

    It goes beside the archive unless --to says where, under a name that is not taken: nothing that
    is there is changed. Every file is held against its SHA-256 first. An archive that `handbook
    save` did not write, or that is not as it was, is refused.
    """
    from generator.saved.gathered import NotSaved
    from generator.saved.restored import restore

    try:
        restored = restore(archive, into or archive.resolve().parent)
    except NotSaved as refused:
        said = f"{told(archive)} was not put back: {safe(str(refused))} Nothing was written."
        raise FolderTrouble(said) from None
    except OSError as error:
        said = f"{told(archive)} was not put back: {why(error)}. Nothing was written."
        raise FolderTrouble(said) from None
    files = how_many(restored.file_count, "file")
    click.echo(
        f"{told(restored.folder)} is {safe(restored.head.name)} of {restored.head.day}, {files}."
    )
    click.echo(f"Then: handbook check {told(restored.folder)}")

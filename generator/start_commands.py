"""The commands that begin: a new property folder, the rules of its files, and what to do next."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import click

from generator.said import FolderTrouble, how_many
from generator.typed import (
    HERE,
    TargetFolder,
    books_beside,
    built_book,
    properties_in,
    safe,
    told,
    why,
    wrong_folder,
)


@click.command("new")
@click.argument("folder", type=click.Path(path_type=Path))
def new_command(folder: Path) -> None:
    """Begin a property folder with a small example to type over."""
    from generator.inventory.json_schema import file_schemas
    from generator.lookup import shipped

    files = {file.name: file.read_bytes() for file in sorted(shipped("starter").glob("*.yaml"))}
    for name, schema in file_schemas().items():
        files[f"schema/{name}.json"] = json.dumps(schema, indent=1).encode()
    _write_new(folder, files)
    click.echo(f"{told(folder)} is ready. Open property.yaml in it and type over the example.")
    click.echo(f"Then: handbook build {told(folder)}")


@click.command("schema")
@click.option("--out", type=TargetFolder(), metavar="FOLDER", help="New folder for the files.")
def schema_command(out: Path | None) -> None:
    """Print the rules of the files as JSON Schema.

    With --out each of them is written into a file of its own.
    """
    from generator.inventory.json_schema import file_schemas

    schemas = file_schemas()
    if out is None:
        click.echo(json.dumps(schemas, indent=1))
        return
    files = {f"{name}.json": json.dumps(rule, indent=1).encode() for name, rule in schemas.items()}
    _write_new(out, files)
    click.echo(f"{told(out)} holds {how_many(len(files), 'file')}.")


def say_next() -> None:
    """Print what to do next in the folder a person is in."""
    wrong = wrong_folder(Path(HERE))
    for line in _elsewhere(wrong) if wrong is not None else _in_a_property():
        click.echo(line)
    click.echo("All commands: handbook --help")


def _in_a_property() -> Iterator[str]:
    yield "You are in a property folder."
    yield from _built_last(books_beside(Path(HERE)))
    yield "Next:"
    yield "  handbook check            names what is wrong in the files"
    yield "  handbook build            builds the pages, for you and for each reader"
    yield "  handbook serve            shows your pages while you type"
    yield "  handbook record --on DAY  writes down what was done"
    yield "  handbook pack --for NAME  packs one reader's book to hand over"


def _built_last(books: Path) -> Iterator[str]:
    from generator.site.mark import marks_in

    marks = marks_in(books)
    yield f"Built last, in {told(books)}:" if marks else f"No book lies in {told(books)} yet."
    for name, mark in marks.items():
        yield f"  {safe(name)}, as of {mark.as_of or 'a day it does not say'}"


def _elsewhere(wrong: str) -> Iterator[str]:
    yield wrong
    there = sorted(properties_in(Path(HERE)))
    if there:
        yield f"Next: cd {told(there[0])}, then handbook"
        return
    if built_book(Path(HERE), HERE) is not None:
        return
    yield "Next, where you have none yet:"
    yield "  handbook new my-land      begins one with a small example, every line explained"
    yield "  handbook build my-land    builds its pages once you have typed over it"


def _write_new(folder: Path, files: dict[str, bytes]) -> None:
    from generator.inventory.write import write_new_folder

    try:
        write_new_folder(folder, files)
    except FileExistsError:
        raise click.UsageError(f"{told(folder)} is there already; choose a new name.") from None
    except OSError as error:
        raise FolderTrouble(f"{told(folder)} cannot be made: {why(error)}.") from None

"""What the commands say: faults, findings, how far a build is. It prints, and nothing else."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from generator.typed import NOT_READ, OWNER
from generator.typed import safe as _safe
from generator.typed import told as _told
from generator.typed import why as _why

if TYPE_CHECKING:
    from generator.book.model import LeftFolder
    from generator.inventory.known import Known
    from generator.inventory.load import Loaded
    from generator.inventory.schema import Inventory, Reader
    from generator.plan.model.finding import Finding
    from generator.plan.model.plan import Plan


class FolderTrouble(click.ClickException):
    """Something is wrong with the folder; the sentence says what to do. Exit code 1."""

    exit_code = 1


def loaded_from(folder: Path, known: Known | None = None) -> Loaded:
    """Return what a property folder gave. Raises FolderTrouble where it cannot be read."""
    from generator.inventory.load import load_inventory

    try:
        return load_inventory(folder, known=known)
    except OSError as error:
        place = _told(Path(error.filename or folder))
        raise FolderTrouble(f"{place} cannot be read: {_why(error)}. {NOT_READ}") from None


def say_old(plan: Plan) -> None:
    """Say once that a book of a plan is old on its own day, and how to have one that is not."""
    from generator.inventory.season import season_of

    now = season_of(plan.as_of)
    if now > plan.season:
        click.echo(
            f"Season {plan.season} ended Aug 31, {plan.season}. This is a book of what is over: "
            f"type season: {now} in property.yaml, or give --season {now}.",
            err=True,
        )
    elif plan.as_of > plan.old_after:
        click.echo(
            f"old_after: {plan.old_after} in property.yaml is over, so every page says that it is "
            "old. Type a later day there, or take the line out.",
            err=True,
        )


def say_not_built(
    troubles: Mapping[str, click.ClickException], readers: Sequence[tuple[str, Reader | None]]
) -> None:
    """End with every reader whose pages were not built; as wrong usage where it is all it was."""
    if not troubles:
        return
    ordered = [(name, troubles[name]) for name, _ in readers if name in troubles]
    told = "\n".join(f"{name} was not built: {trouble.message}" for name, trouble in ordered)
    is_usage = all(isinstance(trouble, click.UsageError) for trouble in troubles.values())
    if is_usage and len(troubles) == len(readers):
        raise click.UsageError(told)
    raise FolderTrouble(told)


def say_faults(loaded: Loaded, undone: str) -> None:
    """Print every fault and end, saying what was not done for them."""
    for problem in loaded.problems:
        click.echo(_safe(str(problem)), err=True)
    if loaded.problems:
        raise FolderTrouble(f"{how_many(len(loaded.problems), 'fault')}. {undone}".rstrip())


def card_notes(loaded: Loaded) -> Iterable[Finding]:
    """Return the notes on what label cards leave out."""
    from generator.plan.labels.clearance import card_gaps

    assert loaded.inventory is not None
    return card_gaps(loaded.inventory.products)


def say_findings(findings: Iterable[Finding]) -> None:
    """Print every finding with its place and figures."""
    from generator.book.in_lines import finding_lines

    for finding in findings:
        for line in finding_lines(finding):
            click.echo(_safe(line))


def say_causes(plan: Plan) -> None:
    """Print what several stops come of, each cause once."""
    from generator.book.in_lines import cause_lines

    for line in cause_lines(plan.findings):
        click.echo(_safe(line))


def say_stops(plan: Plan) -> None:
    """Print how many stops there are, and what several of them come of."""
    stops = sum(finding.severity == "stop" for finding in plan.findings)
    if stops:
        click.echo(f"{how_many(stops, 'stop')}: see Stops, cautions and notes in the book.")
        say_causes(plan)


def say_left(books: Path, left: LeftFolder) -> None:
    """Print which folder of a reader who is gone was left where it is, with its one file."""
    from generator.site.one_file import file_beside

    of = f"as of {left.as_of}" if left.as_of is not None else "of a day it does not say"
    file = file_beside(books / left.name)
    beside = f" with {_told(file)}" if file.is_file() else ""
    click.echo(
        f"{_told(books / left.name)} is still there{beside}, {of}, and no reader of this name is "
        "in readers.yaml. Delete it yourself, and ask for copies you gave away."
    )


def refuse_stripped() -> None:
    """Refuse a Python that leaves docstrings out: formulas are read from them."""
    if sys.flags.optimize > 1:
        raise click.UsageError(
            "Python runs with -OO or PYTHONOPTIMIZE=2, which leaves out texts that the book is "
            "made from. Run it without."
        )


def asked_words(before: Inventory, after: Inventory) -> tuple[str, ...]:
    """Return what new entries of the log ask, a line for each."""
    from generator.plan.doubts.every_doubt import asked_by

    return tuple(
        f"asked {finding.code} {finding.subject}: {finding.words} {finding.cure} {finding.to_type}"
        for finding in asked_by(before, after)
    )


def spell_out() -> None:
    """Have letters that an old encoding lacks printed as their numbers, as errors are."""
    if isinstance(sys.stdout, TextIOWrapper):
        sys.stdout.reconfigure(errors="backslashreplace")


def how_many(count: int, word: str) -> str:
    """Return a count with its word, in the plural where it is not one."""
    return f"1 {word}" if count == 1 else f"{count} {word}s"


class Progress:
    """Says what is being done, once the command has run for more than a second.

    Without a thread: a second thread would keep the pages from being written by two processes.
    """

    def __init__(self) -> None:
        self.begun = time.monotonic()

    def say(self, text: str) -> None:
        """Print the text unless the command has only just begun."""
        if time.monotonic() - self.begun > 1:
            click.echo(text, err=True)


@contextmanager
def as_troubles() -> Iterator[None]:
    """Turn what keeps a book from being written into wrong usage, or into what failed."""
    from generator.site.publish import Leaking, NotWritten, Refused

    try:
        yield
    except NotWritten as trouble:
        raise FolderTrouble(_safe(str(trouble))) from None
    except Leaking as leaking:
        raise FolderTrouble("\n".join(map(_safe, str(leaking).splitlines()))) from None
    except Refused as refused:
        raise click.UsageError(_safe(str(refused))) from None
    except OSError as error:
        raise FolderTrouble(f"The pages cannot be written: {_why(error)}.") from None


def readers_wanted(inventory: Inventory, wanted: str | None) -> list[tuple[str, Reader | None]]:
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


def reader_wanted(inventory: Inventory, wanted: str) -> tuple[str, Reader | None]:
    """Return the one reader that is wanted. Raises UsageError where several are meant."""
    readers = readers_wanted(inventory, wanted)
    if len(readers) > 1:
        names = ", ".join(name for name, _ in readers)
        raise click.UsageError(f"--for names several readers: {names}. Say which one.")
    return readers[0]


class Commands(click.Group):
    """The commands; what the system refuses one of them is told in one sentence."""

    def main(self, *args: Any, **more: Any) -> Any:
        """Run what was typed, and end with 1 where the system refuses something."""
        try:
            return super().main(*args, **more)
        except OSError as error:
            place = f"{_told(Path(error.filename))}: " if isinstance(error.filename, str) else ""
            click.echo(f"Error: {place}{_why(error)}.", err=True)
            sys.exit(1)

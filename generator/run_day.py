"""The day of a run, and what said it."""

from __future__ import annotations

import datetime
import os
from typing import TYPE_CHECKING, NamedTuple

import click

from generator.said import FolderTrouble
from generator.typed import DayGiven, safe

if TYPE_CHECKING:
    from generator.inventory.load import Loaded

# The days that a plan can be made for; the first is the one that entries of calendars count from.
FIRST_DAY, LAST_DAY = datetime.date(2000, 1, 1), datetime.date(2100, 12, 31)
SECONDS_IN_DAY = 86400
MOST_DIGITS = 11  # of seconds from 1970 to a year that a calendar can hold


class DayOfRun(NamedTuple):
    """The one day of a run, for all its readers, and what said it."""

    date: datetime.date
    said_by: str

    @property
    def told(self) -> str:
        """The day as it is printed, with where it is from."""
        return f"As of {self.date}: {self.said_by}."


def day_of_run(loaded: Loaded, given: DayGiven | None) -> DayOfRun:
    """Return the day that the first of these says: --as-of, the folder, the system, the clock."""
    assert loaded.inventory is not None
    typed, of_system = loaded.inventory.property.as_of, _source_date()
    if given is not None:
        if given.is_us and loaded.inventory.property.dates is None:
            raise click.UsageError(
                f"Month/day/year is read where property.yaml says dates: us. Write {given.date}."
            )
        day = DayOfRun(given.date, "the day given by --as-of")
    elif typed is not None:
        day = DayOfRun(typed, "the day typed as as_of: in property.yaml")
    elif of_system is not None:
        day = DayOfRun(of_system, "the day given by SOURCE_DATE_EPOCH")
    else:
        day = DayOfRun(_today(), "the day of this device")
    if not FIRST_DAY <= day.date <= LAST_DAY:
        # who has to change something: the folder that says the day, or who typed the command
        refusal = FolderTrouble if typed is not None and given is None else click.UsageError
        raise refusal(
            f"No plan can be made as of {day.date}, {day.said_by}. It takes a day from {FIRST_DAY} "
            f"to {LAST_DAY}, given by --as-of or typed as as_of:."
        )
    return day


def day_of_saving(given: DayGiven | None) -> datetime.date:
    """Return the day that something is saved on: the one given, else the system's, the clock's."""
    if given is None:
        return _source_date() or _today()
    if given.is_us:
        raise click.UsageError(f"Write the day as {given.date}.")
    return given.date


def _source_date() -> datetime.date | None:
    """Return the day SOURCE_DATE_EPOCH says, in UTC, or None where it is not set."""
    text = os.environ.get("SOURCE_DATE_EPOCH")
    if text is None:
        return None
    if not (text.isascii() and text.isdecimal() and len(text) <= MOST_DIGITS):
        raise click.UsageError(
            f"SOURCE_DATE_EPOCH is {safe(text[:40]) or 'empty'}, and not a whole number of "
            "seconds since 1970. Set it to one, or do without it."
        )
    return datetime.date(1970, 1, 1) + datetime.timedelta(days=int(text) // SECONDS_IN_DAY)


def _today() -> datetime.date:
    """Return the day of this device: the one place in the program that asks a clock for it."""
    return datetime.date.today()

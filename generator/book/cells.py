"""Plain values for the cells of a table: how numbers, times and answers get there."""

import datetime

from generator.working import Figure, Withheld

Cell = str | int | float | datetime.date | datetime.time | None
AT_LEAST_DECIMALS, DIGITS_SEEN = 2, 2
# What is counted or read off an instrument stands as it was taken, without decimals it never had.
READ_OFF = ("_count", "_mph", "_deg", "_f", "_in")


def as_number(figure: Figure | None) -> float | None:
    """Return the value of a figure as it stands in a cell, None where there is none to show."""
    return None if figure is None or isinstance(figure, Withheld) else float(figure.value)


def as_time(said: str | None) -> datetime.time | None:
    """Return a time of day as it stands in a cell; `said` is hours and minutes, as 07:40.

    >>> as_time("07:40")
    datetime.time(7, 40)
    """
    return datetime.time.fromisoformat(said) if said is not None else None


def yes_no_cell(said: bool | None) -> str | None:
    """Return an answer as it stands in a cell, None where there is none."""
    return None if said is None else ("yes" if said else "no")


def decimals(value: float, column: str) -> int:
    """Return with how many decimals a number is shown in a column.

    Two, as money is; more where two would leave less than two digits of it to be seen.

    >>> decimals(12.345, "amount"), decimals(0.0045, "amount"), decimals(3.0, "packages_count")
    (2, 4, 0)
    """
    if isinstance(value, int) or (value.is_integer() and column.endswith(READ_OFF)):
        return 0
    # of the rounded number: 0.0996 stands as 0.10 and asks for no third decimal
    exponent = int(f"{value:.{DIGITS_SEEN - 1}e}".partition("e")[2]) if value else 0
    return max(AT_LEAST_DECIMALS, DIGITS_SEEN - 1 - exponent)

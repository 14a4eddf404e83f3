"""Days in words, the same in every language of the machine."""

import datetime

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day_words(day: datetime.date) -> str:
    """Return a day in words.

    >>> day_words(datetime.date(2027, 3, 4))
    '4 March 2027'
    """
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"

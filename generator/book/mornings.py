"""Reminders by the morning on which they come: never so many that nobody reads them."""

import datetime
from collections.abc import Iterable
from dataclasses import replace

from generator.book.icalendar_text import Event, Reminder

MOST_ALARMS = 3
Due = tuple[Event, Reminder]


def spared(events: Iterable[Event], as_of: datetime.date, stamp: str) -> list[Event]:
    """Return events with at most three alarms on any morning from a day on.

    Where more would come, the most urgent two keep theirs. The others stand, each with its words,
    in one more entry on that morning, whose alarm is the third. `stamp` ends its description.
    """
    listed = list(events)
    mornings: dict[datetime.date, list[Due]] = {}
    for event in listed:
        for reminder in event.reminders:
            # an alarm of a day gone by is not written, so it takes no other's place
            if (day := event.reminded_on(reminder)) >= as_of:
                mornings.setdefault(day, []).append((event, reminder))
    taken: set[tuple[str, Reminder]] = set()
    together = []
    for day, due in sorted(mornings.items()):
        if len(due) > MOST_ALARMS:
            rest = sorted(due, key=_urgency)[MOST_ALARMS - 1 :]
            taken |= {(event.key, reminder) for event, reminder in rest}
            together.append(_in_one(day, rest, stamp))
    return [*(_without(entry, taken) for entry in listed), *together]


def _urgency(due: Due) -> tuple[int, str]:
    """Return what comes first: what is due soonest is."""
    event, reminder = due
    return reminder.days_before, event.key


def _in_one(day: datetime.date, rest: list[Due], stamp: str) -> Event:
    summary = f"{len(rest)} more reminders this morning"
    words = [reminder.words for _, reminder in rest]
    alarm = Reminder(0, f"{summary}: {'; '.join(words)}")
    return Event(f"morning/{day}", day, day, summary, (*words, stamp), reminders=(alarm,))


def _without(event: Event, taken: set[tuple[str, Reminder]]) -> Event:
    kept = tuple(reminder for reminder in event.reminders if (event.key, reminder) not in taken)
    return replace(event, reminders=kept)

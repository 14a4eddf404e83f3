"""The hours in which another reader keeps away from what they are handed, and nothing of whose."""

from collections.abc import Iterable, Mapping

from generator.plan.model.finding import Subject
from generator.plan.model.plan import grouped
from generator.plan.model.sits import KeepAway, joined_hours


def hours_for_others(
    away: Iterable[KeepAway], new_ids: Mapping[str, str], own: frozenset[str]
) -> tuple[KeepAway, ...]:
    """Return the hours on what is handed over, by new ids, without those of the reader's own sits.

    Of one day they are joined and none is a doubtful one: how many sit, and what is typed of where
    they sit, is nobody's but the owner's.
    """
    of_others = [
        keep for keep in away if keep.subject.id in new_ids and not own.issuperset(keep.sit_ids)
    ]
    by_day = grouped((f"{keep.subject.id}/{keep.day}", keep) for keep in of_others)
    found = [
        KeepAway(
            Subject(same[0].subject.kind, new_ids[same[0].subject.id]),
            same[0].day,
            hours,
            is_known=True,
        )
        for same in by_day.values()
        for hours in joined_hours(keep.hours for keep in same)
    ]
    return tuple(sorted(found, key=lambda keep: (keep.day, keep.hours, keep.subject)))

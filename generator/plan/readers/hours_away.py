"""When another reader keeps away from what they are handed, and nothing of whose it is or why."""

from collections.abc import Iterable, Iterator, Mapping

from generator.plan.model.finding import Subject
from generator.plan.model.plan import grouped
from generator.plan.model.sits import Forbids, KeepAway, StandAnswer, WhyNot, joined_hours


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
            subject=Subject(same[0].subject.kind, new_ids[same[0].subject.id]),
            day=same[0].day,
            hours=hours,
            is_known=True,
            sit_ids=(),
        )
        for same in by_day.values()
        for hours in joined_hours(keep.hours for keep in same)
    ]
    return tuple(sorted(found, key=lambda keep: (keep.day, keep.hours, keep.subject)))


# What the owner decides alone: that it is so is told, and not why.
_KEPT_CLOSED = (WhyNot.QUIET, WhyNot.RESTS, WhyNot.NO_LEAVE, WhyNot.TOO_NEAR)


def answers_for_others(
    answers: Iterable[StandAnswer], own: frozenset[str]
) -> tuple[StandAnswer, ...]:
    """Return the answers of a handed stand: that the owner keeps it closed on days, not why."""
    found: list[StandAnswer] = []
    for answer in answers:
        forbids = tuple(_for_others(answer.forbids, own))
        begins = answer.first
        if found and found[-1].forbids == forbids:
            begins = found.pop().first
        found.append(StandAnswer(first=begins, last=answer.last, forbids=forbids))
    return tuple(found)


def _for_others(forbids: Iterable[Forbids], own: frozenset[str]) -> Iterator[Forbids]:
    """Yield what is told of what forbids a stand; hours of others joined, as everywhere."""
    every = list(forbids)
    for one in every:
        if one.why not in (*_KEPT_CLOSED, WhyNot.TAKEN):
            yield Forbids(why=one.why, day=one.day, what=None, hours=None, sit_ids=())
    if any(one.why in _KEPT_CLOSED for one in every):
        yield Forbids(why=WhyNot.KEPT_CLOSED, day=None, what=None, hours=None, sit_ids=())
    taken = (one.hours for one in every if one.hours and not own.issuperset(one.sit_ids))
    for hours in joined_hours(taken):
        yield Forbids(why=WhyNot.TAKEN, day=None, what=None, hours=hours, sit_ids=())

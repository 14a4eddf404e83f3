"""A stand has one day on which it was last looked over, wherever that day was written down."""

import datetime

import pytest

from generator.book.pages.seen import LastLook, last_look
from generator.plan.build.season_plan import make_plan
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, Data, small_property


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def look_of(typed: str | None, *logged: tuple[str, bool | None]) -> LastLook | None:
    data = small_property()
    stand: Data = {"id": "oak", "name": "Oak", "upkeep": "stand_inspection"}
    if typed is not None:
        stand["straps_checked_on"] = typed
    data["stands"] = {"stands": [stand]}
    data["log"] = {"entries": [
        {"id": f"e{number}", "done_on": when,
         "inspected": {"what": ["oak"]} | ({} if sound is None else {"sound": sound})}
        for number, (when, sound) in enumerate(logged)
    ]}  # fmt: skip
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    return last_look(plan, plan.land.stands[0])


JUNE, JULY, AUGUST = "2026-06-01", "2026-07-01", "2026-08-01"


@pytest.mark.parametrize(
    ("typed", "logged", "wanted"),
    [
        (None, [], None),
        (JUNE, [], (JUNE, None, None)),
        (JUNE, [(JULY, True)], (JULY, True, None)),
        (JUNE, [(JULY, False)], (JULY, False, JULY)),
        (JUNE, [(JULY, None)], (JULY, None, None)),
        # A day typed later says nothing of sound, and takes nothing back.
        (AUGUST, [(JULY, True)], (AUGUST, None, None)),
        (AUGUST, [(JULY, False)], (AUGUST, None, JULY)),
        (JULY, [(JULY, True)], (JULY, True, None)),
        (None, [(JULY, False), (AUGUST, True)], (AUGUST, True, None)),
        (None, [(JULY, True), (AUGUST, False)], (AUGUST, False, AUGUST)),
        (None, [(JULY, False), (AUGUST, None)], (AUGUST, None, JULY)),
        # Of two looks of one day the one written last stands.
        (None, [(JULY, True), (JULY, False)], (JULY, False, JULY)),
    ],
)
def test_the_latest_look_counts_whatever_it_says(
    typed: str | None,
    logged: list[tuple[str, bool | None]],
    wanted: tuple[str, bool | None, str | None] | None,
) -> None:
    found = look_of(typed, *logged)
    if wanted is None:
        assert found is None
        return
    when, sound, mend = wanted
    assert found == LastLook(day(when), sound, day(mend) if mend else None)

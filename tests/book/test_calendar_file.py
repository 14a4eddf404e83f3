"""Calendars, read back by the icalendar library: whole days, reminders, UIDs, folds, privacy."""

import copy
import datetime
from collections.abc import Iterable
from typing import Any

import icalendar
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from generator.book.icalendar_text import Event, Reminder, as_icalendar, folded
from generator.book.make import make_book
from generator.book.mornings import MOST_ALARMS, spared
from generator.book.pages.written import CALENDAR, CALENDAR_SPANS
from generator.book.text import clean
from generator.plan.build.season_plan import make_plan
from generator.plan.readers.seen_by import seen_by
from tests.book.sites import Site
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

DAY = datetime.date(2026, 8, 20)
KILL_WORDS = "Kill the sod in fall"
SPRAYED: Data = {"id": "e-1", "done_on": "2026-08-20", "used": [{"item": "brew",
                 "amount_fl_oz": 10}], "sprayed": {"place": "lane", "treated_ac": 0.2}}  # fmt: skip
BOTH = (CALENDAR, CALENDAR_SPANS)


def owner_file(data: Data, as_of: datetime.date = AS_OF, name: str = CALENDAR) -> bytes:
    plan = make_plan(inventory_of(data), SEASON, as_of)
    return make_book(plan).files[name]


def hired_file(data: Data, name: str = CALENDAR) -> bytes:
    return make_book(seen_by(planned(data), inventory_of(data).readers[0])).files[name]


def hired_at(data: Data, as_of: datetime.date, name: str) -> bytes:
    inventory = inventory_of(data)
    return make_book(seen_by(make_plan(inventory, SEASON, as_of), inventory.readers[0])).files[name]


def spans_of(data: Data, as_of: datetime.date = AS_OF) -> list[icalendar.Event]:
    return read_back(owner_file(data, as_of, CALENDAR_SPANS))


def read_back(content: bytes) -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(content).walk("VEVENT"))


def days_of(event: Any) -> tuple[datetime.date, datetime.date]:
    """First and last day; the end that a file names is the day after."""
    return event["DTSTART"].dt, event["DTEND"].dt - datetime.timedelta(days=1)


def one_of(events: Iterable[Any], words: str) -> Any:
    (found,) = [one for one in events if words in str(one["SUMMARY"])]
    return found


def alarms_by_morning(events: Iterable[Any]) -> dict[datetime.datetime, list[str]]:
    """When alarms come and what they say, as RFC 5545, 3.8.6.3 counts them for a whole day."""
    found: dict[datetime.datetime, list[str]] = {}
    for event in events:
        midnight = datetime.datetime.combine(event["DTSTART"].dt, datetime.time())
        for alarm in event.walk("VALARM"):
            assert alarm["TRIGGER"].params["RELATED"] == "START"
            found.setdefault(midnight + alarm["TRIGGER"].dt, []).append(str(alarm["DESCRIPTION"]))
    return found


def cleared() -> Data:
    return small_property(full_card(full_use()))


def test_the_days_of_an_event_as_the_standard_counts_them() -> None:
    """RFC 5545, 3.6.1: an event from Jun 28 to Jul 8, 2007 has DTEND Jul 9, not inclusive."""
    one = Event("a", datetime.date(2007, 6, 28), datetime.date(2007, 7, 8), "Festival", ())
    content = as_icalendar("Land", datetime.date(2007, 1, 1), [("1", one)])
    assert b"DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n" in content
    (event,) = read_back(content)
    assert days_of(event) == (one.first, one.last)


def test_every_job_with_dates_is_a_span_and_two_entries_of_a_day() -> None:
    plan = planned(cleared())
    spans, events = spans_of(cleared()), read_back(owner_file(cleared()))
    for job in plan.jobs:
        assert job.days is None
        title = f"{job.step.name}: Lane screen"
        span = one_of(spans, title)
        assert days_of(span) == (job.dates.opens, job.dates.closes)
        opens, last = (one_of(events, f"{head}: {title}") for head in ("Opens", "Last day"))
        assert days_of(opens) == (job.dates.opens, job.dates.opens)
        assert days_of(last) == (job.dates.closes, job.dates.closes)
        for event in (span, opens, last):
            assert event["LOCATION"] == "Lane screen"
            assert f"work/{job.address}.html" in str(event["DESCRIPTION"])
            assert "As of Aug 20, 2026" in str(event["DESCRIPTION"])
            says_label = "Read the label on the container again" in str(event["DESCRIPTION"])
            assert says_label == (job.step.operation == "spray")


def test_entries_of_the_file_to_subscribe_to_are_of_one_day_and_spans_have_no_alarm() -> None:
    assert {days_of(one)[1] - days_of(one)[0] for one in read_back(owner_file(cleared()))} == {
        datetime.timedelta()
    }
    spans = spans_of(cleared())
    assert max(days_of(one)[1] - days_of(one)[0] for one in spans) > datetime.timedelta(days=7)
    assert [one for one in spans if one.walk("VALARM")] == []


def test_a_span_of_one_day_is_one_entry_with_both_reminders() -> None:
    data = cleared()
    quiet = (("2026-09-01", "2026-09-14"), ("2026-09-16", "2026-12-31"))
    data["dates"] = {
        "dates": [
            {"id": f"rest-{first}", "kind": "quiet", "first": first, "last": last, "places": "all"}
            for first, last in quiet
        ]
    }
    (only,) = [one for one in read_back(owner_file(data)) if KILL_WORDS in str(one["SUMMARY"])]
    assert str(only["SUMMARY"]) == f"Opens, and last day: {KILL_WORDS}: Lane screen"
    assert days_of(only) == (datetime.date(2026, 9, 15),) * 2
    told = [str(one["DESCRIPTION"]) for one in only.walk("VALARM")]
    assert [one.partition(". ")[0] for one in told] == [
        "Opens Sep 15, 2026",
        "Last day Sep 15, 2026",
    ]


def test_no_amount_stands_in_a_calendar() -> None:
    plan = planned(cleared())
    assert any(job.mix is not None for job in plan.jobs)
    text = owner_file(cleared()).decode().replace("\r\n ", "")
    told = [line for line in text.splitlines() if line.startswith(("SUMMARY", "DESCRIPTION"))]
    assert [one for one in told if "fl oz" in one or " gal" in one or " lb" in one] == []


def test_days_to_keep_cut_a_job_into_windows() -> None:
    data = cleared()
    rest = {"id": "rest", "kind": "quiet", "first": "2026-09-15", "last": "2026-09-17",
            "places": "all"}  # fmt: skip
    data["dates"] = {"dates": [rest]}
    (kill,) = (job for job in planned(data).jobs if job.step.id == "autumn_kill")
    assert kill.days is not None
    assert len(kill.days.left) == 2
    windows = [one for one in spans_of(data) if kill.step.name in str(one["SUMMARY"])]
    assert [days_of(one) for one in windows] == list(kill.days.left)
    single = [one for one in read_back(owner_file(data)) if kill.step.name in str(one["SUMMARY"])]
    assert [days_of(one)[0] for one in single] == [day for one in kill.days.left for day in one]
    assert len({str(one["UID"]) for one in (*windows, *single)}) == 6
    quiet = one_of(spans_of(data), "Stay-out dates: all places")
    assert days_of(quiet) == (datetime.date(2026, 9, 15), datetime.date(2026, 9, 17))
    for head, day in (("first", 15), ("last", 17)):
        one = one_of(read_back(owner_file(data)), f"Stay-out dates, {head} day: all places")
        assert days_of(one) == (datetime.date(2026, 9, day),) * 2


def test_a_job_with_a_stop_says_so_first() -> None:
    events = read_back(owner_file(small_property()))
    for head in ("Opens", "Last day"):
        stopped = one_of(events, f"Stop, not yet. {head}")
        assert str(stopped["SUMMARY"]).startswith("Stop, not yet.")
        assert "A stop stands on this job." in str(stopped["DESCRIPTION"])
        assert stopped["STATUS"] == "TENTATIVE"
        assert stopped.walk("VALARM")
        assert all("Stop, not yet" in str(one["DESCRIPTION"]) for one in stopped.walk("VALARM"))
    (span,) = [one for one in spans_of(small_property()) if one["STATUS"] == "TENTATIVE"]
    assert str(span["DESCRIPTION"]).startswith("A stop stands on this job.")


def test_a_job_that_is_done_calls_its_entries_off() -> None:
    data, later = cleared(), datetime.date(2026, 9, 6)
    done = {"id": "e-1", "done_on": "2026-09-05", "job": {"planting": "lane-27",
            "step": "autumn_kill", "finished": True}}  # fmt: skip
    logged = cleared() | {"log": {"entries": [done]}}
    for name, count in ((CALENDAR, 2), (CALENDAR_SPANS, 1)):
        before, after = (
            [one for one in read_back(file) if KILL_WORDS in str(one["SUMMARY"])]
            for file in (owner_file(data, name=name), owner_file(logged, later, name))
        )
        assert len(before) == len(after) == count
        for old, new in zip(before, after, strict=True):
            assert str(new["SUMMARY"]).startswith("Done: ")
            assert new["STATUS"] == "CANCELLED"
            assert new.walk("VALARM") == []
            assert new["UID"] == old["UID"]
            assert new["SEQUENCE"] > old["SEQUENCE"]


@pytest.mark.parametrize("name", BOTH)
@pytest.mark.parametrize("finished", [True, False], ids=["done", "missed"])
def test_every_window_of_a_job_that_is_settled_is_called_off(name: str, finished: bool) -> None:
    data, later = cleared(), datetime.date(2026, 9, 6) if finished else datetime.date(2027, 1, 15)
    rests = [("2026-09-12", "2026-09-13"), ("2026-09-15", "2026-09-17")]
    data["dates"] = {"dates": [
        {"id": f"rest-{first}", "kind": "quiet", "first": first, "last": last, "places": "all"}
        for first, last in rests]}  # fmt: skip
    logged = copy.deepcopy(data)
    if finished:
        logged["log"] = {"entries": [{"id": "e-1", "done_on": "2026-09-05", "job": {
            "planting": "lane-27", "step": "autumn_kill", "finished": True}}]}  # fmt: skip
    for read in (owner_file, hired_at):
        before, after = (
            {str(one["UID"]): one for one in read_back(file) if KILL_WORDS in str(one["SUMMARY"])}
            for file in (read(data, AS_OF, name), read(logged, later, name))
        )
        assert before.keys() == after.keys()
        # 10 and 11, 14, 18 to Sep 27: the day between is one entry
        assert len(before) == (5 if name == CALENDAR else 3)
        for uid, one in after.items():
            assert one["STATUS"] == "CANCELLED"
            assert str(one["SUMMARY"]).startswith("Done: " if finished else "Missed: ")
            assert days_of(one) == days_of(before[uid])
            assert one.walk("VALARM") == []


def test_reminders_come_on_a_morning_some_days_before() -> None:
    events = read_back(owner_file(cleared()))
    nine = datetime.time(9)
    for head, days in (("Opens", 7), ("Last day", 3)):
        event = one_of(events, f"{head}: {KILL_WORDS}")
        day = days_of(event)[0] - datetime.timedelta(days=days)
        assert set(alarms_by_morning([event])) == (
            {datetime.datetime.combine(day, nine)} if day >= AS_OF else set()
        )
        assert all(alarm["ACTION"] == "DISPLAY" for alarm in event.walk("VALARM"))
    assert alarms_by_morning(events)


@pytest.mark.parametrize(("days_before", "hours"), [(0, 9), (1, -15), (3, -63), (7, -159)])
def test_a_reminder_counts_from_the_midnight_of_its_day(days_before: int, hours: int) -> None:
    """RFC 5545, 3.8.6.3: of a whole day an alarm is triggered relative to its 00:00:00."""
    reminder = Reminder(days_before, "Soon")
    first = DAY + datetime.timedelta(days=9)
    one = Event("a", first, first, "Job", (), reminders=(reminder,))
    (event,) = read_back(as_icalendar("Land", DAY, [("1", one)]))
    (alarm,) = event.walk("VALARM")
    assert alarm["TRIGGER"].dt == datetime.timedelta(hours=hours)


def test_a_reminder_of_a_day_gone_by_is_left_out() -> None:
    def reminded(first: datetime.date) -> int:
        one = Event("a", first, first, "Job", (), reminders=(Reminder(7, "Soon"),))
        return len(read_back(as_icalendar("Land", DAY, [("1", one)]))[0].walk("VALARM"))

    assert reminded(DAY + datetime.timedelta(days=7)) == 1
    assert reminded(DAY + datetime.timedelta(days=6)) == 0


def of_days(*days_before: int) -> list[Event]:
    """Entries whose reminders all come on one morning, so many days before each."""
    morning = DAY + datetime.timedelta(days=30)
    due = [morning + datetime.timedelta(days=days) for days in days_before]
    return [
        Event(f"{number}", day, day, f"Job {number}", (), reminders=(Reminder(days, f"J{number}"),))
        for number, (day, days) in enumerate(zip(due, days_before, strict=True))
    ]


def test_three_reminders_of_a_morning_stay_as_they_are() -> None:
    events = of_days(7, 3, 7)
    assert spared(events, DAY, "As of") == events


def test_of_more_reminders_the_two_due_soonest_stay_and_the_third_says_the_others() -> None:
    events = of_days(7, 3, 7, 0, 7)
    *kept, together = spared(events, DAY, "As of")
    assert [len(one.reminders) for one in kept] == [0, 1, 0, 1, 0]
    assert together.first == together.last == DAY + datetime.timedelta(days=30)
    assert together.summary == "3 more reminders this morning"
    assert together.description == ("J0", "J2", "J4", "As of")
    assert [one.words for one in together.reminders] == [
        "3 more reminders this morning: J0; J2; J4"
    ]
    assert together.reminded_on(together.reminders[0]) == together.first


DUE = st.tuples(st.integers(0, 20), st.lists(st.sampled_from([0, 3, 7]), unique=True))


@settings(max_examples=25)
@given(due=st.lists(DUE, max_size=25))
def test_no_morning_has_more_than_three_alarms_and_none_is_lost(
    due: list[tuple[int, list[int]]],
) -> None:
    days = [DAY + datetime.timedelta(days=after) for after, _ in due]
    events = [
        Event(f"{number}", day, day, "Job", (),
              reminders=tuple(Reminder(one, f"<{number}/{one}>") for one in before))
        for number, (day, (_, before)) in enumerate(zip(days, due, strict=True))
    ]  # fmt: skip
    named = [(one.key, one) for one in spared(events, DAY, "As of")]
    after = alarms_by_morning(read_back(as_icalendar("Land", DAY, named)))
    before = alarms_by_morning(
        read_back(as_icalendar("Land", DAY, [(one.key, one) for one in events]))
    )
    assert before.keys() == after.keys()
    for morning, words in before.items():
        assert len(after[morning]) == min(len(words), MOST_ALARMS)
        assert all(sum(one in told for told in after[morning]) == 1 for one in words)


def test_stamp_and_sequence_are_of_the_plan_s_day() -> None:
    """RFC 5545, 3.8.7.2 and 3.8.7.4: a stamp in UTC in every event, a sequence that never falls."""
    content = owner_file(cleared())
    for event in read_back(content):
        assert event["DTSTAMP"].dt == datetime.datetime(2026, 8, 20, tzinfo=datetime.UTC)
        assert event["SEQUENCE"] == (AS_OF - datetime.date(2000, 1, 1)).days
    assert owner_file(cleared()) == content


def test_the_owner_has_orders_and_days_to_keep_out() -> None:
    data = small_property()
    data["seed"]["lots"][0] |= {"package_lb": 50, "on_hand_lb": 0, "counted_on": "2026-08-01",
                                "lead_days": 14}  # fmt: skip
    order = one_of(read_back(owner_file(data)), "Last day to order")
    first, last = days_of(order)
    assert first == last > AS_OF
    cards = cleared()
    cards["log"] = {"entries": [SPRAYED]}
    kept = one_of(spans_of(cards), "Keep out")
    # the card's twelve hours, counted as a whole day after the spraying
    assert days_of(kept) == (DAY, DAY + datetime.timedelta(days=1))


def test_each_day_that_people_are_kept_out_has_its_entry() -> None:
    data = small_property(full_card(full_use()) | {"reentry": {"agricultural_hours": 84,
                          "elsewhere": "until_dry"}})  # fmt: skip
    data["log"] = {"entries": [SPRAYED]}
    events = read_back(owner_file(data))
    kept = [one for one in events if "Keep out" in str(one["SUMMARY"])]
    assert [days_of(one) for one in kept] == [
        (DAY + datetime.timedelta(days=count),) * 2 for count in range(5)
    ]
    assert [str(one["SUMMARY"]).startswith("Last day.") for one in kept] == [*(False,) * 4, True]
    assert len({str(one["UID"]) for one in kept}) == 5


@pytest.mark.parametrize("name", BOTH)
def test_another_reader_has_their_jobs_alone_under_the_names_they_know(name: str) -> None:
    data = cleared()
    data["dates"] = {"dates": [{"id": "rest", "kind": "quiet", "first": "2026-09-01",
                                "last": "2026-09-02", "places": "all"}]}  # fmt: skip
    mine, theirs = read_back(owner_file(data, name=name)), read_back(hired_file(data, name))
    assert {str(one["LOCATION"]) for one in theirs if "LOCATION" in one} == {"Strip 1"}
    assert [one for one in theirs if "Quiet" in str(one["SUMMARY"])] == []
    assert not {str(one["UID"]) for one in mine} & {str(one["UID"]) for one in theirs}
    text = hired_file(data, name).decode().replace("\r\n ", "")
    assert "Lane" not in text
    assert data["property"]["name"] not in text


@pytest.mark.parametrize("name", BOTH)
def test_another_reader_s_file_keeps_its_bytes_when_what_is_private_changes(name: str) -> None:
    before, after = cleared(), cleared()
    after["property"] |= {"name": "Elsewhere", "location_lat_lon": [44.1, -90.2],
                          "time_zone": "America/Denver"}  # fmt: skip
    after["screens"]["screens"][0] |= {"name": "Another name", "note": "private"}
    renamed = copy.deepcopy(after)
    renamed["screens"]["screens"][0] |= {"id": "ditch", "was": ["lane"]}
    assert hired_file(before, name) == hired_file(after, name) == hired_file(renamed, name)
    assert owner_file(before, name=name) != owner_file(after, name=name)


def test_a_new_name_of_a_place_moves_no_entry() -> None:
    before, after = cleared(), cleared()
    after["screens"]["screens"][0] |= {"name": "Creek screen"}
    uids = [[str(one["UID"]) for one in read_back(owner_file(data))] for data in (before, after)]
    assert uids[0] == uids[1]


TEXTS = st.text(max_size=200) | st.text("é😀,;\\ \n:x", max_size=200)


@given(text=TEXTS)
def test_text_comes_back_and_no_line_is_too_long(text: str) -> None:
    """RFC 5545, 3.1: lines of at most 75 octets, CR LF, a fold begins with one blank."""
    one = Event("a", DAY, DAY, text, (text, text), text)
    content = as_icalendar(text, DAY, [("1", one)])
    *lines, end = content.split(b"\r\n")
    assert end == b""
    for line in lines:
        assert len(line) <= 75
        assert b"\n" not in line
        assert b"\r" not in line
        line.decode()
    (event,) = read_back(content)
    assert str(event["SUMMARY"]) == clean(text)
    assert str(event["LOCATION"]) == clean(text)
    assert str(event["DESCRIPTION"]) == f"{clean(text)}\n{clean(text)}"


@given(line=st.text(min_size=1, max_size=300))
def test_a_fold_takes_nothing_away(line: str) -> None:
    assume("\r\n " not in line)
    assert folded(line).replace("\r\n ", "") == line


@pytest.mark.parametrize("name", BOTH)
def test_a_site_carries_each_reader_s_own_calendar(demo_sites: dict[str, Site], name: str) -> None:
    uids: set[str] = set()
    for site in demo_sites.values():
        content = (site.folder / name).read_bytes()
        assert content == site.book.files[name]
        events = read_back(content)
        mine = {str(one["UID"]) for one in events}
        assert len(mine) == len(events) > 0
        assert not mine & uids
        uids |= mine
        work = (site.folder / "work.html").read_text(encoding="utf-8")
        assert f'href="{name}"' in work
        assert f"<strong>{name}</strong>" in work
        assert all(one["DTSTART"].dt <= one["DTEND"].dt for one in events)


def test_the_demo_wakes_nobody_more_than_three_times_a_morning(
    demo_sites: dict[str, Site],
) -> None:
    together = 0
    for site in demo_sites.values():
        events = read_back(site.book.files[CALENDAR])
        assert {days_of(one)[1] - days_of(one)[0] for one in events} == {datetime.timedelta()}
        for words in alarms_by_morning(events).values():
            assert len(words) <= MOST_ALARMS
            together += sum("more reminders" in one for one in words)
        assert alarms_by_morning(read_back(site.book.files[CALENDAR_SPANS])) == {}
    assert together > 0


def test_both_files_can_be_taken_into_one_calendar(demo_sites: dict[str, Site]) -> None:
    """RFC 5545, 3.8.4.7: a UID is of one entry alone, whatever file it comes in."""
    for site in demo_sites.values():
        days, spans = (
            {str(one["UID"]) for one in read_back(site.book.files[name])} for name in BOTH
        )
        assert not days & spans

"""Calendars, read back by the icalendar library: whole days, reminders, UIDs, folds, privacy."""

import copy
import datetime
from collections.abc import Iterable
from typing import Any

import icalendar
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.book.icalendar_text import Event, Reminder, as_icalendar, folded
from generator.book.make import make_book
from generator.book.pages.written import CALENDAR
from generator.book.text import clean
from generator.plan.build import make_plan
from generator.plan.readers import seen_by
from tests.book.sites import Site
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

DAY = datetime.date(2026, 8, 20)
KILL_WORDS = "Kill the sod in autumn"


def owner_file(data: Data, as_of: datetime.date = AS_OF) -> bytes:
    plan = make_plan(inventory_of(data), SEASON, as_of)
    return make_book(plan).files[CALENDAR]


def hired_file(data: Data) -> bytes:
    return make_book(seen_by(planned(data), inventory_of(data).readers[0])).files[CALENDAR]


def read_back(content: bytes) -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(content).walk("VEVENT"))


def days_of(event: Any) -> tuple[datetime.date, datetime.date]:
    """First and last day; the end that a file names is the day after."""
    return event["DTSTART"].dt, event["DTEND"].dt - datetime.timedelta(days=1)


def one_of(events: Iterable[Any], words: str) -> Any:
    (found,) = [one for one in events if words in str(one["SUMMARY"])]
    return found


def cleared() -> Data:
    return small_property(full_card(full_use()))


def test_the_days_of_an_event_as_the_standard_counts_them() -> None:
    """RFC 5545, 3.6.1: an event from 28 June to 8 July 2007 has DTEND 9 July, not inclusive."""
    one = Event("a", datetime.date(2007, 6, 28), datetime.date(2007, 7, 8), "Festival", ())
    content = as_icalendar("Land", datetime.date(2007, 1, 1), [("1", one)])
    assert b"DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n" in content
    (event,) = read_back(content)
    assert days_of(event) == (one.first, one.last)


def test_every_job_with_dates_is_an_event_of_its_open_days() -> None:
    plan = planned(cleared())
    events = read_back(owner_file(cleared()))
    for job in plan.jobs:
        assert job.days is None
        event = one_of(events, f"{job.step.name}: Lane screen")
        assert days_of(event) == (job.dates.opens, job.dates.closes)
        assert event["LOCATION"] == "Lane screen"
        assert f"work/{job.address}.html" in str(event["DESCRIPTION"])
        assert "As of 20 August 2026" in str(event["DESCRIPTION"])
        says_label = "Read the label on the container again" in str(event["DESCRIPTION"])
        assert says_label == (job.step.operation == "spray")


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
    windows = [one for one in read_back(owner_file(data)) if kill.step.name in str(one["SUMMARY"])]
    assert [days_of(one) for one in windows] == list(kill.days.left)
    assert len({str(one["UID"]) for one in windows}) == 2
    quiet = one_of(read_back(owner_file(data)), "Quiet: all places")
    assert days_of(quiet) == (datetime.date(2026, 9, 15), datetime.date(2026, 9, 17))


def test_a_job_with_a_stop_says_so_first() -> None:
    stopped = one_of(read_back(owner_file(small_property())), "Stop, not yet")
    assert str(stopped["DESCRIPTION"]).startswith("A stop stands on this job.")
    assert stopped["STATUS"] == "TENTATIVE"
    assert stopped.walk("VALARM")
    assert all("Stop, not yet" in str(one["DESCRIPTION"]) for one in stopped.walk("VALARM"))


def test_a_job_that_is_done_calls_its_event_off() -> None:
    data = cleared()
    before = one_of(read_back(owner_file(data)), KILL_WORDS)
    done = {"id": "e-1", "done_on": "2026-09-05", "job": {"planting": "lane-27",
            "step": "autumn_kill", "finished": True}}  # fmt: skip
    data["log"] = {"entries": [done]}
    after = one_of(read_back(owner_file(data, datetime.date(2026, 9, 6))), KILL_WORDS)
    assert str(after["SUMMARY"]).startswith("Done: ")
    assert after["STATUS"] == "CANCELLED"
    assert after.walk("VALARM") == []
    assert after["UID"] == before["UID"]
    assert after["SEQUENCE"] > before["SEQUENCE"]


def test_reminders_come_on_a_morning_some_days_before() -> None:
    event = one_of(read_back(owner_file(cleared())), KILL_WORDS)
    first, last = days_of(event)
    midnight = datetime.datetime.combine(first, datetime.time())
    end = datetime.datetime.combine(last, datetime.time()) + datetime.timedelta(days=1)
    on = {
        (end if alarm["TRIGGER"].params["RELATED"] == "END" else midnight) + alarm["TRIGGER"].dt
        for alarm in event.walk("VALARM")
    }
    nine = datetime.time(9)
    wanted = [first - datetime.timedelta(days=7), last - datetime.timedelta(days=3)]
    assert on == {datetime.datetime.combine(day, nine) for day in wanted if day >= AS_OF}
    assert all(alarm["ACTION"] == "DISPLAY" for alarm in event.walk("VALARM"))


@pytest.mark.parametrize(
    ("days_before", "of_last_day", "hours"), [(0, False, 9), (7, False, -159), (0, True, -15),
                                              (3, True, -87)],
)  # fmt: skip
def test_a_reminder_counts_from_the_midnight_of_its_end(
    days_before: int, of_last_day: bool, hours: int
) -> None:
    reminder = Reminder(days_before, of_last_day, "Soon")
    one = Event("a", DAY + datetime.timedelta(days=9), DAY + datetime.timedelta(days=20), "Job",
                (), reminders=(reminder,))  # fmt: skip
    (event,) = read_back(as_icalendar("Land", DAY, [("1", one)]))
    (alarm,) = event.walk("VALARM")
    assert alarm["TRIGGER"].dt == datetime.timedelta(hours=hours)


def test_a_reminder_of_a_day_gone_by_is_left_out() -> None:
    def reminded(first: datetime.date) -> int:
        one = Event("a", first, first, "Job", (), reminders=(Reminder(7, False, "Soon"),))
        return len(read_back(as_icalendar("Land", DAY, [("1", one)]))[0].walk("VALARM"))

    assert reminded(DAY + datetime.timedelta(days=7)) == 1
    assert reminded(DAY + datetime.timedelta(days=6)) == 0


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
    sprayed = {"id": "e-1", "done_on": "2026-08-20", "used": [{"item": "brew",
               "amount_fl_oz": 10}], "sprayed": {"place": "lane", "treated_ac": 0.2}}  # fmt: skip
    cards = cleared()
    cards["log"] = {"entries": [sprayed]}
    kept = one_of(read_back(owner_file(cards)), "Keep out")
    # the card's twelve hours, counted as a whole day after the spraying
    assert days_of(kept) == (DAY, DAY + datetime.timedelta(days=1))


def test_another_reader_has_their_jobs_alone_under_the_names_they_know() -> None:
    data = cleared()
    data["dates"] = {"dates": [{"id": "rest", "kind": "quiet", "first": "2026-09-01",
                                "last": "2026-09-02", "places": "all"}]}  # fmt: skip
    mine, theirs = read_back(owner_file(data)), read_back(hired_file(data))
    assert {str(one["LOCATION"]) for one in theirs} == {"Strip 1"}
    assert [one for one in theirs if "Quiet" in str(one["SUMMARY"])] == []
    assert not {str(one["UID"]) for one in mine} & {str(one["UID"]) for one in theirs}
    text = hired_file(data).decode().replace("\r\n ", "")
    assert "Lane" not in text
    assert data["property"]["name"] not in text


def test_another_reader_s_file_keeps_its_bytes_when_what_is_private_changes() -> None:
    before, after = cleared(), cleared()
    after["property"] |= {"name": "Elsewhere", "location_lat_lon": [44.1, -90.2],
                          "time_zone": "America/Denver"}  # fmt: skip
    after["screens"]["screens"][0] |= {"name": "Another name", "note": "private"}
    renamed = copy.deepcopy(after)
    renamed["screens"]["screens"][0] |= {"id": "ditch", "was": ["lane"]}
    assert hired_file(before) == hired_file(after) == hired_file(renamed)
    assert owner_file(before) != owner_file(after)


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


def test_a_site_carries_each_reader_s_own_calendar(demo_sites: dict[str, Site]) -> None:
    uids: set[str] = set()
    for site in demo_sites.values():
        content = (site.folder / CALENDAR).read_bytes()
        assert content == site.book.files[CALENDAR]
        events = read_back(content)
        mine = {str(one["UID"]) for one in events}
        assert len(mine) == len(events) > 0
        assert not mine & uids
        uids |= mine
        assert f'href="{CALENDAR}"' in (site.folder / "work.html").read_text(encoding="utf-8")
        assert all(one["DTSTART"].dt <= one["DTEND"].dt for one in events)

"""The year on one leaf and the days to order by, read back against the plan."""

import datetime
import re
from collections.abc import Iterator

from generator.book.charts.order_line import TimeLine
from generator.book.pages.dates import DATE_KINDS
from generator.book.pages.pictures_year import _in_short
from generator.book.pages.written import everything_to_do
from generator.plan.model.job import Job
from tests.book.charts.drawn import day, name_of, number, pictures, shapes
from tests.book.reading import Element
from tests.book.sites import Site

ONE_DAY = datetime.timedelta(days=1)
BAR = re.compile(r"M(\d+),([\d.]+)h(\d+)v([\d.]+)h-\3z")


def _leaf(pages: dict[str, Element]) -> Element:
    (leaf,) = [one for one in pictures(pages["year.html"]) if name_of(one) == "leaf"]
    return leaf


def _bars(leaf: Element) -> Iterator[tuple[float, datetime.date, datetime.date]]:
    """Each bar: its middle, its first day and its last. A step's is measured, in whole days."""
    begins = day(leaf.attributes["data-first"])
    (sheet,) = leaf.all("svg")[1:]
    (path,) = sheet.all("path")
    assert sheet.attributes["viewbox"].split()[2] == "365"
    for left, top, days, tall in BAR.findall(path.attributes["d"]):
        first = begins + int(left) * ONE_DAY
        yield float(top) + float(tall) / 2, first, first + (int(days) - 1) * ONE_DAY
    for bar in shapes(leaf, "from"):
        first, last = (day(bar.attributes[f"data-{end}"]) for end in ("from", "to"))
        yield number(bar, "y") + number(bar, "height") / 2, first, last


def _rows(leaf: Element) -> dict[str, set[datetime.date]]:
    """The days of each row by its name, as the bars that lie on its line have them."""
    (names,) = leaf.all("g", "names")
    by_place = {number(one, "y"): one.text() for one in names.all("text")}
    rows: dict[str, set[datetime.date]] = {name: set() for name in by_place.values()}
    for middle, first, last in _bars(leaf):
        name = by_place[min(by_place, key=lambda y: abs(y - 4 - middle))]
        rows[name] |= {first + n * ONE_DAY for n in range((last - first).days + 1)}
    return rows


def _open_days(owner: Site) -> dict[str, set[datetime.date]]:
    """Each step's open days in the season, those left out on which it must not be done."""
    first, last = (
        datetime.date(owner.plan.season - 1, 9, 1),
        datetime.date(owner.plan.season, 8, 31),
    )
    found: dict[str, set[datetime.date]] = {}
    for job, _, _ in everything_to_do(owner.plan):
        opens, closes = job.dates.opens, job.dates.closes
        if opens is None or closes is None:
            continue
        not_on = job.days.not_on if isinstance(job, Job) and job.days is not None else ()
        days = {opens + n * ONE_DAY for n in range((closes - opens).days + 1)}
        days = {d for d in days if first <= d <= last and not any(a <= d <= b for a, b in not_on)}
        if days:
            found.setdefault(job.step.name, set()).update(days)
    return found


def test_every_step_has_a_row_with_the_days_that_are_left(
    owner: Site, pages: dict[str, Element]
) -> None:
    """Independent: counted day by day."""
    rows, open_days = _rows(_leaf(pages)), _open_days(owner)
    assert len(open_days) > 40
    assert {name: rows[name] for name in open_days} == open_days
    dates = rows.keys() - open_days.keys()
    assert {"Hunting", DATE_KINDS["quiet"]} <= dates
    assert len(dates) < 10


def test_bars_of_kept_dates_lie_where_their_days_lie(
    owner: Site, pages: dict[str, Element]
) -> None:
    """Independent: an ordinary year counted day by day from Sep 1."""
    leaf = _leaf(pages)
    first = datetime.date(owner.plan.season - 1, 9, 1)
    assert list(shapes(leaf, "from"))
    left, across = number(leaf, "data-left"), number(leaf, "data-across")
    for bar in shapes(leaf, "from"):
        begins, ends = (day(bar.attributes[f"data-{end}"]) for end in ("from", "to"))
        assert abs(number(bar, "x") - left - across * (begins - first).days / 365) < 0.01
        assert abs(number(bar, "width") - across * ((ends - begins).days + 1) / 365) < 0.01


def test_days_of_a_row_are_said_as_short_as_they_may_be() -> None:
    day = datetime.date
    one, two = (day(2026, 9, 10), day(2026, 9, 20)), (day(2026, 11, 28), day(2027, 1, 5))
    assert _in_short((one,)) == "Sep 10 to 20"
    assert _in_short((one, two)) == "Sep 10 to 20, Nov 28 to Jan 5"
    assert _in_short(((day(2027, 2, 1), day(2027, 2, 1)),)) == "Feb 1"
    assert _in_short((one, two, (day(2027, 6, 1), day(2027, 6, 2)))) == (
        "Sep 10 to Jun 2, not all of it"
    )


def test_days_to_order_by_are_those_of_the_plan(owner: Site, pages: dict[str, Element]) -> None:
    plan = owner.plan
    (orders,) = pages["buy.html"].all("div", "orders")
    due = {
        (max(one.order.by, plan.as_of), one.item.words)
        for one in plan.buying.purchases
        if not one.nothing and one.order.by is not None and one.order.state in ("by", "now")
    }
    assert len(due) > 5
    dots = [day(one.attributes["data-by"]) for one in shapes(orders, "by")]
    assert sorted(dots) == sorted({by for by, _ in due})
    said = orders.text()
    assert all(words in said for _, words in due)
    # whole months, up to that of a week after the last
    last = max(dots) + 7 * ONE_DAY
    months = (plan.as_of.replace(day=1), (last.replace(day=28) + 4 * ONE_DAY).replace(day=1))
    for one in shapes(orders, "by"):
        by = day(one.attributes["data-by"])
        share = (by - months[0]).days / (months[1] - months[0]).days
        assert abs(number(one, "cx") - 100 * share) < 0.01


def test_a_line_of_time_has_whole_months() -> None:
    line = TimeLine(datetime.date(2026, 11, 30), datetime.date(2027, 1, 1))
    assert [str(month) for month in line.months()] == [
        "2026-11-01", "2026-12-01", "2027-01-01", "2027-02-01"
    ]  # fmt: skip
    assert line.share(datetime.date(2027, 2, 1)) == 1

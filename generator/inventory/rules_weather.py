"""Rules between fields of the weather."""

from collections.abc import Iterator

from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.inventory.weather import LAST_IN_SPRING, MONTHS_IN_YEAR, SUMMARIES

FIRST_MONTH_OF_AUTUMN = 8


def _normals(inventory: Inventory) -> Iterator[Broken]:
    for normals in inventory.normals[1:]:
        yield Broken(normals.where, "normals are typed twice", "the normals nearest to you, once")
    for normals in inventory.normals:
        for name, months in (("highs", normals.highs_f), ("lows", normals.lows_f)):
            if len(months) != MONTHS_IN_YEAR:
                what = f"{len(months)} {name} for the months of a year"
                yield Broken(normals.where_of(f"{name}_f"), what, "twelve, January first")
        # of lists that are too short, which is told above, the months there are
        for high, low in zip(normals.highs_f, normals.lows_f, strict=False):
            if low.value > high.value:
                what = f"a low of {low.typed:g} beside a high of {high.typed:g}"
                yield Broken(typed_at(low), what, "the low of a month at most its high")


def _freeze_dates(inventory: Inventory) -> Iterator[Broken]:
    seen: set[tuple[str, float]] = set()
    for freeze in inventory.freeze_dates:
        in_spring = freeze.when == LAST_IN_SPRING
        days = (freeze.early, freeze.typical, freeze.late)
        elsewhere = [(month < FIRST_MONTH_OF_AUTUMN) != in_spring for month, _ in days]
        # before the order, in which a day of another half of the year can stand nowhere
        if any(elsewhere):
            accepted = "January to July for the last in spring, else August to December"
            where = freeze.where_of(("early", "typical", "late")[elsewhere.index(True)])
            yield Broken(where, "a freeze in another half of the year", accepted)
        elif list(days) != sorted(days):
            what = "the days of a freeze are not in order"
            accepted = "early, then typical, then late: of a last freeze, late is the safe day"
            yield Broken(
                freeze.where_of("typical" if days[1] < days[0] else "late"), what, accepted
            )
        if (freeze.when, freeze.threshold_f.value) in seen:
            yield Broken(
                freeze.where_of("when"), "the same freeze is typed twice", "each freeze once"
            )
        seen.add((freeze.when, freeze.threshold_f.value))


def _emergence(inventory: Inventory) -> Iterator[Broken]:
    seen: set[tuple[str, str]] = set()
    for seedlings in inventory.emergence:
        if seedlings.most_days < seedlings.fewest_days:
            what = f"at most {seedlings.most_days} days and at least {seedlings.fewest_days}"
            yield Broken(seedlings.where_of("most_days"), what, "fewest_days of at most most_days")
        if (seedlings.species, seedlings.method) in seen:
            what = f"{shown_value(seedlings.species)} is typed twice for one way of sowing"
            yield Broken(
                seedlings.where_of("species"), what, "each species once for each way of sowing"
            )
        seen.add((seedlings.species, seedlings.method))


def _units_of_files(inventory: Inventory) -> Iterator[Broken]:
    for station in inventory.stations:
        if station.units is not None and station.kind != SUMMARIES:
            what = f"units are stated for a file of the kind {station.kind}, which has its own"
            yield Broken(station.where_of("units"), what, f"units only beside kind: {SUMMARIES}")


WEATHER_RULES = (
    Rule("F420", "Normals are twelve highs and twelve lows.", _normals),
    Rule("F421", "An early freeze comes before a late one.", _freeze_dates),
    Rule("F422", "What was seen of seedlings is typed once, fewest days first.", _emergence),
    Rule("F423", "Units are stated where a file can have several.", _units_of_files),
)

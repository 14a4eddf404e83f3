"""The page of season markers: each with what it rests on and every year of the record."""

import datetime

from markupsafe import Markup

from generator.book.charts.past_years import YearDots, years_drawn
from generator.book.origin import origin_words
from generator.book.pages.written import YEAR, Written, from_template
from generator.dataclass import dataclass
from generator.plan.model.markers import HeatOfYears, MarkerFound, MarkerSeen
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.reference.library import methods, values

_TITLE = "Season markers"
_PARTS = ("early", "typical", "late")
KINDS = {
    "ghcn_by_station": "daily record by element",
    "daily_summaries": "daily summaries",
    "plain": "plain daily record",
}
HEAT_WORDS = {
    "simple_degree_days_f": "simple average",
    "modified_degree_days_f": "modified: highs and lows kept between base and top",
    "sine_degree_days_f": "single sine",
    "cut_sine_degree_days_f": "single sine, cut at the top",
}
_FREEZES = {"last_in_spring": "last of spring", "first_in_autumn": "first of fall"}
SOWN_HOW = {"frost_seed": "frost seeded", "drill": "drilled"}


@dataclass(frozen=True, slots=True)
class MarkerShown:
    """One marker as the page shows it: days of the season, what it rests on, its picture."""

    found: MarkerFound
    days: tuple[datetime.date | None, ...]
    origin: str
    method: str
    years_used: int
    picture: Markup | None


def signs_page(plan: Plan) -> list[Written]:
    """Return the page of season markers, or none where nothing of the weather is typed."""
    weather = plan.weather
    if weather is None:
        return []
    signs = [_shown(sign, plan) for sign in weather.signs]
    others = [_shown(sign, plan) for sign in weather.others]
    return [
        from_template(
            plan,
            "signs.md",
            _TITLE,
            YEAR,
            "signs",
            ["weather", "freeze", "thaw", "soil", *(sign.name for sign in weather.signs)],
            weather=weather,
            signs=signs,
            others=others,
            seen=seen_rows(plan),
            every=[*signs, *others],
            left=[(_in_season(left.from_day, plan), left) for left in weather.left],
            heat=[_heat(heat) for heat in weather.heat],
            methods=methods(),
            values=values(),
            kinds=KINDS,
            sown_how=SOWN_HOW,
            freezes=[
                (
                    freeze,
                    _FREEZES[freeze.when],
                    [_in_season(getattr(freeze, part), plan) for part in _PARTS],
                )
                for freeze in weather.freeze_dates
            ],
            emergence=[
                (emergence, [_in_season(getattr(emergence.days, part), plan) for part in _PARTS])
                if emergence.days is not None
                else (emergence, None)
                for emergence in weather.emergence
            ],
            findings=[
                finding
                for finding in plan.findings
                if finding.subject.kind in ("marker", "station")
            ],
        )
    ]


@dataclass(frozen=True, slots=True)
class SeenRow:
    """One marker as the owner saw it: this season, how often, and the days of ten seasons."""

    name: str
    this_season: tuple[datetime.date, ...]
    every: tuple[datetime.date, ...]
    seasons_count: int
    days: tuple[datetime.date, ...]


def seen_rows(plan: Plan) -> list[SeenRow]:
    """Return the markers that the owner saw; none for another reader."""
    return [_seen_row(seen, plan) for seen in plan.seen]


def _seen_row(seen: MarkerSeen, plan: Plan) -> SeenRow:
    here = seen.seasons.get(plan.season)
    days = () if here is None else tuple(dict.fromkeys((here.first, here.last)))
    own = seen.days
    return SeenRow(
        seen.name,
        days,
        tuple(one.first for one in seen.seasons.values()),
        len(seen.seasons),
        tuple(_in_season(getattr(own, part), plan) for part in _PARTS) if own is not None else (),
    )


def _in_season(day: tuple[int, int], plan: Plan) -> datetime.date:
    return day_in_season(day, plan.season)


def _shown(found: MarkerFound, plan: Plan) -> MarkerShown:
    days: tuple[datetime.date | None, ...] = (None, None, None)
    if found.days is not None:
        days = tuple(_in_season(getattr(found.days, part), plan) for part in _PARTS)
    return MarkerShown(
        found, days, origin_words(found), _method(found), len(found.years), _picture(found)
    )


def _method(found: MarkerFound) -> str:
    words = methods()[found.method].words if found.method else ""
    return words[:1].upper() + words[1:]


def _heat(heat: HeatOfYears) -> tuple[str, str, str, str]:
    sums = (heat.cool_degree_days_f, heat.typical_degree_days_f, heat.warm_degree_days_f)
    cool, typical, warm = (f"{each:,.0f}" for each in sums)
    return HEAT_WORDS[heat.method], cool, typical, warm


def _picture(found: MarkerFound) -> Markup | None:
    if not found.years:
        return None
    lines = (
        tuple((part, getattr(found.days, part)) for part in _PARTS)
        if found.days is not None
        else ()
    )
    title = f"{found.name} in every year of the record"
    return years_drawn(YearDots(f"years-{found.sign.replace('_', '-')}", title, found.years, lines))

"""The page of season signs: every sign with what it rests on and every year of the record."""

import datetime
from dataclasses import dataclass

from markupsafe import Markup

from generator.book.charts.past_years import YearDots, years_drawn
from generator.book.origin import origin_words
from generator.book.pages.written import WORK, Written, from_template
from generator.plan.model.markers import HeatOfYears, MarkerFound
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.plan.season.weather_findings import SIGN
from generator.reference.library import methods, values

_TITLE = "Season signs"
_PARTS = ("early", "typical", "late")
KINDS = {
    "ghcn_by_station": "daily record by element",
    "daily_summaries": "daily summaries",
    "plain": "plain daily record",
}
HEAT_WORDS = {
    "simple_degree_days_f": "simple average",
    "modified_degree_days_f": "modified, highs and lows held between base and top",
    "sine_degree_days_f": "single sine",
    "cut_sine_degree_days_f": "single sine, cut at the top",
}
_FREEZES = {"last_in_spring": "last of spring", "first_in_autumn": "first of autumn"}
SOWN_HOW = {"frost_seed": "frost seeded", "drill": "drilled"}


@dataclass(frozen=True, slots=True)
class MarkerShown:
    """One sign as the page shows it: days of the season, what it rests on, its picture."""

    found: MarkerFound
    days: tuple[datetime.date | None, ...]
    origin: str
    method: str
    years_used: int
    picture: Markup | None


def signs_page(plan: Plan) -> list[Written]:
    """Return the page of season signs, or none where nothing of the weather is typed."""
    weather = plan.weather
    if weather is None:
        return []
    signs = [_shown(one, plan) for one in weather.signs]
    others = [_shown(one, plan) for one in weather.others]
    ids = {one.station.id for one in weather.every_station()}
    return [
        from_template(
            plan,
            "signs.md",
            _TITLE,
            WORK,
            "signs",
            ["weather", "freeze", "thaw", "soil", *(one.name for one in weather.signs)],
            weather=weather,
            signs=signs,
            others=others,
            every=[*signs, *others],
            left=[(_in_season(one.from_day, plan), one) for one in weather.left],
            heat=[_heat(one) for one in weather.heat],
            methods=methods(),
            values=values(),
            kinds=KINDS,
            sown_how=SOWN_HOW,
            freezes=[
                (one, _FREEZES[one.when], [_in_season(getattr(one, part), plan) for part in _PARTS])
                for one in weather.freeze_dates
            ],
            emergence=[
                (one, [_in_season(getattr(one.days, part), plan) for part in _PARTS])
                if one.days is not None
                else (one, None)
                for one in weather.emergence
            ],
            findings=[
                one for one in plan.findings if one.subject in ids or one.subject.startswith(SIGN)
            ],
        )
    ]


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


def _heat(one: HeatOfYears) -> tuple[str, str, str, str]:
    sums = (one.cool_degree_days_f, one.typical_degree_days_f, one.warm_degree_days_f)
    cool, typical, warm = (f"{each:,.0f}" for each in sums)
    return HEAT_WORDS[one.method], cool, typical, warm


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

"""Constants of the program that a page lists beside the values of the reference data."""

from collections.abc import Mapping

from generator.compute.buying import LET_GO_FRACTION
from generator.compute.climate_days import CLUSTER_COUNT, CLUSTER_DAYS
from generator.compute.plant_count import PLACEMENTS_PER_AC
from generator.plan.after.count_decisions import ASKED_FOR_YEARS, LOOK_FOR_DAYS
from generator.plan.after.weeding import NEAR_DAYS
from generator.plan.days.past_days import MOST_UNKNOWN
from generator.plan.days.wind_days import FEWEST_HOURS
from generator.plan.findings.order import DAYS_IN_YEAR
from generator.plan.labels.sowing_wait import MEETS_DAYS
from generator.plan.labels.spray_stops import MONTHS_BULLETIN_IS_GOOD
from generator.plan.model.spray_record import MORE_BY_A_TENTH
from generator.plan.season.marker_years import MOST_MISSING, MOST_WITHOUT
from generator.plan.spraying.spray_job import (
    LABEL_GOOD_FOR_YEARS,
    MARKS_MAY_MISS_BY,
    NOZZLES_MAY_DIFFER,
)
from generator.plan.usual.days_to_come import MOST_RECORDS
from generator.plan.views.before_next import NEXT
from generator.working import Reference

_COMMON = "common_practice"


def _fixed(name: str, value: float, unit: str, told: str, source: str = _COMMON) -> Reference:
    return Reference(name, value, unit, source, told)


FIXED: Mapping[str, Reference] = {
    figure.name: figure
    for figure in (
        _fixed("next_jobs_days", NEXT.days, "days", "a month ahead"),
        _fixed(
            "larger_than_the_place_fraction",
            MORE_BY_A_TENTH - 1,
            "fraction",
            "a measured place may be off by so much, and no more",
        ),
        _fixed("nozzles_may_differ_fraction", NOZZLES_MAY_DIFFER, "fraction", "of the mean"),
        _fixed("marks_may_miss_by_fraction", MARKS_MAY_MISS_BY, "fraction", "of your rate"),
        _fixed("good_for_days", DAYS_IN_YEAR, "days", "a year"),
        _fixed(
            "label_good_for_years", LABEL_GOOD_FOR_YEARS, "years", "look whether a newer one is out"
        ),
        _fixed(
            "bulletin_good_for_months_count", MONTHS_BULLETIN_IS_GOOD, "count", "months before use"
        ),
        _fixed("spraying_meets_sowing_days", MEETS_DAYS, "days", "four weeks"),
        _fixed(
            "placements_per_ac_count",
            PLACEMENTS_PER_AC,
            "count",
            "at least four locations on an acre",
            "osu_stand_check",
        ),
        _fixed("weeds_beside_a_count_days", NEAR_DAYS, "days", "a month before or after"),
        _fixed("first_fall_count_days", LOOK_FOR_DAYS, "days", "the weeks of the first fall"),
        _fixed("count_asked_for_years", ASKED_FOR_YEARS, "years", "growing seasons"),
        _fixed("freezes_and_thaws_count", CLUSTER_COUNT, "count", "days that freeze and thaw"),
        _fixed("freezes_and_thaws_days", CLUSTER_DAYS, "days", "a week"),
        _fixed("year_may_miss_days", MOST_MISSING, "days", "of the days up to the marker"),
        _fixed("years_may_lack_it_fraction", MOST_WITHOUT, "fraction", "one year in ten"),
        _fixed("day_may_miss_fraction", MOST_UNKNOWN, "fraction", "of the days left"),
        _fixed("fewest_hours_of_wind_hours", FEWEST_HOURS, "hours", "of the hours of work"),
        _fixed("let_go_fraction", LET_GO_FRACTION, "fraction", "of a package"),
        _fixed("days_to_come_count", MOST_RECORDS, "count", "records with a day to come"),
    )
}

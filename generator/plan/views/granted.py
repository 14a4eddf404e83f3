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
from generator.plan.land.kept_kinds import EDGE_DOUBT_TIMES
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


FIXED: Mapping[str, Reference] = {
    figure.name: figure
    for figure in (
        Reference("next_jobs_days", NEXT.days, "days", _COMMON, "a month ahead"),
        Reference(
            "larger_than_the_place_fraction",
            MORE_BY_A_TENTH - 1,
            "fraction",
            _COMMON,
            "a measured place may be off by so much, and no more",
        ),
        Reference(
            "nozzles_may_differ_fraction", NOZZLES_MAY_DIFFER, "fraction", _COMMON, "of the mean"
        ),
        Reference(
            "marks_may_miss_by_fraction", MARKS_MAY_MISS_BY, "fraction", _COMMON, "of your rate"
        ),
        Reference(
            "edge_doubt_count",
            EDGE_DOUBT_TIMES,
            "count",
            _COMMON,
            "a bank lies no farther from the water than a label keeps from it",
        ),
        Reference("good_for_days", DAYS_IN_YEAR, "days", _COMMON, "a year"),
        Reference(
            "label_good_for_years",
            LABEL_GOOD_FOR_YEARS,
            "years",
            _COMMON,
            "look whether a newer one is out",
        ),
        Reference(
            "bulletin_good_for_months_count",
            MONTHS_BULLETIN_IS_GOOD,
            "count",
            _COMMON,
            "months before use",
        ),
        Reference("spraying_meets_sowing_days", MEETS_DAYS, "days", _COMMON, "four weeks"),
        Reference(
            "placements_per_ac_count",
            PLACEMENTS_PER_AC,
            "count",
            "osu_stand_check",
            "at least four locations on an acre",
        ),
        Reference(
            "weeds_beside_a_count_days", NEAR_DAYS, "days", _COMMON, "a month before or after"
        ),
        Reference(
            "first_fall_count_days", LOOK_FOR_DAYS, "days", _COMMON, "the weeks of the first fall"
        ),
        Reference("count_asked_for_years", ASKED_FOR_YEARS, "years", _COMMON, "growing seasons"),
        Reference(
            "freezes_and_thaws_count", CLUSTER_COUNT, "count", _COMMON, "days that freeze and thaw"
        ),
        Reference("freezes_and_thaws_days", CLUSTER_DAYS, "days", _COMMON, "a week"),
        Reference(
            "year_may_miss_days", MOST_MISSING, "days", _COMMON, "of the days up to the marker"
        ),
        Reference(
            "years_may_lack_it_fraction", MOST_WITHOUT, "fraction", _COMMON, "one year in ten"
        ),
        Reference("day_may_miss_fraction", MOST_UNKNOWN, "fraction", _COMMON, "of the days left"),
        Reference(
            "fewest_hours_of_wind_hours", FEWEST_HOURS, "hours", _COMMON, "of the hours of work"
        ),
        Reference("let_go_fraction", LET_GO_FRACTION, "fraction", _COMMON, "of a package"),
        Reference(
            "days_to_come_count", MOST_RECORDS, "count", _COMMON, "records with a day to come"
        ),
    )
}

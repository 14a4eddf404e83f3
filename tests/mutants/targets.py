"""Which modules are changed, and which tests may notice."""

from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
PACKAGE = CHECKOUT / "generator"
LISTED = Path(__file__).resolve().with_name("survivors.yaml")
# Clearance, limits, waits, tank: what is sprayed rests on them, so every survivor is explained.
EXPLAINED = (
    "plan.labels.clearance",
    "plan.labels.limit_stops",
    "plan.labels.yearly_sums",
    "plan.labels.may_count",
    "plan.after.waits",
    "plan.spraying.tank",
    "plan.spraying.tank_log",
    "plan.labels.history",
    "plan.spraying.tank_before",
)
COUNTED = (
    *(f"compute.{path.stem}" for path in sorted((PACKAGE / "compute").glob("[!_]*.py"))),
    "plan.labels.rates",
    "plan.after.waiting_days",
    "plan.labels.sowing_wait",
    "plan.doubts.doubt_wind",
    "plan.days.wind_days",
    "plan.season.season_markers",
    "plan.season.emergence",
    "plan.model.markers",
    "plan.season.marker_years",
    "plan.days.past_days",
    "plan.model.suited_days",
    "plan.after.counting",
    "plan.log.state",
    "plan.log.done",
    "plan.jobs.alternatives",
    "plan.jobs.typed_none",
    "plan.land.kept_off",
    "plan.land.near",
    "plan.placed.beside_walks",
    "plan.placed.beside_work",
    "plan.placed.misplaced",
    "plan.placed.mixing",
    "plan.placed.same_ground",
    "plan.placed.strips",
)
TARGETS = (*EXPLAINED, *COUNTED)
# No browser and no book: what these modules answer is held to account by the tests of answers.
TESTS = (
    "tests/compute",
    "tests/published",
    "tests/plan",
    "tests/structure/test_calculations.py",
)
# Takes a minute over every change there is, and asks nothing that is not asked elsewhere in less.
LEFT_OUT = ("tests/plan/test_nothing_of_a_stopped_spraying.py",)


def path_of(module: str) -> Path:
    """Return the file of a module named below the package, "plan.after.waits"."""
    return PACKAGE / f"{module.replace('.', '/')}.py"

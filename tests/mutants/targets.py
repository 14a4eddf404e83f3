"""Which modules are changed, and which tests may notice."""

from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
PACKAGE = CHECKOUT / "generator"
LISTED = Path(__file__).resolve().with_name("survivors.yaml")
# Clearance, limits, waits, tank: what is sprayed rests on them, so every survivor is explained.
EXPLAINED = (
    "plan.clearance",
    "plan.limit_stops",
    "plan.years",
    "plan.may_count",
    "plan.waits",
    "plan.tank",
    "plan.tank_log",
    "plan.history",
    "plan.tank_before",
)
COUNTED = (
    *(f"compute.{path.stem}" for path in sorted((PACKAGE / "compute").glob("[!_]*.py"))),
    "plan.rates",
    "plan.waiting_days",
    "plan.sowing_wait",
    "plan.doubt_wind",
    "plan.wind_days",
    "plan.season_signs",
    "plan.sign_emergence",
    "plan.sign_found",
    "plan.sign_years",
    "plan.count_on",
    "plan.counted",
    "plan.counting",
    "plan.state",
    "plan.done",
    "plan.instead",
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
    """Return the file of a module named below the package, "plan.waits"."""
    return PACKAGE / f"{module.replace('.', '/')}.py"

"""What is to be said of the spreader or drill of a sowing and of its catch tests."""

from collections.abc import Iterator, Mapping

from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Spreader, SpreaderTest
from generator.plan.asked import JobAsked
from generator.plan.caught_seed import other_seed_findings
from generator.plan.cautions import Caution
from generator.plan.findings import finding, older_than_a_year
from generator.plan.known_days import judged_on
from generator.plan.model import Finding, Sowing
from generator.plan.sowing import heaviest
from generator.reference.load import values
from generator.units import convert
from generator.working import Quantity


def spreader_findings(
    asked: JobAsked,
    parts: tuple[Sowing, ...],
    numbers: Mapping[str, Quantity],
    spreader: Spreader,
    test: SpreaderTest | None,
) -> Iterator[Finding]:
    """Yield cautions on a spreader: its test, two catches apart, seed that falls beside."""
    yield from untested(asked, parts, spreader, test)
    if test is None:
        return
    yield from _apart(asked, numbers, test)
    beside = [one.numbers["beside_lb"] for one in parts if "beside_lb" in one.numbers]
    if beside and asked.ground.width_ft is not None:
        figures = (
            ("The throw is wide", test.swath_ft),
            ("The place is wide", asked.ground.width_ft),
        )
        yield finding(Caution.FALLS_BESIDE, asked.job_id, test.where, figures)


def drill_findings(
    asked: JobAsked,
    parts: tuple[Sowing, ...],
    numbers: Mapping[str, Quantity],
    drill: Drill,
    test: DrillTest | None,
) -> Iterator[Finding]:
    """Yield cautions on a drill: its test, and two catches apart."""
    yield from untested(asked, parts, drill, test)
    if test is not None:
        yield from _apart(asked, numbers, test)


def untested(
    asked: JobAsked,
    parts: tuple[Sowing, ...],
    machine: Spreader | Drill | None,
    test: SpreaderTest | DrillTest | None,
) -> Iterator[Finding]:
    """Yield a caution where no catch test is with the seed, or it is with other seed, or old."""
    if test is None:
        at = machine.where if machine is not None else asked.planting.where
        yield finding(Caution.NO_SEED_TEST, asked.job_id, at, lot=heaviest(parts).id)
        return
    yield from other_seed_findings(asked, parts, test)
    if older_than_a_year(test.tested_on, judged_on(asked.dates, asked.season)):
        yield finding(Caution.OLD_CATCH_TEST, asked.job_id, test.where)


def _apart(
    asked: JobAsked, numbers: Mapping[str, Quantity], test: SpreaderTest | DrillTest
) -> Iterator[Finding]:
    """Yield a caution where the last two catches in the same setting lie too far apart."""
    apart, most = numbers.get("catches_apart_fraction"), values()["spreader_apart_pct"]
    if apart is not None and apart.value > convert(most.value, most.unit, "fraction"):
        figures = (("Apart", apart), ("At most", most))
        yield finding(Caution.CATCHES_APART, asked.job_id, test.where, figures)

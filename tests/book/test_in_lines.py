"""Findings on a terminal: where they are typed, as faults have it, with the figures of the page."""

import re

from generator.book.in_lines import WIDTH, finding_lines
from generator.plan.model.finding import Finding
from generator.working import Given, Reference, Withheld
from tests.plan.planned import planned
from tests.plan.sown import sown, the_planting

TYPED = Given("speed_mph", 40, "mph", 64.37376, "km_per_h", "equipment.yaml", 12, "page", "", 9)
LOW = Reference("usual_spraying_low_mph", 1, "mph", "stewardship_speed", "chart")
KEPT = Withheld("rate", "lb", "not shown while the job is stopped")


def one(**changes: object) -> Finding:
    told: dict[str, object] = {
        "code": "C404",
        "severity": "caution",
        "subject": "cart",
        "words": "Cart sprayer is fast.",
        "words_for_others": "",
        "cure": "Check it.",
        "place": "equipment.yaml:12",
        "column": 9,
    }
    return Finding(**(told | changes))  # type: ignore[arg-type]


def test_the_first_line_begins_with_the_place_as_a_fault_does() -> None:
    assert finding_lines(one()) == [
        "equipment.yaml:12:9 caution C404 cart",
        "    Cart sprayer is fast.",
        "    Check it.",
    ]
    assert finding_lines(one(column=0))[0] == "equipment.yaml:12 caution C404 cart"
    assert finding_lines(one(place="", column=0))[0] == "caution C404 cart"


def test_figures_stand_with_their_units_and_source_as_on_the_page() -> None:
    lines = finding_lines(
        one(figures=(("Speed", TYPED), ("Usual from", LOW), ("Rate", KEPT)),
            source="stewardship_speed")
    )  # fmt: skip
    told = " ".join(line.strip() for line in lines[2:-1])
    assert told.startswith(
        "Speed: 64.4 km/h (40 mph); Usual from: 1 mph; Rate: not shown while the job is stopped. "
        "Source: "
    )
    assert lines[-1] == "    Check it."


def test_every_finding_of_a_plan_is_short_lines_with_its_place() -> None:
    data = sown()
    the_planting(data)["seed"][0]["rate_pls_lb_per_ac"] = 80
    findings = planned(data).findings
    for finding in findings:
        head, *below = finding_lines(finding)
        assert not finding.place or re.match(r"\S+\.yaml:\d+:\d+ ", head), head
        assert max(map(len, below)) <= WIDTH
        assert all(label in " ".join(" ".join(below).split()) for label, _ in finding.figures)
    assert any(finding.code == "C403" and finding.figures for finding in findings)

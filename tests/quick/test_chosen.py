"""What `make quick` takes for near to a change."""

from pathlib import Path

import pytest

from tests.quick.chosen import CHECKOUT, LOOKS_AT, alike, chosen, modules, near, words_of
from tests.quick.faults import FAULTS, missing


def nearest(path: str, count: int) -> list[str]:
    """The files of tests that look at a changed file first."""
    taken, _ = chosen([CHECKOUT / path], {}, count)
    return [one.relative_to(CHECKOUT).as_posix() for one in taken]


@pytest.mark.parametrize(
    ("changed", "test"),
    [
        ("generator/compute/seed.py", "tests/compute/test_sowing.py"),
        ("generator/plan/after/waits.py", "tests/plan/test_waits.py"),
        ("generator/plan/spraying/tank.py", "tests/plan/test_spraying.py"),
        ("generator/inventory/zone_points.py", "tests/inventory/test_zone_points.py"),
        ("site_templates/pages/job.md.jinja", "tests/structure/test_templates.py"),
        ("content/chapters/mowing.md", "tests/structure/test_chapters.py"),
        ("generator/reference/data/values.yaml", "tests/structure/test_sources.py"),
        ("pyproject.toml", "tests/structure/test_packaging.py"),
    ],
)
def test_what_looks_at_a_file_is_near_to_it(changed: str, test: str) -> None:
    assert test in nearest(changed, 25)


def test_a_changed_test_is_run_itself_and_first() -> None:
    assert nearest("tests/plan/test_waits.py", 5) == ["tests/plan/test_waits.py"]


def test_the_words_of_a_module_are_its_names_findings_and_their_codes() -> None:
    words = words_of(CHECKOUT / "generator/plan/labels/limit_stops.py")
    assert {"limit_stops", "RATE_OUTSIDE", "S110", "max_per_year"} <= words
    assert "use" not in words


def test_what_is_about_the_same_is_more_alike() -> None:
    tank = CHECKOUT / "generator/plan/spraying/tank.py"
    sowing, spraying = (CHECKOUT / f"tests/plan/test_{one}.py" for one in ("seed_tags", "spraying"))
    assert 0 <= alike(tank, sowing) < alike(tank, spraying) <= 1


def test_as_many_are_taken_as_there_is_time_for_and_the_others_are_named() -> None:
    changed = [CHECKOUT / "generator/plan/after/waits.py"]
    every, none = chosen(changed, {}, float("inf"))
    assert none == []
    first, left = chosen(changed, dict.fromkeys(map(str, modules()), 1.0), 3)
    assert first == every[:3]
    assert sorted(first + left) == sorted(every)
    slow = {one.relative_to(CHECKOUT).as_posix(): 99.0 for one in every}
    assert chosen(changed, slow, 3)[0] == every[:1]


def test_the_faults_that_have_to_be_caught_are_still_to_be_made() -> None:
    assert len(FAULTS) == 20
    assert list(missing()) == []


def test_every_file_that_is_no_module_has_a_row() -> None:
    assert LOOKS_AT[-1][0] == ""
    for _, tests in LOOKS_AT:
        assert all((CHECKOUT / one).exists() for one in tests)
    assert near(Path(CHECKOUT / "a file of no kind.txt"))

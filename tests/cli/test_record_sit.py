"""`handbook record --sit`: one new file in the folder of sits, whole or not at all."""

from pathlib import Path

import pytest
import yaml

from generator.inventory.load import load_inventory
from tests.cli.test_commands import print_of, run
from tests.properties import Data, small_property, write_property

EVENING = ("--on", "2026-10-17", "--from", "15:00", "--until", "19:00", "--by", "a friend")


@pytest.fixture
def land(tmp_path: Path) -> Path:
    data: Data = small_property()
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak ladder"}]}
    data["routes"] = {"routes": [{"id": "walk", "name": "Lane walk", "serves": ["oak"]}]}
    return write_property(tmp_path / "land", data)


def test_a_sit_is_one_new_file_that_reads_as_it_was_typed(land: Path) -> None:
    before = print_of(land)
    walks = ("--walk-in", "walk", "--walk-out", "walk", "--note", "no: calm #2")
    result = run("record", land, "--sit", "oak", *EVENING, *walks)
    assert result.exit_code == 0, result.output
    path, told = result.output.splitlines()
    assert path == str(land / "sits" / "2026-10-17-oak.yaml")
    assert told == "A sit at Oak ladder, 2026-10-17, 15:00 to 19:00."
    after = print_of(land)
    assert {name: after[name] for name in before} == before
    assert after.keys() - before.keys() == {"sits", "sits/2026-10-17-oak.yaml"}
    (typed,) = yaml.safe_load(Path(path).read_text(encoding="utf-8"))["sits"]
    assert typed == {
        "id": "2026-10-17-oak", "sits_on": "2026-10-17", "stand": "oak", "from_time": "15:00",
        "until_time": "19:00", "person": "a friend", "walk_in": "walk", "walk_out": "walk",
        "note": "no: calm #2",
    }  # fmt: skip


def test_a_second_sit_of_the_day_gets_a_name_of_its_own(land: Path) -> None:
    for name in ("2026-10-17-oak", "2026-10-17-oak-2"):
        result = run("record", land, "--sit", "oak", *EVENING)
        assert result.output.splitlines()[0].endswith(f"{name}.yaml")
    loaded = load_inventory(land).inventory
    assert loaded is not None
    assert len(loaded.sits) == 2


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (("--sit", "oka", *EVENING), "--sit of this sit F208"),
        (("--sit", "oak", *EVENING[:4], "--until", "7pm"), "--until of this sit F485"),
        (("--sit", "oak", *EVENING, "--walk-in", "wlak"), "--walk-in of this sit F208"),
        (("--sit", "oak", *EVENING[:4]), "--sit needs --from and --until"),
        (("--sit", "oak", *EVENING, "--finished"), "none of the other options"),
        (("--from", "15:00", "--on", "2026-10-17"), "a sit is --sit with"),
    ],
)
def test_a_sit_with_a_fault_is_not_written(land: Path, typed: tuple[str, ...], said: str) -> None:
    before = print_of(land)
    result = run("record", land, *typed)
    assert result.exit_code != 0
    assert said in " ".join(result.output.split())
    assert print_of(land) == before


def test_days_as_they_are_typed_in_the_folder(land: Path) -> None:
    settings = land / "property.yaml"
    settings.write_text(f"{settings.read_text(encoding='utf-8')}dates: us\n", encoding="utf-8")
    result = run("record", land, "--sit", "oak", "--on", "10/17/2026", *EVENING[2:])
    assert result.exit_code == 0, result.output
    assert (land / "sits" / "2026-10-17-oak.yaml").is_file()

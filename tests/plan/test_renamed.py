"""Ids are names and nothing else: renamed throughout, no date and no amount changes."""

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import yaml

import generator
from tests.properties import Data, write_property
from tests.readers.scramble import new_names

DEMO = Path(__file__).parents[2] / "demo_property"
PACKAGE = Path(generator.__file__).parent
# Where a step plan or a species is named in a property.
NAMED = ("steps", "upkeep", "based_on", "species")
REPORT = """
import json, sys
from pathlib import Path
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan

loaded = load_inventory(Path(sys.argv[1]))
assert loaded.problems == (), loaded.problems
inventory = loaded.inventory
assert inventory is not None
season = inventory.property.season
plan = make_plan(inventory, season, inventory.property.as_of)
print(json.dumps(sorted(
    [one.step.id, str(one.dates.opens), str(one.dates.closes), one.state.kind,
     sorted(number.value for number in one.numbers.values())]
    for one in plan.jobs
)))
print(json.dumps(sorted(line.amount.value for line in plan.lines)))
"""


def reported(root: Path, folder: Path) -> str:
    """The dates, states and amounts of a property, by the package that stands in `root`."""
    done = subprocess.run(
        [sys.executable, "-c", REPORT, str(folder)],
        cwd=root,
        env={"PYTHONPATH": str(root)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def renamed_package(root: Path) -> dict[str, str]:
    """A copy of the package in which every step plan and species goes by another id."""
    copy = root / "generator"
    shutil.copytree(PACKAGE, copy, ignore=shutil.ignore_patterns("__pycache__"))
    data = copy / "reference/data"
    plans = [one.stem for one in sorted((data / "steps").iterdir())]
    kinds = [one["id"] for one in yaml.safe_load((data / "species.yaml").read_text("utf-8"))]
    names = {name: f"plan_{number}" for number, name in enumerate(plans)}
    names |= {name: f"kind-of-plant-{number}" for number, name in enumerate(kinds)}
    for path in [data / "species.yaml", *(data / "steps").iterdir()]:
        text = path.read_text(encoding="utf-8")
        text = re.sub(
            r"(?m)^( *- plan: |- id: |id: )([\w-]+)$",
            lambda found: found[1] + names.get(found[2], found[2]),
            text,
        )
        path.write_text(text, encoding="utf-8")
    return names


def named_anew(value: Any, names: dict[str, str], key: str = "") -> Any:
    """Data with every mention of a step plan or species replaced."""
    if isinstance(value, dict):
        return {name: named_anew(one, names, name) for name, one in value.items()}
    if isinstance(value, list):
        return [named_anew(one, names, key) for one in value]
    return names.get(value, value) if key in NAMED and isinstance(value, str) else value


def test_other_ids_of_plans_species_and_places_change_no_date_and_no_amount(
    tmp_path: Path,
) -> None:
    data: Data = {
        path.stem: yaml.safe_load(path.read_text(encoding="utf-8"))
        for path in sorted(DEMO.glob("*.yaml"))
    }
    names = renamed_package(tmp_path / "renamed")
    assert len(names) > 40
    ground = (*data["screens"]["screens"], *data["strips"]["strips"])
    places = {one["id"]: f"ground-{one['id'][::-1]}" for one in ground}
    other = named_anew(new_names(data, places), names)
    assert json.dumps(other, default=str) != json.dumps(data, default=str)
    before = reported(PACKAGE.parent, _with_folders(write_property(tmp_path / "before", data)))
    after = reported(tmp_path / "renamed", _with_folders(write_property(tmp_path / "after", other)))
    assert len(json.loads(before.splitlines()[0])) > 8
    assert after == before


def _with_folders(folder: Path) -> Path:
    """The same with what lies in folders of the demo: its weather, its shapes, its heights."""
    for one in DEMO.iterdir():
        if one.is_dir():
            shutil.copytree(one, folder / one.name)
    return folder

"""What reads weather files is imported where there are stations, and not before."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.plan.weathered import days, weathered
from tests.properties import Data, small_property, write_property

CHECK = """
import sys
from generator.cli import main
try:
    main(["check", sys.argv[1]])
except SystemExit as ended:
    assert not ended.code, ended.code
print("generator.inventory.weather_days" in sys.modules, "numpy" in sys.modules)
"""


@pytest.mark.parametrize(
    ("data", "said"),
    [(small_property(), "False False"), (weathered(days()), "True False")],
    ids=["without", "with"],
)
def test_weather_is_read_only_where_there_is_some(data: Data, said: str, tmp_path: Path) -> None:
    land = write_property(tmp_path / "land", data)
    done = subprocess.run(
        [sys.executable, "-c", CHECK, str(land)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-1] == said

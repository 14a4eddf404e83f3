"""The library that measures is imported when there is something to measure, and not before."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.properties import Data, small_property, write_property

CHECK = """
import sys
from generator.cli import main
try:
    main(["check", sys.argv[1], "--strict"])
except SystemExit as ended:
    assert not ended.code, ended.code
print("pyproj" in sys.modules)
"""
OUTLINE = [[41.0, -93.0], [41.002, -93.0], [41.002, -92.998], [41.0, -92.998]]


def with_outline(data: Data) -> Data:
    data["screens"]["screens"][0] |= {"area_lat_lon": OUTLINE}
    return data


@pytest.mark.parametrize(
    ("data", "imported"),
    [(small_property(), "False"), (with_outline(small_property()), "True")],
    ids=["without-points", "with-points"],
)
def test_a_check_imports_it_only_where_there_are_points(
    data: Data, imported: str, tmp_path: Path
) -> None:
    data["screens"]["screens"][0]["plantings"] = []
    del data["readers"]
    land = write_property(tmp_path / "land", data)
    done = subprocess.run(
        [sys.executable, "-c", CHECK, str(land)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-1] == imported

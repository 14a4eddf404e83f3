"""Reads a file of reference data as plain text values."""

from pathlib import Path
from typing import Any

import yaml

from generator.kept import STORE
from generator.working import Reference

DATA = Path(__file__).parent / "data"
# All as text, as in a property folder: YAML would make false of `no` and a date of a day.
_Loader: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


def read_data(name: str) -> Any:
    """Return what a file of the data folder holds; every value in it is text."""
    text = (DATA / name).read_text(encoding="utf-8")
    return STORE.made_of(f"yaml {yaml.__version__}", text, _parsed)


def _parsed(text: str) -> Any:
    return yaml.load(text, Loader=_Loader)


def value_of(entry: dict[str, str]) -> Reference:
    """Return a value with its unit, its source and where in the source it stands."""
    return Reference(
        entry["name"], float(entry["value"]), entry["unit"], entry["source"], entry["locator"]
    )

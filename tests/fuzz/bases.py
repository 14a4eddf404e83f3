"""The tiny properties that are damaged, and the values that any of them types for a key."""

from __future__ import annotations

import functools
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from tests.inventories.overlaid import GOOD, HERE
from tests.plan.by_hand import cases
from tests.plan.by_hand import data_of as case_data
from tests.plan.weathered import FREEZE, NORMALS, weathered
from tests.properties import Data, property_data, small_property
from tests.properties_tank import three_in_the_tank

STARTER = Path(__file__).resolve().parents[2] / "generator" / "starter"
MOST_VALUES = 40


@dataclass(frozen=True)
class Base:
    """A property to damage: what stands in its files of YAML, and the texts of all its files."""

    name: str
    data: dict[str, Any]
    texts: dict[str, str]


class _Plain(yaml.CSafeDumper):
    """Writes what stands in two places twice: files of a property have no anchors."""

    def ignore_aliases(self, data: object) -> bool:  # noqa: ARG002 - pyyaml calls it so
        return True


class _Typed(yaml.CSafeLoader):
    """Reads days, yes and no as the text they are in a property."""


_Typed.yaml_implicit_resolvers = {
    first: [
        (tag, pattern) for tag, pattern in resolvers
        if tag not in ("tag:yaml.org,2002:timestamp", "tag:yaml.org,2002:bool")
    ]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}  # fmt: skip


def dumped(content: object) -> str:
    """Return what stands in a file as YAML."""
    return yaml.dump(content, Dumper=_Plain, sort_keys=False, allow_unicode=True, width=1000)


@functools.cache
def bases() -> tuple[Base, ...]:
    """Every property that is damaged, in an order that never changes."""
    made = [
        ("small", small_property()),
        ("three in a tank", three_in_the_tank()),
        *((f"of seed {seed}", property_data(seed, 1)) for seed in range(8)),
        ("weathered", weathered(None, normals=[NORMALS], freeze_dates=[FREEZE])),
        *((f"case: {case.theme} {n}", case_data(case)) for n, case in enumerate(cases())),
    ]
    plain = [one for one in GOOD if not list((HERE / "good" / one).rglob("*.gz"))]
    shipped = [("starter", _texts(STARTER)), *((one, _overlaid(one)) for one in plain)]
    return (
        *(_of_data(name, data) for name, data in made),
        *(Base(name, _read(texts), texts) for name, texts in shipped),
    )


def _of_data(name: str, data: Data) -> Base:
    lines = data.get("weather_files", {})
    own = {file: content for file, content in data.items() if file != "weather_files"}
    texts = {f"{file}.yaml": dumped(content) for file, content in own.items()}
    texts |= {f"weather/{file}": text for file, text in lines.items()}
    return Base(name, {f"{file}.yaml": content for file, content in own.items()}, texts)


def _texts(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix in (".yaml", ".csv", ".dly")
    }


def _overlaid(name: str) -> dict[str, str]:
    return _texts(HERE / "base") | _texts(HERE / "good" / name)


def _read(texts: dict[str, str]) -> dict[str, Any]:
    return {file: yaml.load(text, _Typed) for file, text in texts.items() if file.endswith(".yaml")}


@dataclass(frozen=True)
class Known:
    """What is typed for a key anywhere, and the keys that stand in an entry beneath another."""

    values: dict[str, tuple[Any, ...]]
    beside: dict[str, tuple[str, ...]]
    ids: tuple[str, ...]


@functools.cache
def known() -> Known:
    """Return what all the properties together type."""
    values: defaultdict[str, dict[str, Any]] = defaultdict(dict)
    beside: defaultdict[str, dict[str, None]] = defaultdict(dict)
    for base in bases():
        for content in base.data.values():
            _learn("", content, values, beside)
    return Known(
        {key: tuple(found.values())[:MOST_VALUES] for key, found in values.items()},
        {key: tuple(found) for key, found in beside.items()},
        tuple(str(one) for one in values["id"].values()),
    )


def _learn(
    above: str,
    node: object,
    values: defaultdict[str, dict[str, Any]],
    beside: defaultdict[str, dict[str, None]],
) -> None:
    if isinstance(node, dict):
        for key, value in node.items():
            values[key].setdefault(repr(value), value)
            beside[above][key] = None
            _learn(key, value, values, beside)
    elif isinstance(node, list):
        for one in node:
            _learn(above, one, values, beside)

"""The tiny properties that are damaged, and the values that any of them types for a key."""

from __future__ import annotations

import functools
import json
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from tests.fuzz.drawn import drawn, in_files
from tests.inventories.overlaid import GOOD, HERE
from tests.plan.by_hand import cases
from tests.plan.by_hand import data_of as case_data
from tests.plan.weathered import FREEZE, NORMALS, weathered
from tests.properties import Data, property_data, small_property
from tests.properties_tank import three_in_the_tank

STARTER = Path(__file__).resolve().parents[2] / "generator" / "starter"
MOST_VALUES = 40
SHAPES = ".geojson"
LAID_BESIDE = ("weather_files", "elevation_files")
OF_TEXT = (".yaml", ".csv", ".dly", ".asc", ".kml", ".gpx", SHAPES)


@dataclass(frozen=True)
class Base:
    """A property to damage: what stands in its files of YAML and JSON, and all its files.

    `texts` are those of text, `packed` the others.
    """

    name: str
    data: dict[str, Any]
    texts: dict[str, str]
    packed: dict[str, bytes] = field(default_factory=dict)


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


def dumped(file: str, content: object) -> str:
    """Return what stands in a file as the text of it: JSON where it is one of shapes, else YAML."""
    if file.endswith(SHAPES):
        # a feature on a line, so that a line of it can be damaged
        return json.dumps(content, default=str).replace(
            '{"type": "Feature",', '\n{"type": "Feature",'
        )
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
        *drawn_bases(),
        *(Base(name, _read(texts), texts) for name, texts in shipped),
    )


@functools.cache
def drawn_bases() -> tuple[Base, ...]:
    """Those of them with all of the land drawn."""
    data, shapes, packed = in_files()
    typed, named = _of_data("drawn", drawn()), _of_data("drawn, in files", data)
    texts = {
        file: content if isinstance(content, str) else dumped(file, content)
        for file, content in shapes.items()
    }
    said = {file: content for file, content in shapes.items() if not isinstance(content, str)}
    return typed, Base(named.name, named.data | said, named.texts | texts, packed)


def _of_data(name: str, data: Data) -> Base:
    beside = {
        f"{kind.removesuffix('_files')}/{file}": text
        for kind in LAID_BESIDE
        for file, text in data.get(kind, {}).items()
    }
    own = {f"{file}.yaml": one for file, one in data.items() if file not in LAID_BESIDE}
    return Base(name, own, {file: dumped(file, one) for file, one in own.items()} | beside)


def _texts(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix in OF_TEXT
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

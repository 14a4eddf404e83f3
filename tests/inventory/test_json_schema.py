"""The rules for editors: they take what the reader takes, and name the same keys."""

from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from generator.inventory.fields import rules_of
from generator.inventory.json_schema import SIGN_PARTS, file_schemas
from generator.inventory.load import FILES
from generator.inventory.reading import legal_keys
from generator.inventory.schema import Property
from generator.inventory.yaml_positions import read_document
from generator.lookup import shipped
from tests.inventories.overlaid import BAD, GOOD, HERE, overlaid
from tests.properties import make_property

SCHEMAS = file_schemas()


def faults_of(folder: Path) -> list[str]:
    """What the schemas say of the files of a folder, as data the reader's parser gives."""
    found = []
    for path in sorted(folder.glob("*.yaml")):
        document, problems = read_document(path.read_bytes(), path.name)
        assert problems == ()
        assert document is not None
        validator = Draft202012Validator(SCHEMAS[path.stem])
        found += [
            f"{path.name} {fault.json_path}" for fault in validator.iter_errors(document.data)
        ]
    return found


@pytest.mark.parametrize("name", sorted(SCHEMAS))
def test_every_schema_is_one(name: str) -> None:
    Draft202012Validator.check_schema(SCHEMAS[name])
    assert set(SCHEMAS) == {"property", *FILES}


@pytest.mark.parametrize("name", ["demo_property", "starter"])
def test_what_ships_is_valid(name: str) -> None:
    assert list(shipped(name).glob("*.yaml"))
    assert faults_of(shipped(name)) == []


@pytest.mark.parametrize("seed", range(5))
def test_generated_properties_are_valid(seed: int, tmp_path: Path) -> None:
    assert faults_of(make_property(tmp_path / "property", seed, 5)) == []


@pytest.mark.parametrize("name", GOOD)
def test_sound_inventories_are_valid(name: str, tmp_path: Path) -> None:
    assert faults_of(overlaid("good", name, tmp_path / "property")) == []


# What an editor can see in one file: keys, kinds of value, words and bounds.
SEEN = ("F201", "F202", "F203", "F204", "F205", "F206", "F210_a_capital", "F211")
# A number of an impossible size is refused by the reader alone.
NOT_SEEN = ("F204_wider_than_the_world", "F203_nothing_after_the_key")


@pytest.mark.parametrize(
    "name", [name for name in BAD if name.startswith(SEEN) and name not in NOT_SEEN]
)
def test_broken_inventories_are_refused_in_the_same_file(name: str, tmp_path: Path) -> None:
    (broken,) = (path.name for path in (HERE / "bad" / name).iterdir())
    found = faults_of(overlaid("bad", name, tmp_path / "property"))
    assert found
    assert {one.split()[0] for one in found} == {broken}


def reader_keys(kind: type) -> dict[str, Any]:
    """Every key the reader takes in a record, and below a key of records their keys."""
    keys: dict[str, Any] = {}
    for name, rule in rules_of(kind).items():
        for key in legal_keys(name, rule) if rule.form == "measure" else (name,):
            keys[key] = reader_keys(rule.record) if rule.record is not None else None
    return keys


def schema_keys(schema: dict[str, Any]) -> dict[str, Any] | None:
    """Every key a schema takes; None where it is no record."""
    for part in (schema, *schema.get("anyOf", ())):
        inner = part.get("items", part)
        if "properties" in inner and set(inner["properties"]) != set(SIGN_PARTS):
            assert inner["additionalProperties"] is False
            return {key: schema_keys(one) for key, one in inner["properties"].items()}
    return None


def test_schema_and_reader_take_the_same_keys() -> None:
    assert schema_keys(SCHEMAS["property"]) == reader_keys(Property)
    for name, lists in FILES.items():
        expected = {key: reader_keys(kind) for key, kind in lists.items()}
        assert schema_keys(SCHEMAS[name]) == expected, name


def test_every_key_has_the_help_of_its_field() -> None:
    screen = SCHEMAS["screens"]["properties"]["screens"]["items"]["properties"]
    assert screen["width_m"]["description"] == rules_of(_screen())["width_ft"].help
    assert "near" in screen
    assert screen["near"]["properties"]["slope"]["description"]


def _screen() -> type:
    return FILES["screens"]["screens"]

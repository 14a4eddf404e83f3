"""JSON Schema of the property folder's files, for editors that help while typing."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from generator.inventory.fields import NOT_ON_LABEL, FieldRule, Record, rules_of
from generator.inventory.load import FILES, KIND_WORDS
from generator.inventory.plain_values import (
    COMPASS,
    LATITUDE_LETTERS,
    LONGITUDE_LETTERS,
    MONTH,
    US_DAY,
    US_MONTH,
    US_MONTH_DAY,
    degrees_pattern,
    in_any_case,
    number_patterns,
    point_pattern,
)
from generator.inventory.reading import left_out_if_empty, legal_keys
from generator.inventory.reading_values import TRUTHS, YES_OR_NO, unit_of
from generator.inventory.schema import Property
from generator.reference.land_kinds import land_kinds
from generator.reference.library import law_subjects, marker_names, planting_kinds, species
from generator.reference.operations import operations
from generator.units import convert

DRAFT = "https://json-schema.org/draft/2020-12/schema"
MONTH_DAY = {"type": "string", "pattern": f"^(?:[0-9]{{2}}-[0-9]{{2}}|{US_MONTH_DAY})$"}
ISO_DAY = "[0-9]{4}-[0-9]{2}-[0-9]{2}"
A_MONTH = f"{MONTH}|{US_MONTH}"
ID = {"type": ["string", "integer"], "pattern": "^[a-z0-9]([a-z0-9-]*[a-z0-9])?$"}
SIGN_PARTS = ("early", "typical", "late")


def file_schemas() -> dict[str, dict[str, Any]]:
    """Return {file name without ending: its schema}."""
    schemas = {"property": {"$schema": DRAFT} | _record(Property)}
    for name, keys in FILES.items():
        properties = {key: {"type": ["array", "null"], "items": _record(kind)}
                      for key, kind in keys.items()}  # fmt: skip
        schemas[name] = {
            "$schema": DRAFT,
            "type": ["object", "null"],
            "properties": properties,
            "additionalProperties": False,
        }
    return schemas


def _record(kind: type[Record]) -> dict[str, Any]:
    properties: dict[str, Any] = {}
    required: list[str] = []
    one_of_each: list[dict[str, Any]] = []
    for name, rule in rules_of(kind).items():
        keys = legal_keys(name, rule) if rule.form == "measure" else (name,)
        for key in keys:
            properties[key] = _value(key, rule, may_be_empty=left_out_if_empty(kind, rule))
        if rule.required and rule.unless:
            one_of_each.append({"anyOf": [{"required": [key]} for key in (name, rule.unless)]})
        elif rule.required and len(keys) == 1:
            required.append(name)
        elif rule.required:
            one_of_each.append({"anyOf": [{"required": [key]} for key in keys]})
    schema: dict[str, Any] = {
        "type": "object",
        "properties": properties,
        "additionalProperties": False,
        "required": required,
    }
    return schema | ({"allOf": one_of_each} if one_of_each else {})


def _value(key: str, rule: FieldRule, *, may_be_empty: bool) -> dict[str, Any]:
    schema = dict(_single(key, rule))
    if rule.many and rule.form == "record":
        schema = {"type": "array", "items": schema}
    elif rule.many:
        schema = _or(schema, {"type": "array", "items": schema})
    if rule.label:
        schema = _or(schema, {"const": NOT_ON_LABEL})
    if may_be_empty:
        schema = _or(schema, {"type": "null"})
    return schema | {"description": rule.help}


def _or(schema: dict[str, Any], other: dict[str, Any]) -> dict[str, Any]:
    ways = schema["anyOf"] if set(schema) == {"anyOf"} else [schema]
    return {"anyOf": [*ways, other]}


def _single(key: str, rule: FieldRule) -> Mapping[str, Any]:
    if rule.form == "record":
        assert rule.record is not None
        return _record(rule.record)
    if rule.form == "measure" and not key.endswith(f"_{unit_of(key, rule)}"):
        # a bearing without its unit is a point of the compass, never a number
        return {"type": "string", "pattern": f"^{COMPASS}$"}
    if rule.form == "measure":
        plain = "|".join(number_patterns(unit_of(key, rule)))
        return {
            "anyOf": [
                {"type": "number"} | _bounds(key, rule),
                {"type": "string", "pattern": f"^(?:{plain})$"},
            ]
        }
    if rule.form == "whole":
        limits = {"minimum": rule.limits.at_least, "maximum": rule.limits.at_most}
        return {"type": "integer"} | {k: v for k, v in limits.items() if v is not None}
    if rule.form == "points":
        items = {"type": "array", "items": _PLAIN["lat_lon"]}
        return items | {"minItems": int(rule.limits.at_least or 0)}
    if rule.form == "choice":
        either = YES_OR_NO.keys() <= set(rule.choices)
        return _words_in_any_case(rule.choices, [True, False] if either else [])
    if rule.form == "date" and rule.month_too:
        return {"type": "string", "pattern": f"^(?:{ISO_DAY}|{US_DAY}|{A_MONTH})$"}
    if rule.form == "text" and rule.numbered:
        return {"type": ["string", "integer"], "minLength": 1}
    if rule.form == "reference":
        return _reference(rule)
    return _PLAIN[rule.form]


def _words_in_any_case(words: Iterable[str], truths: list[bool]) -> dict[str, Any]:
    """Return what takes some words; they are named as they are written, and taken in any case."""
    typed = {"type": "string", "pattern": f"^{in_any_case(words)}$"}
    return {"anyOf": [{"enum": [*words, *truths, *(TRUTHS if truths else ())]}, typed]}


def _reference(rule: FieldRule) -> Mapping[str, Any]:
    # ids of the owner's own may stand in any file, and an editor looks at one
    if set(rule.refers_to) & {*KIND_WORDS.values(), "step"}:
        return {"type": ["string", "integer"]}
    known = {
        "species": list(species()),
        "planting_kind": list(planting_kinds()),
        "law_subject": list(law_subjects()),
        "land_kind": list(land_kinds()),
        "operation": list(operations()),
        "season_sign": list(marker_names()),
    }
    return {"enum": [word for kind in rule.refers_to for word in known.get(kind, [kind])]}


def _bounds(key: str, rule: FieldRule) -> dict[str, Any]:
    names = {
        "exclusiveMinimum": rule.limits.above,
        "minimum": rule.limits.at_least,
        "maximum": rule.limits.at_most,
    }
    # a number of several families is held to 0 alone, which is 0 in every unit
    if not rule.unit:
        return {name: value for name, value in names.items() if value is not None}
    return {
        name: convert(value, rule.unit, unit_of(key, rule))
        for name, value in names.items()
        if value is not None
    }


def _degrees(letters: str) -> dict[str, Any]:
    typed = {"type": "string", "pattern": f"^(?:{degrees_pattern(letters)})$"}
    above_0 = {"type": "number", "exclusiveMinimum": 0}
    behind_a_dash = {"type": "array", "items": above_0, "minItems": 1, "maxItems": 1}
    return {"anyOf": [{"type": "number"}, typed, behind_a_dash]}


_PLAIN: Mapping[str, Mapping[str, Any]] = MappingProxyType(
    {
        "text": {"type": "string", "minLength": 1},
        "identity": ID,
        "word": {"type": "string", "pattern": "^[a-z0-9]+(_[a-z0-9]+)*$"},
        "yes_no": _words_in_any_case(YES_OR_NO, [True, False]),
        # month/day/year too: whether the folder has it so stands in another file
        "date": {"type": "string", "pattern": f"^(?:{ISO_DAY}|{US_DAY})$"},
        "month": {"type": "string", "pattern": f"^(?:{A_MONTH})$"},
        "month_day": MONTH_DAY,
        "lat_lon": {
            "anyOf": [
                {
                    "type": "array",
                    "prefixItems": [_degrees(LATITUDE_LETTERS), _degrees(LONGITUDE_LETTERS)],
                    "minItems": 2,
                    "maxItems": 2,
                },
                {"type": "string", "pattern": f"^{point_pattern()}$"},
            ]
        },
        "direction": {
            "anyOf": [
                {"type": "number", "minimum": 0, "maximum": 360},
                {"type": "string", "pattern": f"^{COMPASS}$"},
            ]
        },
        "sign": {
            "anyOf": [
                MONTH_DAY,
                {
                    "type": "object",
                    "properties": dict.fromkeys(SIGN_PARTS, MONTH_DAY),
                    "required": list(SIGN_PARTS),
                    "additionalProperties": False,
                },
            ]
        },
    }
)

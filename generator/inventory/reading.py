"""From plain data with positions to records: every field by its description, every fault kept."""

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from generator.inventory import problems as say
from generator.inventory.fields import (
    NOT_ON_LABEL,
    FieldMark,
    FieldRule,
    Record,
    defaults_of,
    rules_of,
)
from generator.inventory.meant import keys_meant, stem_meant, unit_at_end
from generator.inventory.plain_values import (
    BEARING_UNIT,
)
from generator.inventory.reading_directions import read_direction
from generator.inventory.reading_found import FAULT, NamedThing, Path, Reading
from generator.inventory.reading_values import (
    _choice,
    _date,
    _identity,
    _lat_lon,
    _measure,
    _month,
    _month_day,
    _points,
    _reference,
    _sign,
    _text,
    _whole,
    _word,
    _yes_no,
)
from generator.units import family_suffixes

_BY_KEY: dict[type, Mapping[str, str]] = {}
A_LIST = "a list: each entry begins with a dash"


def read_record(kind: type[Record], raw: object, path: Path, reading: Reading) -> Any:
    """Return a record of the kind, or the mark of a fault when any part could not be read."""
    if not isinstance(raw, dict):
        reading.unread.add(kind)
        # what stood here is in a line that could not be read, and told there
        if path in reading.document.doubtful and raw is None:
            return FAULT
        return reading.fault(say.wrong_type(raw, "a group of keys, each on a line"), path)
    rules = rules_of(kind)
    typed, meant = _typed_keys(raw, kind, path, reading)
    values: dict[str, object] = {}
    for name, rule in rules.items():
        if name in typed and not (raw[typed[name]] is None and left_out_if_empty(kind, rule)):
            key = typed[name]
            values[name] = _read_field(rule, raw[key], (*path, key), reading)
        elif name in meant:
            values[name] = FAULT  # told at the mistyped key, so it is not missing as well
        elif rule.required and path in reading.document.doubtful:
            values[name] = FAULT  # it may stand in a line that could not be read
        elif rule.unless in typed:
            values[name] = None  # given below, once what spares it is read
        elif rule.required:
            missing = say.missing_key(_wanted_key(name, rule), _article(kind))
            values[name] = reading.fault(missing, path)
        else:
            values[name] = defaults_of(kind)[name]
    values |= _spared(rules, typed, values)
    where = reading.where(path)
    if values.get("id") is FAULT:
        reading.unread.add(kind)
    elif "id" in values:
        at = reading.where((*path, typed["id"]))
        reading.named.append(NamedThing(str(values["id"]), kind, at))
    marks = _marks(raw, typed, path, reading)
    readable = {name: None if value is FAULT else value for name, value in values.items()}
    if not path:
        # of the property: one faulty word in it must not keep rules from looking at the rest
        reading.whole = kind(where=where, field_marks=marks, **readable)
    # an unknown key counts: what it was to say may change what the others mean
    faulty = len(typed) < len(raw) or any(value is FAULT for value in values.values())
    if faulty or path in reading.document.doubtful:
        return FAULT
    return kind(where=where, field_marks=marks, **values)


def _spared(
    rules: Mapping[str, FieldRule], typed: Mapping[str, str], values: Mapping[str, object]
) -> dict[str, object]:
    """Return the values of fields that another spares: its own where both are read alike."""
    return {
        name: values[rule.unless]
        for name, rule in rules.items()
        if rule.unless in typed and name not in typed
        if rule.form == rules[rule.unless].form
    }


def is_entry(kind: type[Record], raw: object) -> bool:
    """Return whether a group of keys is an entry of a list, its dash aside."""
    return isinstance(raw, dict) and bool(raw) and raw.keys() <= _fields_by_key(kind).keys()


def keys_inside(kind: type) -> frozenset[str]:
    """Return every key that an owner may type in a record of a kind, and in records in it."""
    found: set[str] = set()
    for name, rule in rules_of(kind).items():
        found.update(_keys_of(name, rule))
        if rule.record is not None:
            found |= keys_inside(rule.record)
    return frozenset(found)


def left_out_if_empty(kind: type[Record], rule: FieldRule) -> bool:
    """Return whether a key with nothing behind it says no more than that it is left out."""
    inside = rule.record is not None and rule.record.EMPTY_IS_LEFT_OUT
    return not rule.required and (kind.EMPTY_IS_LEFT_OUT or inside)


def _marks(
    raw: dict[str, Any], typed: Mapping[str, str], path: Path, reading: Reading
) -> dict[FieldMark, tuple[int, int]]:
    """Return where each typed field stands, and each entry of a list of words."""
    marks = reading.document.value_marks
    found: dict[FieldMark, tuple[int, int]] = {}
    for name, key in typed.items():
        mark = marks[*path, key]
        found[name, None] = (mark.line, mark.column)
        for number, item in enumerate(raw[key] if isinstance(raw[key], list) else ()):
            if isinstance(item, str):
                mark = marks[*path, key, number]
                found[name, number] = (mark.line, mark.column)
    return found


def _article(kind: type) -> str:
    words = re.sub(r"(?<!^)(?=[A-Z])", " ", kind.__name__).lower()
    return f"this {words}"


def _wanted_key(name: str, rule: FieldRule) -> str:
    if rule.form != "measure":
        return name
    return " or ".join(legal_keys(name, rule)[:3])


def legal_keys(name: str, rule: FieldRule) -> tuple[str, ...]:
    """Return the keys an owner may type for a measure, the field's own unit first.

    A point of the compass needs no unit: a bearing goes by its name alone too.
    """
    stem = _stem(name, rule)
    suffixes = [suffix for family in rule.families for suffix in family_suffixes(family)]
    # a sort that keeps order: its own unit first, the others as their families list them
    suffixes.sort(key=lambda suffix: suffix != rule.unit)
    keys = tuple(f"{stem}_{suffix}" for suffix in suffixes)
    return (*keys, stem) if rule.unit == BEARING_UNIT else keys


def _stem(name: str, rule: FieldRule) -> str:
    suffix = f"_{rule.unit}"
    return name.removesuffix(suffix) if rule.unit and name.endswith(suffix) else name


def _typed_keys(
    raw: dict[str, Any], kind: type[Record], path: Path, reading: Reading
) -> tuple[dict[str, str], set[str]]:
    """Return {field name: key as typed}, and the fields that mistyped keys were meant for.

    Unknown keys and doubled units become faults.
    """
    by_key = _fields_by_key(kind)
    # of all keys, before the first is judged: a slip was not meant for what is typed further down
    taken = {by_key[key] for key in raw if key in by_key}
    typed: dict[str, str] = {}
    meant: set[str] = set()
    for key in raw:
        name = by_key.get(key)
        if name is None:
            meant |= _unknown_key(key, rules_of(kind), taken, (*path, key), reading)
        elif name in typed:
            reading.key_fault(say.two_units([typed[name], key]), (*path, key))
        else:
            typed[name] = key
    return typed, meant


def _fields_by_key(kind: type[Record]) -> Mapping[str, str]:
    if kind not in _BY_KEY:
        rules = rules_of(kind).items()
        _BY_KEY[kind] = {key: name for name, rule in rules for key in _keys_of(name, rule)}
    return _BY_KEY[kind]


def _keys_of(name: str, rule: FieldRule) -> tuple[str, ...]:
    return legal_keys(name, rule) if rule.form == "measure" else (name,)


def _unknown_key(
    key: str, rules: Mapping[str, FieldRule], taken: set[str], path: Path, reading: Reading
) -> set[str]:
    """Keep the fault of an unknown key and return the fields it seems meant for."""
    free = {name: _keys_of(name, rule) for name, rule in rules.items() if name not in taken}
    meant = keys_meant(key, free)
    names = {name for name, keys in free.items() if set(keys) & set(meant)}
    stems = {name: _stem(name, rule) for name, rule in rules.items() if rule.form == "measure"}
    stem = stem_meant(key, stems.values())
    same_unit = any(unit_at_end(near) == unit_at_end(key) for near in meant)
    names = names & stems.keys() if key == stem else names
    if stem is not None and names <= stems.keys() and (key == stem or not same_unit):
        begun = {name for name, other in stems.items() if f"{other}_".startswith(f"{stem}_")}
        names = names or (begun & free.keys()) or begun
        keys = [legal_keys(name, rules[name]) for name in rules if name in names]
        offered = keys[0] if len(keys) == 1 else [legal[0] for legal in keys]
        reading.key_fault(say.unknown_unit(key, stem, offered), path)
        return names
    known = [_keys_of(name, rule)[0] for name, rule in rules.items()]
    reading.key_fault(say.unknown_key(key, known, meant), path)
    return names


def _read_field(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    # told already, at the line that could not be read
    if path in reading.document.doubtful and not raw:
        return FAULT
    # before its form: it may stand in the place of a value of any kind
    if rule.label and raw == NOT_ON_LABEL:
        return NOT_ON_LABEL
    if not rule.many:
        return _FORMS[rule.form](rule, raw, path, reading)
    items = raw if isinstance(raw, list) else [raw]
    if not isinstance(raw, list) and rule.record is not None:
        if is_entry(rule.record, raw):
            read_record(rule.record, raw, path, reading)  # told, and known, as what it is
        return reading.fault(say.wrong_type(raw, A_LIST), path)
    if rule.required and not items:
        return reading.fault(say.wrong_type(None, "at least one entry"), path)
    parts = [
        _FORMS[rule.form](rule, item, (*path, n) if isinstance(raw, list) else path, reading)
        for n, item in enumerate(items)
    ]
    return FAULT if any(part is FAULT for part in parts) else tuple(parts)


def _record(rule: FieldRule, raw: object, path: Path, reading: Reading) -> object:
    assert rule.record is not None
    return read_record(rule.record, raw, path, reading)


_FORMS: Mapping[str, Callable[[FieldRule, object, Path, Reading], object]] = MappingProxyType(
    {
        "text": _text,
        "identity": _identity,
        "word": _word,
        "reference": _reference,
        "choice": _choice,
        "measure": _measure,
        "whole": _whole,
        "yes_no": _yes_no,
        "date": _date,
        "month": _month,
        "month_day": _month_day,
        "lat_lon": _lat_lon,
        "points": _points,
        "sign": _sign,
        "direction": read_direction,
        "record": _record,
    }
)

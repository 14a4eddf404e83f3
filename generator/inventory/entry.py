"""A new log entry, from what an owner typed behind `handbook record`, as a file of its own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Any

import yaml

from generator.dataclass import dataclass
from generator.inventory.fields import FieldRule, rules_of
from generator.inventory.log import LogEntry
from generator.inventory.meant import meant, nearest
from generator.inventory.plain_values import US, us_day
from generator.inventory.problems import (
    LONGEST_ID,
    did_you_mean,
    listed,
    meant_or_listed,
    shown_value,
)
from generator.inventory.reading_values import YES_OR_NO
from generator.inventory.schema import Inventory
from generator.units import UNITS

# No more digits than a number keeps.
_NUMBER = re.compile(r"-?\d{1,18}(\.\d{1,30})?", re.ASCII)
_YEAR = re.compile(r"\d{4}", re.ASCII)
_PLACE_IN_LIST = re.compile(r"\d{1,4}", re.ASCII)
_AMOUNT = re.compile(r"(?P<item>[^=]+)=(?P<number>[^_=]+)_(?P<unit>.+)")
_ROOM_FOR_A_NUMBER = 4  # a dash and three digits, within the longest id
# What an entry says of itself; it says nothing that was done, counted or seen.
_OF_ITSELF = frozenset(["done_on", "recorded_on", "by"])
TRUE_OR_FALSE = {"yes": True, "true": True, "no": False, "false": False}


class NotMeantError(ValueError):
    """What was typed cannot be read as meant; the sentence says what is wanted."""


@dataclass(frozen=True, slots=True)
class Typed:
    """What was typed for one entry, as text; `settings` are dotted names and their values."""

    done_on: str
    job: str | None = None
    planting: str | None = None
    step: str | None = None
    area: str | None = None
    finished: bool = False
    answer: str | None = None
    not_doing: str | None = None
    by: str | None = None
    recorded_on: str | None = None
    corrects: str | None = None
    note: str | None = None
    used: tuple[str, ...] = ()
    seen: tuple[str, ...] = ()
    bought: tuple[str, ...] = ()
    costs: tuple[str, ...] = ()
    settings: tuple[str, ...] = ()


def entry_from(typed: Typed, inventory: Inventory) -> dict[str, Any]:
    """Return the keys of an entry, without its id. Raises NotMeantError.

    Only what cannot be put into keys at all is refused here; whether they make an entry is said
    by reading them with the rest of the folder.
    """
    us_dates = inventory.property.dates == US
    entry: dict[str, Any] = {"done_on": written_day(typed.done_on, us_dates)}
    recorded_on = (
        written_day(typed.recorded_on, us_dates) if typed.recorded_on is not None else None
    )
    plain = {"recorded_on": recorded_on, "by": typed.by, "corrects": typed.corrects}
    entry |= {key: value for key, value in plain.items() if value is not None}
    job = _job(typed, inventory)
    if job:
        entry |= job
    if typed.seen:
        entry["markers_seen"] = list(typed.seen)
    if typed.used:
        entry["used"] = [_amount(amount, "--used") for amount in typed.used]
    if typed.bought:
        entry["bought"] = _bought(typed)
    elif typed.costs:
        raise NotMeantError(
            "--cost goes with --bought; money for something else is --set spent.1.what="
        )
    for name, values in _together(typed.settings).items():
        _put(entry, name, values, us_dates=us_dates)
    if typed.note is not None:
        entry["note"] = typed.note
    if entry.keys() <= _OF_ITSELF:
        raise NotMeantError(
            "there is nothing to record: say what was done, by --job, --seen, --used, --bought or "
            "--set, "
            "or give a --note"
        )
    return entry


def _job(typed: Typed, inventory: Inventory) -> dict[str, Any]:
    planting, step = typed.planting, typed.step
    if typed.job is not None and (planting is not None or step is not None):
        raise NotMeantError(
            "--job names planting and step already; leave --planting and --step out"
        )
    upkeep = _upkeep_of(typed.job, inventory)
    season = None
    if typed.job is not None and upkeep is None:
        planting, step, season = _named_job(typed.job, inventory)
    if typed.not_doing is not None:
        return {"not_doing": [_left_out(typed, planting, step, season, upkeep)]}
    about = {"area": typed.area, "finished": typed.finished or None, "answer": typed.answer}
    if upkeep is not None:
        if typed.area is not None or typed.answer is not None:
            raise NotMeantError("a step of an upkeep has no --area and no --answer")
        return {"upkeep": [upkeep]}
    if planting is None or step is None:
        said = [f"--{name}" for name, value in about.items() if value is not None]
        if planting is not None or step is not None or said:
            told = said or ["--planting" if planting is not None else "--step"]
            raise NotMeantError(f"{listed(told, 'and')} needs --job, or --planting and --step")
        return {}
    job: dict[str, Any] = {"planting": planting, "step": step}
    if season is not None:
        job["season"] = season
    if typed.area is not None:
        number, _, unit = typed.area.partition("_")
        job[f"area_{unit}"] = _number(number)
    if typed.finished:
        job["finished"] = True
    if typed.answer is not None:
        job["answer"] = typed.answer
    return {"job": job}


def _left_out(
    typed: Typed,
    planting: str | None,
    step: str | None,
    season: int | None,
    upkeep: dict[str, Any] | None,
) -> dict[str, Any]:
    """Return what says that a step will not be done. Raises NotMeantError beside what was done."""
    if typed.area is not None or typed.answer is not None or typed.finished:
        raise NotMeantError(
            "--not-doing says that a step is left out: no --area, --answer or --finished"
        )
    if upkeep is None and (planting is None or step is None):
        raise NotMeantError("--not-doing needs --job, or --planting and --step")
    named = upkeep or {"planting": planting, "step": step}
    return named | ({"season": season} if season is not None else {}) | {"why": typed.not_doing}


def _upkeep_of(job: str | None, inventory: Inventory) -> dict[str, Any] | None:
    """Return a step of an upkeep that is named as its sheet names it, None where it is none."""
    subject, _, rest = (job or "").partition("/")
    named = next((thing for thing in inventory.kept_up() if thing.id == subject), None)
    if named is None or named.upkeep is None:
        return None
    season, _, step = rest.partition("/")
    steps = [planned.id for planned in inventory.plans()[named.upkeep].steps]
    if not _YEAR.fullmatch(season) or step not in steps:
        near = meant(step, steps) if _YEAR.fullmatch(season) else ()
        jobs = [f"{subject}/{season or 'season'}/{name}" for name in near or steps]
        offered = did_you_mean(jobs) if near else f"there: {listed(jobs)}"
        raise NotMeantError(f"there is no job {shown_value(job)}; {offered}")
    return {"at": subject, "step": step, "season": int(season)}


def _named_job(job: str, inventory: Inventory) -> tuple[str, str, int | None]:
    """Return planting and step of a job as its sheet names it: place/season/step.

    The season too, where the step comes back in every one.
    """
    known = dict(_jobs(inventory))
    parts = job.split("/")
    if len(parts) != 3:
        raise NotMeantError(
            f"{shown_value(job)} is no job: write place/season/step, as its sheet does"
        )
    place, season, step = parts
    if (place, step, season) in known:
        return known[place, step, season], step, None
    # a plan that comes back every season has no last one
    yearly = known.get((place, step, ""))
    if yearly is not None and _YEAR.fullmatch(season):
        return yearly, step, int(season)
    raise NotMeantError(f"there is no job {shown_value(job)}; {_near(known, parts)}")


def _near(known: Iterable[tuple[str, str, str]], parts: Sequence[str]) -> str:
    """Return the jobs that three parts can have been meant for; else those of the place.

    A season that is no job's there is told by those that are, so it is what was meant least.
    """
    place, season, step = parts
    places = sorted({name for name, _, _ in known})
    near = (place,) if place in places else nearest(place, places)
    if not near:
        return f"there is no place {shown_value(place)}; {meant_or_listed(place, places)}"
    year = season if _YEAR.fullmatch(season) else "season"
    there = sorted((at, when or year, name) for at, name, when in known if at in near)
    names = list(dict.fromkeys(name for _, _, name in there))
    steps = (step,) if step in names else meant(step, names)
    offered = [job for job in there if job[2] in steps]
    offered = [job for job in offered if job[1] == season] or offered
    if offered:
        return did_you_mean(["/".join(job) for job in offered])
    jobs = [job for job in there if job[1] in (season, year)] or there
    return f"on that place: {listed(['/'.join(job) for job in jobs])}"


def _jobs(inventory: Inventory) -> Iterable[tuple[tuple[str, str, str], str]]:
    plans = inventory.plans()
    for place in inventory.places():
        for planting in place.plantings:
            for step in plans[planting.once].steps if planting.once is not None else ():
                season = planting.season + step.seasons_later
                yield (place.id, step.id, str(season)), planting.id
            upkeep = plans[planting.yearly].steps if planting.yearly is not None else ()
            yield from (((place.id, step.id, ""), planting.id) for step in upkeep)


def _amount(typed: str, option: str) -> dict[str, Any]:
    found = _AMOUNT.fullmatch(typed)
    if found is None:
        raise NotMeantError(
            f"{option} {shown_value(typed)}: write item=amount_unit, as brew=32_fl_oz"
        )
    return {"item": found["item"], f"amount_{found['unit']}": _number(found["number"])}


def _bought(typed: Typed) -> list[dict[str, Any]]:
    if typed.costs and len(typed.costs) != len(typed.bought):
        raise NotMeantError(
            "--cost stands once for each --bought, in the same order, or not at all"
        )
    bought = [_amount(amount, "--bought") for amount in typed.bought]
    # costs are as many, or none
    for item, cost in zip(bought, typed.costs, strict=False):
        item["cost_usd"] = _number(cost)
    return bought


def _number(text: str) -> int | float | str:
    """Return a plain number as one, anything else as typed: reading it says what is wrong."""
    if not _NUMBER.fullmatch(text):
        return text
    return float(text) if "." in text else int(text)


def _together(settings: Iterable[str]) -> Mapping[str, list[str]]:
    found: dict[str, list[str]] = {}
    for setting in settings:
        name, sign, value = setting.partition("=")
        if not sign or not name:
            raise NotMeantError(
                f"--set {shown_value(setting)}: write name=value, as sprayed.wind_mph=6"
            )
        found.setdefault(name, []).append(value)
    return found


def written_day(text: str, us_dates: bool) -> str:
    """Return a day as it stands in the log whatever the folder says of its days."""
    return (us_day(text) if us_dates else None) or text


def _put(entry: dict[str, Any], name: str, values: list[str], *, us_dates: bool) -> None:
    """Set `sprayed.wind_mph`, or `spent.1.what` of a list, in an entry."""
    parts = name.split(".")
    if (parts[0] in entry and len(parts) == 1) or not all(parts):
        raise NotMeantError(
            f"--set {shown_value(name)} is said by an option of its own, or has no name"
        )
    at: Any = entry
    kind: type | None = LogEntry
    for part, after in pairwise(parts):
        rule = _rule(kind, part)
        # a number behind it says that a list stands here
        at = _inside(at, part, [] if after.isdecimal() else {}, name)
        kind = kind if part.isdecimal() else (rule.record if rule is not None else None)
    rule = _rule(kind, parts[-1])
    if rule is not None and rule.many and rule.form != "record":
        value: object = [_value(rule, text, us_dates) for text in values]
    elif len(values) > 1:
        raise NotMeantError(f"--set {name} stands twice: once only")
    else:
        value = _value(rule, values[0], us_dates)
    if not isinstance(at, dict) or parts[-1] in at:
        raise NotMeantError(f"--set {name}: no value can stand there")
    at[parts[-1]] = value


def _inside(at: Any, part: str, new: Any, name: str) -> Any:
    if isinstance(at, list):
        if not _PLACE_IN_LIST.fullmatch(part) or not 1 <= int(part) <= len(at) + 1:
            raise NotMeantError(
                f"--set {name}: the entries of a list are counted from 1, in their order"
            )
        if int(part) > len(at):
            at.append({})
        return at[int(part) - 1]
    if not isinstance(at, dict) or not isinstance(at.setdefault(part, new), dict | list):
        raise NotMeantError(f"--set {name}: no value can stand there")
    return at[part]


def _rule(kind: type | None, key: str) -> FieldRule | None:
    if kind is None:
        return None
    rules = rules_of(kind)
    if key in rules:
        return rules[key]
    # a number may be typed in any unit of its family
    stems = {name.removesuffix(f"_{rule.unit}"): rule for name, rule in rules.items() if rule.unit}
    return next((stems[stem] for stem in stems if key.removeprefix(f"{stem}_") in UNITS), None)


def _value(rule: FieldRule | None, text: str, us_dates: bool) -> object:
    if rule is not None and rule.form == "date":
        return written_day(text, us_dates)
    either = rule is not None and YES_OR_NO.keys() <= set(rule.choices)
    if rule is not None and (rule.form == "yes_no" or either):
        return TRUE_OR_FALSE.get(text, text)
    if rule is not None and rule.form in ("measure", "whole", "direction"):
        return _number(text)
    return text


def id_for(entry: Mapping[str, Any], taken: Iterable[str]) -> str:
    """Return an id that no entry has: the day, what it is about, and a number where that is taken.

    The day is part of it, so that two entries written at the same time have two names, or one
    name that only one of them gets.
    """
    job = entry.get("job")
    told = f"{job['planting']}-{job['step']}" if isinstance(job, dict) else _about(entry)
    plain = re.sub(r"[^a-z0-9]+", "-", f"{entry['done_on']}-{told}".lower()).strip("-")
    return free_id(plain[: LONGEST_ID - _ROOM_FOR_A_NUMBER].strip("-"), taken)


def _about(entry: Mapping[str, Any]) -> str:
    beside = ("done_on", "recorded_on", "by", "corrects", "note")
    return "-".join([key for key in entry if key not in beside][:2]) or "note"


def entry_file(identity: str, entry: Mapping[str, Any]) -> bytes:
    """Return the file of one entry as it stands in the folder `log`."""
    return file_of_one("entries", identity, entry)


def file_of_one(key: str, identity: str, data: Mapping[str, Any]) -> bytes:
    """Return the file of one new record under the key of its list."""
    # never wrapped: a fault is told by the key that begins its line
    text = yaml.safe_dump(
        {key: [{"id": identity, **data}]}, sort_keys=False, allow_unicode=True, width=10**6
    )
    return text.encode()


def free_id(word: str, taken: Iterable[str]) -> str:
    """Return a word as an id that is not taken, with a number behind it where it is."""
    known, number, name = set(taken), 1, word
    while name in known:
        number += 1
        name = f"{word}-{number}"
    return name

"""Cases worked out by hand from label language and the records, and how each is made a property.

A case is read from `cases_by_hand/`: what a label says, what the records hold, the sum in words
and in figures, and what is expected of a job. What is expected was written down before any plan of
it was made. Actives, labels and every figure on them are invented; where an active has a real
name, the name alone is looked at.
"""

import ast
import copy
import datetime
import operator
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.plan.planned import inventory_of
from tests.properties import Data, full_card, full_use, small_property, the_work

FOLDER = Path(__file__).parent / "cases_by_hand"
CLEAR = "clear"
# What a case expects, and the findings that say it. No other finding is looked at.
WORDS: Mapping[str, frozenset[str]] = {
    "over_one_time": frozenset({"S111"}),
    "over_year": frozenset({"S112"}),
    "too_often": frozenset({"S113"}),
    "asked_amount": frozenset({"S200"}),
    "asked_product": frozenset({"S201"}),
    "asked_place": frozenset({"S202"}),
    "asked_active": frozenset({"S203"}),
    "asked_area": frozenset({"S204", "S206"}),
    "wait": frozenset({"S118", "S210"}),
    "asked_wait": frozenset({"S211", "S212", "S213", "S214"}),
    "tank": frozenset({"S154", "S157"}),
    "keep_out": frozenset({"C314"}),
    "asked_keep_out": frozenset({"S205"}),
}

RED, BLUE, GREEN = "made-up active red", "made-up active blue", "made-up active green"
NONE = "not_on_label"
KINDS = ["native_grass", "clover", "beans_or_corn"]
TIMINGS = (
    "before_sowing",
    "after_sowing_before_emergence",
    "seedlings",
    "established_dormant",
    "established_growing",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One case: words for a reader, changes to a property it starts from, what is expected."""

    id: str
    theme: str
    label_says: str
    records: str
    working: str
    start: str
    season: int
    day: datetime.date
    expect: Mapping[str, frozenset[str]]
    sums: tuple[str, ...] = ()
    uses: Mapping[str, Data] = field(default_factory=dict)
    changes: tuple[Data, ...] = ()
    log: tuple[Data, ...] = ()

    @property
    def expected_words(self) -> frozenset[str]:
        """Everything it expects of any of its jobs; none where all are clear."""
        return frozenset().union(*self.expect.values())


class _Typed(yaml.SafeLoader):
    """Reads days as the text that was typed, as they stand in the files of a property."""


_Typed.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in resolvers if tag != "tag:yaml.org,2002:timestamp"]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def cases() -> tuple[Case, ...]:
    """Every case of every file, in the order they stand in."""
    return tuple(
        _case(path.stem, typed)
        for path in sorted(FOLDER.glob("*.yaml"))
        for typed in yaml.load(path.read_text(encoding="utf-8"), _Typed)
    )


def _case(theme: str, typed: Data) -> Case:
    own = dict(typed)
    own["day"] = datetime.date.fromisoformat(own["day"])
    own["expect"] = {job: _expected(words) for job, words in own["expect"].items()}
    for name in ("sums", "changes", "log"):
        own[name] = tuple(own.get(name, ()))
    return Case(theme=theme, **own)


def _expected(words: list[str]) -> frozenset[str]:
    """The words typed for a job; `clear` alone stands for none."""
    return frozenset() if words == [CLEAR] else frozenset(words)


def data_of(case: Case) -> Data:
    """The property of a case: its start with every change made, and its log."""
    data = STARTS[case.start]()
    data["property"] |= {"season": case.season, "as_of": case.day.isoformat()}
    products = {one["id"]: one for one in data["products"]["products"]}
    for product, change in case.uses.items():
        for use in products[product]["label"]["uses"]:
            use |= change
    for change in case.changes:
        _change(data, change)
    if case.log:
        data["log"] = {"entries": list(case.log)}
    return data


def _change(data: Data, change: Data) -> None:
    """Put `to` at a path such as products/brew/label: a list is entered by id or by number.

    A `+` at the end adds to a list, and a `to` that is empty leaves the key out.
    """
    *path, last = change["path"].split("/")
    at: Any = data.setdefault(change["file"], {})
    for part in path:
        at = at[_key(at, part)]
    if last == "+":
        at.append(change["to"])
    elif change["to"] is None:
        del at[_key(at, last)]
    else:
        at[_key(at, last)] = change["to"]


def _key(at: Any, part: str) -> Any:
    if isinstance(at, dict):
        return part
    names = [one.get("id", one.get("step")) for one in at]
    return names.index(part) if part in names else int(part)


def plan_of(case: Case) -> Plan:
    """The owner's plan of a case, made for its season on its day."""
    return make_plan(inventory_of(data_of(case)), case.season, case.day)


def words_of(plan: Plan, job_id: str) -> frozenset[str]:
    """The words of the table that are said of a job of the plan."""
    assert job_id in {one.id for one in plan.jobs}, f"the plan has no job {job_id}"
    codes = {one.code for one in plan.findings_on(job_id)}
    return frozenset(word for word, said_by in WORDS.items() if codes & said_by)


@dataclass(frozen=True, slots=True)
class Sum:
    """A line such as `fl_oz_per_ac: 96 + 40 = 136 > 128`, read."""

    added: float
    total: float
    relation: str
    limit: float

    @property
    def holds(self) -> bool:
        """Whether the total is the sum to two digits, and stands to the limit as written."""
        compared = RELATIONS[self.relation](self.total, self.limit)
        return abs(self.added - self.total) <= 0.005 and compared


RELATIONS = {">": operator.gt, "<=": operator.le, "<": operator.lt, ">=": operator.ge}
_STEPS = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
}


def read_sum(line: str) -> Sum:
    """Read the line of a sum; raises ValueError for one in any other form."""
    _, _, figures = line.partition(": ")
    added, _, compared = figures.partition(" = ")
    total, relation, limit = compared.split(" ")
    return Sum(_value(ast.parse(added, mode="eval").body), float(total), relation, float(limit))


def _value(node: ast.expr) -> float:
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        return node.value
    if isinstance(node, ast.BinOp) and type(node.op) in _STEPS:
        return float(_STEPS[type(node.op)](_value(node.left), _value(node.right)))
    raise ValueError(f"no sum: {ast.dump(node)}")


def _acre() -> Data:
    """One acre to be killed in September 2026 with 32 fl oz of brew, and what could be sprayed.

    brew is of red, other of blue, third of green, each 4 lb in a gallon: 32 fl oz are a pound.
    Every use of brew allows 128 fl oz in any 12 months; other and third limit nothing. The boom
    does the job. The cart does all else, so that the tank of the boom says nothing unless a case
    is about it. Both were last used and cleaned in spring 2026.
    """
    year = {"amount_fl_oz_per_ac": 128, "counted": "any_12_months"}
    data = small_property(_card(RED, max_per_year=year))
    (brew,) = data["products"]["products"]
    data["products"]["products"] += [
        copy.deepcopy(brew)
        | {"id": name, "name": f"Made-up product {name}", "label": _card(active)}
        for name, active in (("other", BLUE), ("third", GREEN))
    ]
    (boom,) = data["equipment"]["sprayers"]
    boom["last_load"] = {"sprayed_on": "2026-05-02", "cleaned_out_on": "2026-05-03"}
    data["equipment"]["sprayers"].append(copy.deepcopy(boom) | {"id": "cart", "name": "Cart"})
    data["property"]["season_signs"] |= {
        "thaw": {"early": "02-20", "typical": "03-01", "late": "03-10"},
        "grass_green_up": {"early": "04-25", "typical": "05-02", "late": "05-10"},
        "soil_warm": "05-15",
        "soil_for_sorghum": "05-15",
    }
    return data


def _card(active: str, **use: Any) -> Data:
    """A full card, its figures the same at every time, from 1 to 256 fl oz to an acre."""
    figures = {
        "covers": {"kinds": KINDS, "species": ["any"], "land": "any", "places": ["any"]},
        "rate_low_fl_oz_per_ac": 1,
        "rate_high_fl_oz_per_ac": 256,
        "max_per_application_fl_oz_per_ac": NONE,
        "max_per_year": NONE,
        "times_per_year": NONE,
    }
    strength = {"strength_lb_per_gal": 4, "basis": "ae", "works_as": ["other"]}
    uses = (full_use(timing, **(figures | use)) for timing in TIMINGS)
    return full_card(*uses, actives=[{"active": active} | strength])


def _acre_twice() -> Data:
    """The acre, with 32 fl oz of brew asked for in the burn down of spring 2027 too.

    Its open dates are 8 to Apr 29. The kill of the fall before is in the log of each case.
    """
    data = _acre()
    the_work(data).append(dict(the_work(data)[0]) | {"step": "spring_burn_down"})
    return data


def _two_acres() -> Data:
    """The acre, and a second one by the name of far, on which nothing is planned."""
    data = _acre()
    (lane,) = data["screens"]["screens"]
    far = copy.deepcopy(lane) | {"id": "far", "name": "Far screen", "known_as": "Strip 2"}
    del far["plantings"]
    data["screens"]["screens"].append(far)
    return data


def _dry_acre() -> Data:
    """The acre, with brew a dry product of 75 percent, sprayed at 8 ounces by weight."""
    data = _acre()
    brew = data["products"]["products"][0]
    for use in brew["label"]["uses"]:
        for name in ("rate_low", "rate_high", "max_per_application"):
            del use[f"{name}_fl_oz_per_ac"]
        use |= {"rate_low_oz_wt_per_ac": 4, "rate_high_oz_wt_per_ac": 16}
        use |= {"max_per_application_oz_wt_per_ac": NONE, "max_per_year": NONE}
    brew["label"]["actives"] = [
        {"active": RED, "strength_pct": 75, "basis": "ai", "works_as": ["other"]}
    ]
    del brew["package_gal"], brew["on_hand_fl_oz"]
    del the_work(data)[0]["rate_product_fl_oz_per_ac"]
    the_work(data)[0]["rate_product_oz_wt_per_ac"] = 8
    data["equipment"]["measures"].append({"id": "scale", "name": "scale", "mark_oz_wt": 0.1})
    data["equipment"]["sprayers"][0]["measure"] = ["jug", "scale"]
    return data


def _with_own_step(**step: Any) -> Data:
    """The acre, its step plan with one more step of the owner's."""
    data = _acre()
    said = {"why": "For this case.", "if_missed": "Leave it."}
    own = {"id": "grass_with_more", "name": "Grass, with one more step",
           "based_on": "frost_seeded_native_grass", "steps": [said | step]}  # fmt: skip
    data["steps"] = {"step_plans": [own]}
    data["screens"]["screens"][0]["plantings"][0]["steps"] = own["id"]
    return data


def _late_winter() -> Data:
    """The acre, sown in the season of 2029, with 32 fl oz of brew asked for on Mar 1 alone."""
    data = _with_own_step(
        step="winter_spraying", name="Spray in late winter", operation="spray",
        timing="after_sowing_before_emergence",
        opens=[{"date": "03-01"}], closes=[{"date": "03-01"}],
    )  # fmt: skip
    data["screens"]["screens"][0]["plantings"][0]["season"] = 2029
    the_work(data)[0]["step"] = "winter_spraying"
    return data


def _winter_mowing() -> Data:
    """The acre, with a mowing of its own from Dec 15 to Jan 31."""
    return _with_own_step(
        step="winter_mowing", name="Mow in winter", operation="mow", timing="before_sowing",
        opens=[{"date": "12-15"}], closes=[{"date": "01-31"}],
    )  # fmt: skip


def _plot(species: str, season: int, steps: str, step: str) -> Data:
    """An acre for food in place of the acre of grass, with 32 fl oz of brew in one step."""
    data = _acre()
    work = dict(the_work(data)[0]) | {"step": step}
    lot = data["seed"]["lots"][0] | {"id": "plot-seed", "species": species}
    data["seed"]["lots"].append(lot)
    planting = {
        "id": f"plot-{season - 2000}", "season": season, "method": "broadcast", "steps": steps,
        "seed": [{"species": species, "lot": lot["id"], "rate_pls_lb_per_ac": 8}], "work": [work],
    }  # fmt: skip
    plot = {"id": "plot", "name": "Plot", "known_as": "Plot 1", "length_ft": 435.6,
            "width_ft": 100, "contract": "none", "plantings": [planting]}  # fmt: skip
    del data["screens"], data["readers"]
    return data | {"strips": {"strips": [plot]}}


def _beans() -> Data:
    """An acre of soybeans; 32 fl oz of brew over them between May 25 and Jul 5, 2027."""
    return _plot("soybean", 2027, "beans_or_corn", "crop_weeds")


def _clover_to_sow() -> Data:
    """An acre to be sown to white clover in February 2027, killed with brew in September 2026."""
    return _plot("white-clover", 2027, "ladino_clover", "clover_kill")


def _clover() -> Data:
    """An acre of white clover that stands since 2026; brew over it from May 15 to Jun 30, 2027."""
    data = _plot("white-clover", 2026, "clover_with_more", "grass_in_clover")
    step = {"step": "grass_in_clover", "name": "Spray grass in the clover", "operation": "spray",
            "timing": "established_growing", "seasons_later": 1, "why": "For this case.",
            "opens": [{"date": "05-15"}], "closes": [{"date": "06-30"}],
            "if_missed": "Leave it."}  # fmt: skip
    own = {"id": "clover_with_more", "name": "Clover, with one more step",
           "based_on": "ladino_clover", "steps": [step]}  # fmt: skip
    return data | {"steps": {"step_plans": [own]}}


STARTS = {
    "acre": _acre,
    "acre_twice": _acre_twice,
    "two_acres": _two_acres,
    "dry_acre": _dry_acre,
    "late_winter": _late_winter,
    "winter_mowing": _winter_mowing,
    "beans": _beans,
    "clover": _clover,
    "clover_to_sow": _clover_to_sow,
}

"""A spraying that is not cleared leaves no amount in any output, for any reader.

Every figure of the property is odd enough to be found again. The same property, its use made to
cover native grass, prints them: so the search can fail.
"""

import html
import re
import zipfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from generator.book.make import make_book
from generator.cli import main
from generator.inventory.label import YearlyLimit
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.site.one_file import file_beside
from generator.site.stage import stage
from generator.units import UNITS, convert, digits, family_suffixes
from generator.working import Given, Quantity, flat_inputs, walk
from tests.plan.planned import KILL, inventory_of, job_of, planned, stops_of
from tests.properties import Data, full_card, full_use, small_property, the_work, write_property

Numbers = Counter[tuple[str, str]]
Outputs = dict[str, Numbers]
NUMBER = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?")
CLOVER = {"kinds": ["clover"], "species": ["any"], "land": "any", "places": ["any"]}
GRASS = CLOVER | {"kinds": ["native_grass"]}
RATES = {
    "rate_product_fl_oz_per_ac": 37.753,
    "rate_product_pt_per_ac": 2.3597,
    "rate_product_ml_per_ha": 2758.7,
    "rate_ae_lb_per_ac": 0.93513,
}


def property_with(covers: Data, rate: str, value: float) -> Data:
    """The small property in odd figures, its product used at this rate on ground so covered."""
    use = full_use(
        covers=covers,
        rate_low_fl_oz_per_ac=29.257,
        rate_high_fl_oz_per_ac=53.353,
        max_per_application_fl_oz_per_ac=53.151,
        max_per_year={"amount_fl_oz_per_ac": 113.37, "counted": "calendar_year"},
    )
    strength = {"active": "made-up active A", "strength_lb_per_gal": 3.1707, "basis": "ae"}
    data = small_property(
        full_card(use, actives=[strength]), **{"rate_product_fl_oz_per_ac": None, rate: value}
    )
    product = data["products"]["products"][0]
    del product["package_gal"]
    product |= {"package_pt": 2.3719, "price_usd": 67.43, "on_hand_fl_oz": 19.553}
    data["screens"]["screens"][0] |= {"length_ft": 1234.5, "width_ft": 27.3}
    equipment = data["equipment"]
    equipment["measures"][0]["mark_fl_oz"] = 0.13
    equipment["sprayers"][0] |= {"tank_gal": 7.93}
    equipment["sprayers"][0]["catch_tests"][0]["caught_fl_oz"] = [31.7, 31.9]
    return data


def amounts_of(plan: Plan) -> Iterator[Given | Quantity]:
    """Every amount of the cleared kill: its numbers, loads, rates, limits, and what to buy."""
    job = job_of(plan)
    assert job.mix is not None
    tops = [*job.numbers.values()]
    for load in job.mix.loads:
        tops += [load.spray] if isinstance(load.spray, Quantity) else []
        tops += [figure for one in load.doses for figure in (one.amount, one.rate)]
    for bought in plan.buying.purchases:
        if bought.item.id == "brew":
            tops += [bought.needed]
            yield from (one for one in (bought.on_hand, bought.package) if one is not None)
    for one in {q.identity: q for top in tops for q in walk(top)}.values():
        if "ground" not in one.identity and "flow" not in one.identity and one.unit != "count":
            yield one
    (part,) = job.mix.parts
    product, use = part.product, part.use
    limit = use.max_per_year
    assert isinstance(limit, YearlyLimit)
    typed = (product.price_usd, part.card.actives[0].strength_lb_per_gal, limit.amount)
    typed += (use.rate_low, use.rate_high, use.max_per_application)
    yield from (one for one in typed if isinstance(one, Given))


def ways_to_write(figure: Given | Quantity) -> set[str]:
    """An amount in every unit of its kind, rounded as a page rounds it, and not rounded.

    Only what can be nothing else: a point and three digits or more.
    """
    texts: set[str] = set()
    for unit in family_suffixes(UNITS[figure.unit].family):
        value = convert(figure.value, figure.unit, unit)
        texts |= {digits(value, unit), repr(value), f"{value:.6g}", f"{value:.2f}"}
    if isinstance(figure, Given):
        texts.add(repr(figure.typed))
    return {one for one in texts if "." in one and len(re.sub(r"^[0.,]+|[.,]", "", one)) >= 3}


def numbers_in(texts: dict[str, str]) -> Numbers:
    """How often each number stands in each text, as it is written there."""
    return Counter(
        (name, number) for name, text in texts.items() for number in NUMBER.findall(text)
    )


def printed_in(numbers: Numbers, *figures: Given | Quantity) -> set[Any]:
    """Where any of the amounts stands, and how it is written there."""
    ways = {way for figure in figures for way in ways_to_write(figure)}
    return {place for place in numbers if place[1] in ways}


def texts_below(folder: Path) -> dict[str, str]:
    """Every file below a folder as text, entities resolved; a picture as the letters in it."""
    return {
        f"{folder.name}/{path.relative_to(folder)}": html.unescape(
            _unpacked(path).decode("utf-8", errors="ignore")
        )
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def _unpacked(path: Path) -> bytes:
    if path.suffix != ".xlsx":
        return path.read_bytes()
    with zipfile.ZipFile(path) as archive:
        return b"\n".join(archive.read(name) for name in archive.namelist())


def outputs_of(data: Data, work: Path) -> Outputs:
    """The numbers in everything the program puts out for a property, by reader."""
    folder = write_property(work / "property", data)
    run = CliRunner()
    built = run.invoke(main, ["build", str(folder), "--out", str(work / "site")])
    assert built.exit_code == 0, built.output
    owner = {"build": built.output}
    for command in (["check", "--strict"], ["check"], ["explain"]):
        said = run.invoke(main, [*command[:1], str(folder), *command[1:]])
        owner[" ".join(command)] = said.stdout
    for number in owner["explain"].split():
        said = run.invoke(main, ["explain", str(folder), number])
        assert said.exit_code == 0, said.output
        owner[f"explain {number}"] = said.output
    for name in ("rate_ae_lb_per_ac", "product_fl_oz", "last_load_product_fl_oz"):
        said = run.invoke(main, ["explain", str(folder), f"{KILL}/{name}"])
        owner[f"asked for {name}"] = said.output
    inventory = inventory_of(data)
    plan = planned(data)
    stage(make_book(plan), work / "owner-tree")
    stage(make_book(seen_by(plan, inventory.readers[0])), work / "hired-tree")
    owner |= texts_below(work / "site/owner") | texts_below(work / "owner-tree")
    hired = texts_below(work / "site/hired") | texts_below(work / "hired-tree")
    for texts, name in ((owner, "owner"), (hired, "hired")):
        file = file_beside(work / "site" / name)
        texts[file.name] = html.unescape(file.read_text(encoding="utf-8"))
    for texts, tree in ((owner, "owner"), (hired, "hired")):
        assert f"{tree}/search/search_index.json" in texts
        assert f"{tree}-tree/mkdocs.yml" in texts
    assert "Made-up product brew" in owner["owner/products/brew.html"]
    return {"owner": numbers_in(owner), "hired": numbers_in(hired)}


def blank() -> Data:
    """The property with nothing typed of the product but its name."""
    data = property_with(GRASS, *next(iter(RATES.items())))
    del the_work(data)[0]["rate_product_fl_oz_per_ac"]
    product = data["products"]["products"][0]
    data["products"]["products"] = [{key: product[key] for key in ("id", "name", "invented")}]
    return data


@pytest.fixture(scope="module")
def without(tmp_path_factory: pytest.TempPathFactory) -> Outputs:
    """What is put out where no rate, no card, no package, no price and no count was typed."""
    return outputs_of(blank(), tmp_path_factory.mktemp("without"))


@pytest.mark.parametrize(("rate", "value"), RATES.items())
def test_a_product_for_clover_leaves_no_amount_on_a_grass_screen(
    rate: str, value: float, tmp_path: Path, without: Outputs
) -> None:
    cleared = planned(property_with(GRASS, rate, value))
    assert stops_of(cleared) == set()
    stopped = property_with(CLOVER, rate, value)
    assert stops_of(planned(stopped)) == {"S104"}
    amounts = list(amounts_of(cleared))
    for reader, numbers in outputs_of(stopped, tmp_path).items():
        assert printed_in(numbers - without[reader], *amounts) == set(), reader


def test_a_product_for_grass_prints_them(tmp_path: Path, without: Outputs) -> None:
    data = property_with(GRASS, "rate_product_fl_oz_per_ac", RATES["rate_product_fl_oz_per_ac"])
    plan = planned(data)
    new = {reader: numbers - without[reader]
           for reader, numbers in outputs_of(data, tmp_path).items()}  # fmt: skip
    amounts = {one.identity if isinstance(one, Quantity) else one.name: one
               for one in amounts_of(plan)}  # fmt: skip
    found = {
        reader: {name for name, one in amounts.items() if printed_in(numbers, one)}
        for reader, numbers in new.items()
    }
    assert set(amounts) - found["owner"] == set()
    money = {"price_usd", "on_hand_fl_oz", "package_fl_oz"}
    assert money & found["hired"] == set()
    needed = {"carrier_gal_per_ac", "spray_gal", "product_fl_oz", "full_load_product_fl_oz",
              "last_load_product_fl_oz", "last_load_rate_fl_oz_per_ac"}  # fmt: skip
    assert {f"{KILL}/{name}" for name in needed} <= found["hired"]


@pytest.mark.parametrize("stop", ["restricted_use", "read_on", "sprayer", "carrier", "mark"])
def test_any_other_stop_leaves_no_amount_either(
    stop: str, tmp_path: Path, without: Outputs
) -> None:
    rate, value = next(iter(RATES.items()))
    amounts = list(amounts_of(planned(property_with(GRASS, rate, value))))
    data = property_with(GRASS, rate, value)
    card = data["products"]["products"][0]["label"]
    if stop == "restricted_use":
        card["restricted_use"] = True
    elif stop == "read_on":
        del card["read_on"]
    elif stop == "sprayer":
        del data["screens"]["screens"][0]["plantings"][0]["work"][0]["sprayer"]
    elif stop == "carrier":
        card["uses"][0]["carrier_gal_per_ac"] = {"low_gal_per_ac": 30, "high_gal_per_ac": 40}
    else:
        data["equipment"]["measures"][0]["mark_fl_oz"] = 60
    assert len(stops_of(planned(data))) == 1
    # What the sprayer puts on is the cause of its stop, and no amount of a product.
    told = [one for one in amounts if stop == "carrier" and one.unit == "gal_per_ac"]
    for reader, numbers in outputs_of(data, tmp_path).items():
        kept = [one for one in amounts if reader != "owner" or one not in told]
        assert printed_in(numbers - without[reader], *kept) == set(), reader


def test_a_place_without_a_name_for_others_withholds_the_amounts_too(tmp_path: Path) -> None:
    data = property_with(GRASS, *next(iter(RATES.items())))
    amounts = list(amounts_of(planned(data)))
    empty = blank()
    for one in (data, empty):
        del one["screens"]["screens"][0]["known_as"]
    assert stops_of(planned(data)) == {"S122"}
    without = outputs_of(empty, tmp_path / "without")
    for reader, numbers in outputs_of(data, tmp_path / "with").items():
        assert printed_in(numbers - without[reader], *amounts) == set(), reader


@pytest.mark.parametrize(
    ("rate", "value"),
    [("rate_product_fl_oz_per_ac", 61.153), ("rate_product_pt_per_ac", 1.4187)],
)
def test_a_rate_outside_the_card_stands_beside_it_as_typed_and_in_pounds_for_the_owner_alone(
    rate: str, value: float, tmp_path: Path, without: Outputs
) -> None:
    data = property_with(GRASS, rate, value)
    plan = planned(data)
    assert "S110" in stops_of(plan)
    stop = next(one for one in plan.findings_on(KILL) if one.code == "S110")
    assert [told for told, _ in stop.figures] == [
        "Typed",
        "Strength of made-up active A",
        "Your rate",
        "Lowest on the card",
        "Highest on the card",
    ]
    told = [one for one in plan.findings_on(KILL) if one.severity == "stop"]
    unfolded = [figure for one in told for _, figure in one.figures]
    unfolded += [
        one for figure in unfolded if isinstance(figure, Quantity) for _, one in flat_inputs(figure)
    ]
    assert {one.unit for one in unfolded if not isinstance(one, Given)} == {"lb_per_ac"}
    typed = {(one.name, one.value) for one in unfolded if isinstance(one, Given)}
    inside = property_with(GRASS, "rate_product_fl_oz_per_ac", 37.753)
    amounts = [
        one
        for one in amounts_of(planned(inside))
        if one.unit != "lb_per_ac"
        and not (isinstance(one, Given) and (one.name, one.value) in typed)
    ]
    assert len(amounts) > 10
    new = {reader: numbers - without[reader]
           for reader, numbers in outputs_of(data, tmp_path).items()}  # fmt: skip
    for reader, numbers in new.items():
        assert printed_in(numbers, *amounts) == set(), reader
    for figure in unfolded:
        assert isinstance(figure, Given | Quantity)
        assert printed_in(new["owner"], figure)
        assert not printed_in(new["hired"], figure)

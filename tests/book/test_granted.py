"""Every value that the program brings along itself stands on the page that lists them."""

import ast
import re
from collections.abc import Iterator

from generator.book.marks import printed
from generator.plan.views import granted as constants
from generator.plan.views.granted import FIXED
from generator.reference.granted import granted_groups
from generator.reference.growth import growths
from generator.reference.library import values
from generator.reference.usual import usual_seed
from tests.book.reading import read
from tests.book.sites import Site
from tests.structure.modules import PACKAGE, modules

DATA = PACKAGE / "reference" / "data"
# Constants of plan/ that are nobody's practice, and why.
NOT_ASSUMED = {
    "RATE_DECIMALS": "digits in which two units of one rate may differ",
    "DECEMBER": "a name in the calendar",
    "SATURDAY": "a name in the calendar",
    "SUNDAY": "a name in the calendar",
    "ENOUGH_BEFORE": "how many of a list have to be looked at",
    "ONE_DAY": "a length by what it is called",
    "ONE_WEEK": "a length by what it is called",
    "WEEK": "a length by what it is called",
    "MINUTE": "a length by what it is called",
    "MARGIN": "what a formula of the sun may be off by",
    "_HOURS_IN_DAY": "a conversion",
    "DEG_IN_AN_HOUR": "a conversion",
    "_COMMON_YEAR": "a year without a leap day, to count days in",
    "WELL_INTO_NEXT_MONTH": "a step in the calendar",
    "DECIMALS": "rounding",
    "ROUNDING": "rounding",
    "_ROUNDING": "rounding",
    "NOTHING_LB_PER_AC": "rounding",
    "HALF_A_PERCENT": "rounding",
    "TEN": "tries where a slip of a digit leads",
    "MOST_TENS": "tries where a slip of a digit leads",
    "SHORTEST": "how long a name is that a text can be searched for",
    "FT_DECIMALS": "rounding",
    "SEARCHED_DECIMALS": "to which decimals a point that is kept is searched for",
    "_POINT_ROOM": "to which decimals a point that is kept is searched for",
    "SEASONS_SHOWN": "how far a page looks ahead",
    "_SEASONS_TOLD": "how far a page looks ahead",
    "FALLS_TOLD": "how far a page looks ahead",
    "VOLUMES_BETWEEN": "rows of a table",
    "KEPT_PIECES": "how much is kept in memory",
    "_REMEMBERED": "how much is kept in memory",
    "FIRST_MONTH_OF_GROWTH": "when a year of growth begins in the list of heights",
    "_QUARTERS": "how finely degrees are asked",
    "FIRST_MONTH_OF_FALL": "when winter can begin early in the list of heights",
    "FIRST_MONTH_OF_WINTER": "when winter begins in the list of heights",
}
NUMBER = (int, float)


def numbers_of_plan() -> Iterator[str]:
    """The names of constants of plan/ that are a number or a length of time."""
    for module in modules("plan"):
        for node in module.tree.body:
            if not isinstance(node, ast.Assign) or not isinstance(node.targets[0], ast.Name):
                continue
            name, value = node.targets[0].id, node.value
            number = isinstance(value, ast.Constant) and type(value.value) in NUMBER
            span = isinstance(value, ast.Call) and ast.unparse(value.func) == "datetime.timedelta"
            if name.isupper() and (number or span):
                yield name


def used_values() -> set[str]:
    """The names of reference values that code reads, or data that code follows."""
    texts = [path.read_text(encoding="utf-8") for path in PACKAGE.rglob("*.py")]
    for name in ("suited", "found_signs", "operations"):
        texts.append((DATA / f"{name}.yaml").read_text(encoding="utf-8"))
    words = set(re.findall(r"\w+", "\n".join(texts)))
    emergence = {"emergence_fewest_days", "emergence_most_days"}
    return {name for name in values() if name in words | emergence or name.startswith("usual_")}


def listed_values() -> set[str]:
    rows = [row for group in granted_groups() for row in group.rows]
    ends = [end for row in rows if row.range for end in (row.range.low, row.range.high)]
    return {
        *(row.value.name for row in rows if row.value),
        *(end.name for end in ends if end is not None and hasattr(end, "name")),
    }


def test_every_value_that_code_uses_is_listed() -> None:
    assert len(used_values()) > 140
    assert used_values() - listed_values() == set()


def test_every_constant_of_the_plan_is_listed_or_nobody_s_practice() -> None:
    found = set(numbers_of_plan())
    assert found >= NOT_ASSUMED.keys()
    listed = {name for name in found if name in vars(constants)}
    assert found - listed - NOT_ASSUMED.keys() == set()
    fixed = {row.fixed for group in granted_groups() for row in group.rows if row.fixed}
    assert fixed == FIXED.keys()


def test_the_page_shows_each_with_its_source(demo_sites: dict[str, Site]) -> None:
    owner = demo_sites["owner"]
    page = read(owner.pages()["granted.html"])
    rows = {
        tuple(cell.text() for cell in row.all("td"))
        for row in page.all("tr")
        if len(row.all("td")) == 3
    }
    for group in granted_groups():
        for row in group.rows:
            figure = row.value or FIXED.get(row.fixed)
            told = [told for told in rows if told[0] == row.enters]
            assert len(told) == 1, row.enters
            assert told[0][2], row.enters
            for end in [figure] if figure else [row.range.low, row.range.high]:
                assert end is None or printed(end) in told[0][1], row.enters
    text = page.text()
    for kind in growths():
        assert all(printed(full["low"]) in text for full in kind.full), kind.id
    assert all(printed(usual.rate.low) in text for usual in usual_seed().values())
    assert "granted.html" not in {
        address for name in demo_sites if name != "owner" for address in demo_sites[name].pages()
    }


def test_what_to_type_in_its_place_is_a_key_there_is() -> None:
    told = [row.to_type for group in granted_groups() for row in group.rows if row.to_type]
    told += [group.to_type for group in granted_groups() if group.to_type]
    schema = "\n".join(
        path.read_text(encoding="utf-8") for path in (PACKAGE / "inventory").glob("*.py")
    )
    keys = [re.match(r"\w+", one) for one in told]
    assert len(keys) > 4
    for key in keys:
        assert key is not None
        assert re.search(rf"\b{key[0]}: ", schema), key[0]

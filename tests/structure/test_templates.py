"""Templates and authored prose neither calculate nor hold figures typed in by hand."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import Environment, nodes

from generator.units import UNITS
from tests.structure.modules import CHECKOUT

ARITHMETIC = (
    nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow,
)  # fmt: skip
CALCULATING_FILTERS = {"sum", "round", "int", "float", "abs"}
COUNTING_FILTERS = {"length", "count"}

# How units are written out beside the words of the table.
SPELLED_OUT = {
    "foot", "feet", "inch", "inches", "yard", "yards", "mile", "miles", "metre", "metres",
    "acre", "acres", "hectare", "hectares", "square feet", "square foot", "pound", "pounds",
    "lbs", "ounce", "ounces", "oz", "ton", "kilogram", "kilograms", "gram", "grams", "gallon",
    "gallons", "quart", "quarts", "pint", "pints", "cup", "litre", "litres", "liter", "liters",
    "percent", "per cent", "hour", "minute", "minutes", "second", "seconds", "day", "week",
    "weeks", "dollar", "psi", "gpm", "gpa", "degrees", "times",
}  # fmt: skip
UNIT_WORDS = {unit.words for unit in UNITS.values() if unit.words} | SPELLED_OUT


def _any_of(words: set[str]) -> str:
    return "|".join(re.escape(one) for one in sorted(words, key=lambda one: (-len(one), one)))


# A unit of one letter needs a space before it: `4L` and `1990s` are no measures.
LETTERS = {one for one in UNIT_WORDS if len(one) == 1 and one.isalpha()}
GAP = r"(?:[\s-]|&nbsp;)"
FIGURE = re.compile(
    rf"\d(?:{GAP}*(?:{_any_of(UNIT_WORDS - LETTERS)})|{GAP}+(?:{_any_of(LETTERS)}))(?!\w)|\$\s?\d"
)
# What is not read as prose: style sheets, scripts, tags, addresses of links.
NOT_PROSE = re.compile(
    r"<style\b.*?</style>|<script\b.*?</script>|<[^<>]*>|\]\([^()]*\)", re.DOTALL | re.IGNORECASE
)
# The number to call is a name, not a figure: "call 911 in an emergency".
CALLED = re.compile(r"\b911\b")


def template_files() -> list[Path]:
    """Every template and every authored chapter or callout."""
    found = [
        path
        for path in (CHECKOUT / "site_templates").rglob("*")
        if path.suffix in {".md", ".html", ".jinja"}
    ]
    return sorted([*found, *(CHECKOUT / "content").rglob("*.md")])


def is_theme(path: Path) -> bool:
    return (CHECKOUT / "site_templates" / "theme") in path.parents


def calculation_faults(text: str) -> Iterator[str]:
    """Places where a template works a number out."""
    tree = Environment().parse(text)
    for node in tree.find_all(ARITHMETIC):
        yield f"{node.lineno} calculates: {type(node).__name__}"
    asked = {id(node) for node in _asked_only(tree)}
    for found in tree.find_all(nodes.Filter):
        counts = found.name in COUNTING_FILTERS and id(found) not in asked
        if found.name in CALCULATING_FILTERS or counts:
            yield f"{found.lineno} calculates with the filter {found.name}"


def _asked_only(tree: nodes.Template) -> Iterator[nodes.Node]:
    """Filters in the test of a condition, where a number is asked about and not shown."""
    for branch in tree.find_all((nodes.If, nodes.CondExpr)):
        if isinstance(branch.test, nodes.Filter):
            yield branch.test
        yield from branch.test.find_all(nodes.Filter)


def figure_faults(text: str) -> Iterator[str]:
    """Places in literal text where a digit stands before a unit."""
    prose = _blanked(CALLED, _blanked(NOT_PROSE, literal_text(text)))
    for found in FIGURE.finditer(prose):
        line = prose.count("\n", 0, found.start()) + 1
        yield f"{line} figure typed in: {found[0]!r}"


def literal_text(text: str) -> str:
    """The text outside expressions, statements and comments, those blanked line by line."""
    return "".join(
        value if kind == "data" else re.sub(r"[^\n]", "\0", value)
        for _, kind, value in Environment(keep_trailing_newline=True).lex(text)
    )


def _blanked(pattern: re.Pattern[str], text: str) -> str:
    return pattern.sub(lambda found: re.sub(r"[^\n]", "\0", found[0]), text)


def test_templates_are_found() -> None:
    assert {"pages", "theme"} <= {path.parent.name for path in template_files()}


@pytest.mark.parametrize("path", template_files(), ids=lambda path: path.name)
def test_a_template_does_not_calculate(path: Path) -> None:
    assert list(calculation_faults(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    "path", [one for one in template_files() if not is_theme(one)], ids=lambda path: path.name
)
def test_a_template_holds_no_figures(path: Path) -> None:
    assert list(figure_faults(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    "text",
    [
        "{{ a + b }}",
        "{{ a - 1 }}",
        "{{ a * b }}",
        "{{ a / b }}",
        "{{ a // b }}",
        "{{ a % b }}",
        "{{ a ** 2 }}",
        "{% set n = n + 1%}",
        "{% if a + b > 3%}x{% endif %}",
        "{{ loads | sum }}",
        "{{ loads | sum(attribute='gal') }}",
        "{{ rate | round(1) }}",
        "{{ rate | int }}",
        "{{ rate | float }}",
        "{{ rate | abs }}",
        "{{ loads | length }}",
        "{{ 'x' if a else loads | length }}",
        "{% if a %}{{ loads | count }}{% endif %}",
        "{% if rate | round > 3%}x{% endif %}",
    ],
)
def test_calculation_is_seen(text: str) -> None:
    (fault,) = calculation_faults(text)
    assert fault.startswith("1 calculates")


@pytest.mark.parametrize(
    "text",
    [
        "{% if loads | length %}x{% endif %}",
        "{% if loads | length > 1 and other %}x{% endif %}",
        "{{ 'many' if loads | length > 1 else 'one' }}",
        "{{ first ~ ' ' ~ last }}",
        "{{ show(job.area) }}",
        "{% for load in loads %}{{ loop.index }}{% endfor %}",
        "{{ names | join(', ') }}",
        "Spray + mix - a dash is text * not arithmetic.",
    ],
)
def test_showing_is_not_taken_for_calculating(text: str) -> None:
    assert list(calculation_faults(text)) == []


@pytest.mark.parametrize(
    "text",
    [
        "no deeper than 1/4 in.",
        "on 3 ac of ground",
        "under 5 mph",
        "12ft wide",
        "a 24-foot strip",
        "16 fl oz to the gallon",
        "8 lb/ac",
        "3 days before",
        "20%",
        "20% of it",
        "wait 4&nbsp;hours",
        "costs $5",
        "2 L of water",
        "take 30 g",
        "<p>cut to 8 inches</p>",
        "<b>8</b>\n\nand 9\nacres",
        "{{ a }} and 3 acres",
        "ten pounds on 2 square feet",
    ],
)
def test_a_figure_is_seen(text: str) -> None:
    assert len(list(figure_faults(text))) == 1


def test_a_figure_is_named_with_its_line() -> None:
    (fault,) = figure_faults("{# one\ntwo #}\nthree {{\nfour }}\nno more than 5 mph\n")
    assert fault.startswith("5 figure typed in")


@pytest.mark.parametrize(
    "text",
    [
        '{{ value("switchgrass.depth_in") }} in the ground',
        "{{ 3 }} acres",
        "{# 3 acres #}",
        "## 2. Before sowing",
        "call 911 in an emergency",
        "strength 4L",
        "in the 1990s",
        "2027 is the season",
        "<div style='width: 20%'>x</div>",
        "<style>p { margin: 3 in }</style>",
        "[law](https://example.org/7-days)",
        "7 inputs",
    ],
)
def test_other_numbers_pass(text: str) -> None:
    assert list(figure_faults(text)) == []

"""Nothing that ships says how much of a real active goes onto ground, how strong it is, or a limit.

Label figures stand on cards of invented actives in the demo alone.
"""

import re
from pathlib import Path

import pytest
import yaml

CHECKOUT = Path(__file__).resolve().parents[2]
SHIPPED = ("generator", "content", "site_templates", "demo_property", "mkdocs.yml")
BESIDE = ("README.md", "DEVELOPERS.md", "CHANGELOG.md")
TEXTS = {".md", ".yaml", ".yml", ".py", ".jinja", ".html", ".js", ".css", ".svg", ".json", ".txt"}
REAL = (
    "2,4-d", "2,4-db", "aminopyralid", "atrazine", "clethodim", "clopyralid", "dicamba",
    "fluazifop", "fluroxypyr", "glufosinate", "glyphosate", "imazamox", "imazapic", "mcpa",
    "mesotrione", "metolachlor", "metsulfuron", "paraquat", "pendimethalin", "picloram",
    "quinclorac", "quizalofop", "sethoxydim", "simazine", "sulfosulfuron", "triclopyr",
)  # fmt: skip
# A number with a unit in which herbicides are dosed, limited or made up.
DOSE = re.compile(
    r"\d[\d.,/ ]*(?:fl\.? ?oz|oz|ounces?|lbs?|pounds?|qts?|quarts?|pts?|pints?|gal(?:lons?)?|ml|l|"
    r"liters?|liters?|kg|g|grams?|%|percent|pct|ai|ae|hours?|ft|feet)\b|\d[\d.,]* ?%",
    re.IGNORECASE,
)
NEAR = 200  # characters before and after the name of an active
INVENTED = re.compile(r"^(demo|made-up|invented)\b")


def shipped_files() -> list[Path]:
    """Every text file that travels in the package, and the three read beside it."""
    files = [CHECKOUT / name for name in BESIDE]
    for name in SHIPPED:
        top = CHECKOUT / name
        files += [top] if top.is_file() else sorted(one for one in top.rglob("*") if one.is_file())
    return [one for one in files if one.suffix in TEXTS and "__pycache__" not in one.parts]


def doses_beside_actives(text: str) -> list[str]:
    """Each real active with a dose near it in the same paragraph."""
    found = []
    for paragraph in re.split(r"\n\s*\n", text):
        for name in REAL:
            for at in re.finditer(
                rf"(?<![\w-]){re.escape(name)}(?![\w])", paragraph, re.IGNORECASE
            ):
                around = paragraph[max(0, at.start() - NEAR) : at.start()] + " " * len(name)
                around += paragraph[at.end() : at.end() + NEAR]
                dose = DOSE.search(around)
                if dose:
                    found.append(f"{name} beside {dose.group().strip()}")
    return found


def actives_of(entry: object) -> list[str]:
    """The name of every active of every label card in a file of a property."""
    if isinstance(entry, dict):
        own = [
            str(one.get("active")) for one in entry.get("actives") or () if isinstance(one, dict)
        ]
        return own + [name for one in entry.values() for name in actives_of(one)]
    if isinstance(entry, list):
        return [name for one in entry for name in actives_of(one)]
    return []


@pytest.mark.parametrize("path", shipped_files(), ids=lambda one: str(one.relative_to(CHECKOUT)))
def test_no_dose_stands_beside_a_real_active(path: Path) -> None:
    assert doses_beside_actives(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    "text",
    [
        "Simazine at 3 quarts to an acre holds the weeds.",
        "Use 1.5 qt of glyphosate.",
        "- {active: clethodim, strength: 2 lb in a gallon}",
        "2,4-D goes on at 2%.",
        "ATRAZINE: no more than 2.5 lb ai in a year",
        "Keep people out for 48 hours after 2,4-D.",
    ],
)
def test_a_dose_beside_a_real_active_is_found(text: str) -> None:
    assert doses_beside_actives(text)


@pytest.mark.parametrize(
    "text",
    [
        "Simazine works through the soil.",
        "Sow 8 lb to an acre.\n\nGlyphosate leaves nothing in the soil.",
        "Demo residual A at 2 qt to an acre.",
    ],
)
def test_names_and_doses_apart_are_let_pass(text: str) -> None:
    assert doses_beside_actives(text) == []


def test_cards_that_ship_are_of_invented_actives() -> None:
    names = [
        name
        for folder in ("demo_property", "generator/starter")
        for path in sorted((CHECKOUT / folder).rglob("*.yaml"))
        for name in actives_of(yaml.safe_load(path.read_text(encoding="utf-8")))
    ]
    assert names
    assert [one for one in names if not INVENTED.match(one)] == []


def test_what_ships_is_looked_through() -> None:
    names = {str(one.relative_to(CHECKOUT)) for one in shipped_files()}
    assert {"demo_property/products.yaml", "generator/starter/products.yaml"} <= names
    assert any(one.startswith("content/chapters/") for one in names)
    assert any(one.startswith("generator/reference/data/steps/") for one in names)

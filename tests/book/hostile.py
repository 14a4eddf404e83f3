"""Properties in which every text is either harmless or tries to be more than text."""

import datetime
import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from generator.book.text import clean
from generator.inventory.fields import NOT_ON_LABEL, rules_of
from generator.inventory.load import FILES, PROPERTY_FILE
from generator.inventory.page_names import LONGEST_PAGE_NAME, slug
from generator.inventory.schema import Property
from generator.plan.jobs.typed_none import NONE_WORDS

Data = dict[str, Any]
# A field as the schema knows it: kind of record and name.
Field = tuple[str, str]
Filler = Callable[[int, str], str]

# Former ids and weather files name files, times of a day and zones are read: none is on a page.
NO_TEXT = frozenset(
    [
        "was",
        "file",
        "more_files",
        "started_at",
        "stopped_at",
        "ended_at",
        "ends_at",
        "from_time",
        "until_time",
        "began_at",
        "left_at",
        "time_zone",
        "utm_zone",
    ]
)
# Of a spraying that was a job the place is known, so that its words are a fault.
ONLY_WHERE_TYPED = frozenset([("Sprayed", "location"), ("Sprayed", "part")])
# Names a file and a shape in it, which stand there as they are.
OF_FILES = frozenset(["ShapeInFile"])
FOLDERS = ("elevation", "shapes", "weather")

# Words of these that begin by saying none is near are held against what is drawn.
TOLD_NONE_IN = frozenset(["water_and_wells", "lines", "neighbours"])

MARKDOWN = (
    "*a* _b_ **c** __d__ ~~e~~ `f`",
    "[a](http://e.example/) ![i](x.png)",
    "# heading",
    "- item",
    "1. item",
    "> quote",
    "| a | b |",
    "===",
    "---",
    "~~~ ```",
    ": meaning",
    "[^1] [^1]: note",
    "*[HTML]: x",
    "[a]: http://e.example/",
    "{: #clobbered .stop onclick=alert(1) }",
    "::: block",
    "!!! note",
    "\\* \\` \\",
    "wzxhzdk:0 klzzwxh:0000 amp\u0394",
)
HTML = (
    "<script>alert(1)</script>",
    "<img src=x onerror=\"console.log('live')\">",
    "<!-- gone",
    "-->",
    "</section></article></main>",
    "</title><svg onload=alert(1)>",
    "&amp; &lt;b&gt; &#60;i&#62; &copy",
    "'\"><a href=javascript:alert(1)>x</a>",
    "<b>\uff1cscript\uff1e",
)
TEMPLATES = ("{{ 7*7 }}", "{% raw %}", "{# gone #}", "${7*7} %(name)s {0} {name}")
SHEETS = ("=1+1", "@SUM(A1)", "+1", "-2+3")
YAML = ("key: value", "? a", "!!python/name:os.system", "&a *a", "%YAML 1.1", "#note", "no", "'\"")
PLAIN = (
    "http://e.example/ www.e.example a@e.example javascript:alert(1)",
    "\u202ereversed\u2069 \u2066x",
    "zero\u200bwidth\u00adhyphen\u2060",
    "W" * 120,
    "  spaces \u00a0 ",
    "line\n\n# next\n    code",
    "\U0001f98c\u200d e\u0301 \ufb01 \u05d0\u05d1",
    "../../../etc/passwd",
)
NUMBER = re.compile(r"\bq(\d+)q\b")
VECTORS = (*MARKDOWN, *HTML, *TEMPLATES, *SHEETS, *YAML, *PLAIN)


def hostile(number: int, name: str) -> str:
    """A text for one field: it begins as one attack and holds others, and is like no other's."""
    parts = [VECTORS[(number + step) % len(VECTORS)] for step in (0, 11, 17, 29)]
    if name in TOLD_NONE_IN and parts[0] in NONE_WORDS:
        parts.append(parts.pop(0))
    if name == "known_as":
        # A name that is too long for a file is a fault, and nothing would be built.
        parts = [one for one in parts if len(one) < LONGEST_PAGE_NAME // 4]
    return f"{parts[0]} q{number}q {' '.join(parts[1:])}"


def harmless(number: int, name: str) -> str:
    """The text that stands in the same field of the harmless property."""
    if name == "known_as":
        # The name that others know a place by is in the address of its page.
        return slug(hostile(number, name)).replace("-", " ")
    # numbers alone may differ by a letter, and such names are asked whether they are one
    apart = "".join(3 * "bcdfghjklm"[int(digit)] for digit in f"{number:04}")
    return f"Plain q{number}q {apart} words"


@dataclass
class Filled:
    """The fields filled, and by number the hostile text, as a page has it, and the harmless one."""

    fields: set[Field] = field(default_factory=set)
    texts: dict[int, tuple[str, str]] = field(default_factory=dict)

    def disarmed(self, text: str) -> str:
        """`text` with every hostile text in it replaced by the harmless one of the same field.

        Some end in blanks; one of them may be left before a sign that follows in our own sentence.
        """
        numbers = list(map(int, NUMBER.findall(text)))
        for number in numbers:
            text = text.replace(*self.texts[number])
        for _, plain in map(self.texts.__getitem__, numbers):
            for sign in ".,;:":
                text = text.replace(f"{plain} {sign}", f"{plain}{sign}")
        return text

    def count(self, text: str) -> int:
        """How many of the hostile texts stand in `text`, each whole."""
        return sum(self.texts[number][0] in text for number in set(map(int, NUMBER.findall(text))))


class _Quoting(yaml.SafeDumper):
    """Writes every text in double quotes, so that it takes one line whatever it holds."""


_Quoting.add_representer(
    str,
    lambda dumper, text: dumper.represent_scalar("tag:yaml.org,2002:str", text, style='"'),
)


def on_one_line_each(data: object) -> str:
    """Plain data as YAML in which no text begins a line of its own."""
    text: str = yaml.dump(data, Dumper=_Quoting, sort_keys=False, width=100_000)
    return text


def write(folder: Path, source: Path, fill: Filler, first: int = 0) -> Filled:
    """Writes `source` into `folder` with every text filled in, numbered from `first`.

    With `first` above 0, records that hold text and that the source leaves out are added; they
    stop the spraying.
    """
    folder.mkdir(parents=True)
    filled = _Fill(fill, first)
    for path in sorted(source.glob("*.yaml")):
        data = yaml.safe_load(path.read_text(encoding="utf-8"))
        if first and path.name == "products.yaml":
            _add_left_out(data["products"][0]["label"])
        if path.name == PROPERTY_FILE:
            filled.record(Property, data)
        for key, kind in FILES.get(path.stem, {}).items():
            for entry in data.get(key, ()):
                filled.record(kind, entry)
        (folder / path.name).write_text(on_one_line_each(data), encoding="utf-8")
    for name in FOLDERS:
        if (source / name).is_dir():
            shutil.copytree(source / name, folder / name)
    return filled.done


def _add_left_out(label: Data) -> None:
    label["bulletin"] = [{"checked_on": datetime.date(2026, 8, 1), "month": "2026-09"}]
    for use in label["uses"]:
        use["plant_back_days"] = [{"crop": "", "wait_days": 30}]


class _Fill:
    def __init__(self, fill: Filler, first: int) -> None:
        self.fill, self.number = fill, first
        self.done = Filled()

    def record(self, kind: type, data: Data) -> None:
        for name, rule in rules_of(kind).items():
            if (kind.__name__, name) in ONLY_WHERE_TYPED and name not in data:
                continue
            if rule.form == "text" and name not in NO_TEXT:
                text = self._text(kind, name)
                data[name] = [text] if rule.many else text
            elif rule.form == "record" and data.get(name, NOT_ON_LABEL) != NOT_ON_LABEL:
                assert rule.record is not None
                if rule.record.__name__ in OF_FILES:
                    continue
                for entry in data[name] if rule.many else [data[name]]:
                    self.record(rule.record, entry)

    def _text(self, kind: type, name: str) -> str:
        self.done.fields.add((kind.__name__, name))
        attack, plain = hostile(self.number, name), harmless(self.number, name)
        self.done.texts[self.number] = (clean(attack), plain)
        text = self.fill(self.number, name)
        self.number += 1
        return text


def text_fields() -> set[Field]:
    """Every field of the property folder that takes text."""
    kinds = [Property, *(kind for keys in FILES.values() for kind in keys.values())]
    return {field for kind in kinds for field in _text_fields(kind)}


def _text_fields(kind: type) -> Iterator[Field]:
    for name, rule in rules_of(kind).items():
        if rule.form == "text" and name not in NO_TEXT:
            yield kind.__name__, name
        if rule.record is not None and rule.record.__name__ not in OF_FILES:
            yield from _text_fields(rule.record)

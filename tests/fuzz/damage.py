"""Damages a tiny property by a seed: values, keys, lists, ids, letters, and the YAML itself."""

from __future__ import annotations

import copy
import datetime
import random
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from tests.fuzz.bases import Base, bases, drawn_bases, dumped, known

NUMBERS: tuple[Any, ...] = (
    0, -1, 1, 2, 0.1, 0.5, -0.0, 1e-9, 1e-300, 5e-324, 1e9, 1e15, 1e300, 1.7e308, -1e308, 99, 100,
    101, 1000, 1000.5, 2**31, 2**63, 10**40, -(10**40), 3.14159, 0.999999999, 1.000000001, 12, 366,
)  # fmt: skip
# As they are typed, not as a number or a text of YAML.
RAW = (
    ".inf", "-.inf", ".nan", "1e400", "1_000", "0x1F", "0o17", "017", "1,000", "3 1/2", ".75",
    "15%", "$140", "+5", "1.", "~", "null", "yes", "No", "on", "TRUE", "{}", "[]", "''", '""',
    "- 5", "1:30", "٣٢", "１２", "½", "४", "5 ft", "1e5", "12e", "--3", "!!int 5", "&a 5", "*a",
    "|", ">", "? x", "2026-08-20T10:00:00Z", "2026-2-3", "14/9/2026", "9/14/2026", "Sep 14", "@x",
    "`", "%", "[1, 2",
)  # fmt: skip
DAYS = (
    "0001-01-01", "0000-01-01", "9999-12-31", "1582-10-10", "1850-01-01", "1899-12-31",
    "1990-01-01", "2000-02-29", "2026-02-29", "2028-02-29", "2026-13-01", "2026-12-31",
    "2027-01-01", "2100-02-28", "2100-12-31", "10-17", "02-29", "02-30", "12-31", "01-01",
    "13-01", "2026", "2026-08", "today",
)  # fmt: skip
TEXTS = (
    "", " ", "\u202eabc", "e\u0301\u0301\u0301", "\U0001f33e", "\ufeff", "\u0000", "\u0085",
    "\u2028", "a" * 3000, "{{ 7 * 7 }}", "<b>x</b>", "](x)", "any", "all", "not_on_label", "none",
    "unsure", "no", "yes", "NUL", "con", "../x", "a/b", "\\", "'", '"', "#", "# x", ": ", "- ",
    "\n", "\t", "İ", "ß", "\ud7ff", "ａｂｃ", "ﬁ", "\u200b", "Ω", "straße", "ЖЖ", "漢字", "0", "1",
    "-", "%", "*", "|",
)  # fmt: skip
DAMAGED_LINES = (
    "\t", " ", "- ", ":", "#", "'", '"', "&a ", "*a", "<<: *a", "---", "...",
    "!!python/object:x {}", "[[[[[[[[", "{", "}", "]", "? ", "|", "\r", "\x00", "\x07", "\ufeff",
    "\u2028", "%YAML 1.2", "@", "`",
)  # fmt: skip


PACKED = ".kmz"
# Shares: of properties damaged in values, not in their text, and of those of which files are of
# other text than YAML; of values changed into likely ones; of properties with their land drawn; of
# those damaged in bytes, and of those that hold an archive.
VALUES, VALUES_OF_DRAWN, LIKELY, DRAWN, IN_BYTES, IN_BYTES_OF_PACKED = 0.9, 0.6, 0.8, 0.2, 0.02, 0.1


@dataclass(frozen=True)
class Damaged:
    """A damaged property: the bytes of its files, and what was done to which."""

    base: str
    files: dict[str, bytes]
    done: tuple[str, ...]


@dataclass(frozen=True)
class _Spot:
    """A value that stands in a file: its holder, its key or number there, the key above."""

    holder: Any
    at: Any
    key: str

    @property
    def value(self) -> Any:
        return self.holder[self.at]

    def becomes(self, value: Any) -> None:
        self.holder[self.at] = value


def damaged(seed: int) -> Damaged:
    """Return the property of a seed: the same seed gives the same bytes."""
    chance = random.Random(f"damage {seed}")
    base = chance.choice(drawn_bases() if chance.random() < DRAWN else bases())
    texts = dict(base.texts)
    done: list[str] = []
    if chance.random() < (VALUES_OF_DRAWN if base in drawn_bases() else VALUES):
        texts |= _with_values(base, chance, done)
    else:
        _in_text(texts, chance, done)
    files = {name: text.encode("utf-8", "surrogatepass") for name, text in texts.items()}
    files |= base.packed
    if chance.random() < (IN_BYTES_OF_PACKED if base.packed else IN_BYTES):
        _in_bytes(files, chance, done)
    return Damaged(base.name, files, tuple(done))


def _with_values(base: Base, chance: random.Random, done: list[str]) -> dict[str, str]:
    """Return the texts of the files in which values were damaged."""
    data: dict[str, Any] = {}
    raw: list[str] = []
    for _ in range(chance.choice((1, 1, 1, 1, 1, 2, 2, 3))):
        file = chance.choice([name for name, content in base.data.items() if content])
        if file not in data:
            data[file] = copy.deepcopy(base.data[file])
        spots = list(_spots(data[file], ""))
        if spots:
            spot = chance.choice(spots)
            before = repr(spot.value)[:60]
            how = _damage(spot, base, chance, raw)
            done.append(f"{file} {spot.key}: {before} {how}")
    return {file: _typed(dumped(file, content), raw) for file, content in data.items()}


def _typed(text: str, raw: list[str]) -> str:
    for number, one in enumerate(raw):
        for there in (f'"RAW{number}RAW"', f"RAW{number}RAW"):  # JSON has its texts in quotes
            text = text.replace(there, one)
    return text


def _spots(node: Any, above: str) -> list[_Spot]:
    found: list[_Spot] = []
    if isinstance(node, dict):
        for key, value in node.items():
            found += [_Spot(node, key, str(key)), *_spots(value, str(key))]
    elif isinstance(node, list):
        for number, value in enumerate(node):
            found += [_Spot(node, number, above), *_spots(value, above)]
    return found


def _damage(spot: _Spot, base: Base, chance: random.Random, raw: list[str]) -> str:
    """Damage one value, and return how in a few words: mostly into what somebody may mean."""
    value = spot.value
    likely, odd = [_other_value], [_dropped, _renamed, _raw, _grafted]
    if isinstance(value, bool) or value is None:
        likely += [_dropped]
    elif isinstance(value, int | float):
        likely, odd = [_scaled, _scaled, _scaled, _other_value], [*odd, _number, _number]
    elif isinstance(value, str):
        likely += [_moved, _moved, _moved] if value[:1].isdigit() else [_own_value, _own_value]
        odd += [_day] if value[:1].isdigit() else [_swapped, _text]
    elif isinstance(value, list):
        likely += [_list, _list]
    elif isinstance(value, dict):
        likely += [_added, _added, _dropped]
    way: Callable[..., str] = chance.choice(likely if chance.random() < LIKELY else odd)
    return way(spot, base, chance, raw)


def _other_value(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    values = known().values.get(spot.key, ())
    if not values:
        return "stays"
    spot.becomes(copy.deepcopy(chance.choice(values)))
    return f"becomes {spot.value!r:.80}"


def _own_value(spot: _Spot, base: Base, chance: random.Random, raw: list[str]) -> str:
    """Another value that this property types for the key, so that it names what there is."""
    spots = (one for content in base.data.values() for one in _spots(content, ""))
    own = [one.value for one in spots if one.key == spot.key and one.value != spot.value]
    if not own:
        return _other_value(spot, base, chance, raw)
    spot.becomes(copy.deepcopy(chance.choice(own)))
    return f"becomes {spot.value!r:.80}"


def _dropped(spot: _Spot, _base: Base, _chance: random.Random, _raw: list[str]) -> str:
    del spot.holder[spot.at]
    return "is dropped"


def _renamed(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    if not isinstance(spot.holder, dict):
        spot.holder.append(copy.deepcopy(spot.value))
        return "stands twice"
    key = str(spot.at)
    stem, _, unit = key.rpartition("_")
    near = [one for one in known().values if stem and one.startswith(f"{stem}_") and one != key]
    new = chance.choice(
        [*near, *near, key + "s", key.upper(), key[1:], f"{stem}_furlong", unit, ""]
    )
    spot.holder[new] = spot.holder.pop(spot.at)
    return f"is called {new!r}"


def _raw(spot: _Spot, _base: Base, chance: random.Random, raw: list[str]) -> str:
    raw.append(chance.choice(RAW))
    spot.becomes(f"RAW{len(raw) - 1}RAW")
    return f"is typed {raw[-1]!r}"


def _grafted(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    values = known().values[chance.choice(sorted(known().values))]
    spot.becomes(copy.deepcopy(chance.choice(values)))
    return f"becomes {spot.value!r:.80}"


def _number(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    spot.becomes(chance.choice(NUMBERS))
    return f"becomes {spot.value!r}"


def _scaled(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    value = spot.value
    factor = chance.choice((-1, 0.1, 0.5, 0.9, 1.1, 1.5, 2, 3, 7, 10, 25, 100, 1e4, 1e-3))
    spot.becomes(chance.choice((value * factor, value + 1, value - 1, round(value * factor))))
    return f"becomes {spot.value!r}"


def _day(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    spot.becomes(chance.choice(DAYS))
    return f"becomes {spot.value!r}"


def _moved(spot: _Spot, base: Base, chance: random.Random, raw: list[str]) -> str:
    try:
        day = datetime.date.fromisoformat(str(spot.value))
    except ValueError:
        return _day(spot, base, chance, raw)
    days = chance.choice((-4000, -366, -180, -30, -1, 1, 7, 45, 120, 365, 366, 730))
    moved = day.toordinal() + days
    if not datetime.date.min.toordinal() <= moved <= datetime.date.max.toordinal():
        return _day(spot, base, chance, raw)
    spot.becomes(str(datetime.date.fromordinal(moved)))
    return f"becomes {spot.value!r}"


def _text(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    odd = chance.choice(TEXTS)
    text = str(spot.value)
    at = chance.randrange(len(text) + 1)
    spot.becomes(chance.choice((odd, text[:at] + odd + text[at:], text.upper(), text[:at])))
    return f"becomes {spot.value!r:.60}"


def _swapped(spot: _Spot, base: Base, chance: random.Random, _raw: list[str]) -> str:
    own = [one.value for content in base.data.values() for one in _spots(content, "")]
    words = [one for one in own if isinstance(one, str)]
    spot.becomes(chance.choice([*words, chance.choice(known().ids)]))
    return f"becomes {spot.value!r:.60}"


def _list(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    entries = list(spot.value)
    way = chance.choice(
        ("doubled", "turned round", "emptied", "shortened", "within another", "long")
    )
    if way == "doubled":
        entries += copy.deepcopy(entries)
    elif way == "turned round":
        entries.reverse()
    elif way == "emptied":
        entries = []
    elif way == "shortened":
        entries = entries[:-1]
    elif way == "within another":
        entries = [entries]
    else:
        entries = [copy.deepcopy(one) for one in entries[:3] for _ in range(12)]
    spot.becomes(entries)
    return f"is {way}"


def _added(spot: _Spot, _base: Base, chance: random.Random, _raw: list[str]) -> str:
    keys = known().beside.get(spot.key, ())
    if not keys:
        return "stays"
    for key in chance.sample(keys, min(len(keys), chance.choice((1, 1, 2, 4)))):
        spot.value[key] = copy.deepcopy(chance.choice(known().values[key]))
    return "is added to"


def _in_text(texts: dict[str, str], chance: random.Random, done: list[str]) -> None:
    """Damage the lines of one file, or the files themselves."""
    file = chance.choice(sorted(texts))
    lines = texts[file].split("\n")
    at = chance.randrange(len(lines))
    line, odd = lines[at], chance.choice(DAMAGED_LINES)
    middle = chance.randrange(len(line) + 1)
    way = chance.randrange(13)
    if way == 0:
        lines[at] = line[:middle] + odd + line[middle:]
    elif way == 1:
        lines[at] = line[:middle] + line[middle + 1 :]
    elif way == 2:
        lines.insert(at, line)
    elif way == 3:
        lines[at] = " " * chance.choice((1, 2, 4)) + line
    elif way == 4:
        lines[at] = line.replace(":", "", 1) if ":" in line else line.lstrip()
    elif way == 5:
        lines[at] = odd
    elif way == 6:
        lines = lines[:at]
    elif way == 7:
        other = chance.randrange(len(lines))
        lines[at], lines[other] = lines[other], lines[at]
    elif way == 8:
        del texts[file]
        done.append(f"{file} is gone")
        return
    elif way == 9:
        texts[chance.choice(("notes.yaml", "screens copy.yaml", "log/001.yaml", "x.csv"))] = line
    elif way == 10:
        lines = [one + "\r" for one in lines]
    else:
        lines[at] = _with_another_number(line, chance)
    texts[file] = "\n".join(lines)
    done.append(f"{file} line {at + 1}, way {way}, {odd!r}")


def _with_another_number(line: str, chance: random.Random) -> str:
    """A line with one of its numbers scaled or typed in another way."""
    numbers = list(re.finditer(r"-?\d+(?:\.\d+)?", line))
    if not numbers:
        return line
    found = chance.choice(numbers)
    scaled = float(found[0]) * chance.choice((-1, 0, 0.999, 1.00001, 2, 1e3, 1e300))
    typed = str(chance.choice((scaled, scaled, *NUMBERS, *RAW)))
    return line[: found.start()] + typed + line[found.end() :]


def _in_bytes(files: dict[str, bytes], chance: random.Random, done: list[str]) -> None:
    packed = [name for name in sorted(files) if name.endswith(PACKED)]
    file = chance.choice(packed or sorted(files))
    text = files[file].decode("utf-8", "replace")
    ways = ("utf-16", "latin-1", "cut", "mark")
    way = chance.choice(("a bit", "a bit", "a bit", "cut") if packed else ways)
    if way == "cut":
        at = chance.randrange(len(files[file]) + 1)
        files[file] = files[file][:at] + b"\xff\xfe\x00"
    elif way == "a bit":
        content = bytearray(files[file])
        for _ in range(chance.choice((1, 1, 2, 5))):
            content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
        files[file] = bytes(content)
    elif way == "mark":
        files[file] = b"\xef\xbb\xbf" + files[file]
    else:
        files[file] = text.encode(way, "replace")
    done.append(f"{file} in bytes: {way}")

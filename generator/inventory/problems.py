"""Faults in a property folder, and the sentences that say what is wrong and what is accepted.

A fault is data: where it stands, a code, what is wrong (with the value), what is accepted. The
sentences for faults of content stand here; those for the way a file is written (quotes, colons,
indentation) stand in `yaml_faults.py`, those for encodings in `yaml_text.py`.
"""

from __future__ import annotations

import datetime
import re
import unicodedata
from collections.abc import Iterable, Sequence

from generator.dataclass import dataclass
from generator.inventory.date_cures import date_cure
from generator.inventory.meant import akin_first, meant, nearest
from generator.inventory.number_cures import number_cure

SHOWN_LENGTH = 60
LISTED_WORDS = 12
FULL_PERCENT = 100

# Names that Windows keeps for devices: no file or folder can carry them.
WINDOWS_DEVICE_NAMES = frozenset(
    ["con", "prn", "aux", "nul"]
    + [f"{port}{number}" for port in ("com", "lpt") for number in range(10)]
)


README = "readme"
NO_FILE_NAMES = WINDOWS_DEVICE_NAMES | {README}
LONGEST_ID = 60


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault at one place: `screens.yaml:7:5 F201 what is wrong - what is accepted`."""

    # Faults are sorted by these in turn, and so told file by file from the top.
    file: str
    line: int
    column: int
    code: str
    what: str
    accepted: str

    def __str__(self) -> str:
        place = f"{shown_text(self.file)}:{self.line}:{self.column}"
        return f"{place} {self.code} {self.what} - {self.accepted}"


@dataclass(frozen=True, slots=True)
class Sentence:
    """A fault without its place."""

    code: str
    what: str
    accepted: str

    def at(self, file: str, line: int, column: int) -> Problem:
        """The same fault, standing at a 1-based line and column of a file."""
        return Problem(file, line, column, self.code, self.what, self.accepted)


def shown_text(text: str) -> str:
    """Text in one line, shortened, with every character that cannot be seen spelled out.

    Control characters, direction marks and unusual spaces appear as `<U+202E>`, so that a
    sentence on a screen never does or hides what a value holds.
    """
    # cut before it is looked at: a value may be as long as a file
    shown = "".join(_shown_character(character) for character in text[: SHOWN_LENGTH + 1])
    if len(text) > SHOWN_LENGTH or len(shown) > 2 * SHOWN_LENGTH:
        return shown[: SHOWN_LENGTH - 3] + "..."
    return shown


def _shown_character(character: str) -> str:
    hidden = unicodedata.category(character)[0] in "CZ" and character != " "
    return f"<U+{ord(character):04X}>" if hidden else character


def shown_value(value: object) -> str:
    """A value as a sentence shows it: text in quotes, numbers bare, groups by their keys."""
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return format(value, ".12g")
    if isinstance(value, str):
        return f'"{shown_text(value)}"'
    if isinstance(value, dict):
        return f"a group of keys ({shown_text(', '.join(map(str, value)))})"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    return shown_text(str(value))


def listed(words: Iterable[str], joint: str = "or") -> str:
    """Words as a list in a sentence: `a, b or c`; a long list is cut and says so."""
    shown = [shown_text(word) for word in words]
    if len(shown) > LISTED_WORDS:
        more = len(shown) - LISTED_WORDS
        return ", ".join(shown[:LISTED_WORDS]) + f" and {more} more"
    if len(shown) < 2:
        return "".join(shown)
    return f"{', '.join(shown[:-1])} {joint} {shown[-1]}"


def did_you_mean(words: Sequence[str]) -> str:
    """The question whether one of some words was meant."""
    return f"did you mean {listed(words)}?"


def meant_or_listed(word: str, known: Sequence[str]) -> str:
    """The question whether a known word was meant, and what else there is where none is near."""
    close = meant(word, known)
    return did_you_mean(close) if close else listed(akin_first(word, known))


def unknown_key(key: str, allowed: Sequence[str], meant_for: Sequence[str] = ()) -> Sentence:
    """A key that is not used here; `meant_for` are keys that it can have been meant for."""
    cure = did_you_mean(meant_for) if meant_for else meant_or_listed(key, allowed)
    what = f"the key {shown_value(key)} is not known here"
    return Sentence("F201", what, cure or "no key is used here")


def missing_key(key: str, of_what: str) -> Sentence:
    """A key that must be there and is not."""
    return Sentence("F202", f"{of_what} has no {key}", f"a line that begins with {key}:")


def wrong_type(value: object, wanted: str) -> Sentence:
    """A value of another kind than the wanted one, which is named in plain words."""
    if value is None:
        return Sentence("F203", "nothing stands after the key", wanted)
    cure = wanted
    if wanted == "text" and isinstance(value, bool | int | float):
        cure = "text: put it in quotes, as in key: " + f'"{shown_value(value)}"'
    kind = re.split(r",? like |: ", wanted)[0]  # the example is told once, as the cure
    return Sentence("F203", f"{shown_value(value)} is not {kind}", cure)


def not_whole(value: object, key: str) -> Sentence:
    """What is no whole number, with the number where text can only mean one."""
    wanted = "a whole number, in digits, such as 3"
    if isinstance(value, str):
        what = f"{shown_value(value)} for {shown_text(key)} is not a plain whole number"
        cure = number_cure(value, key)
        # a cure with a point in it would be refused again
        part = re.search(r"[0-9][.,][0-9]", cure)
        return Sentence("F203", what, wanted if part else cure)
    if isinstance(value, float):
        return Sentence("F203", f"{shown_value(value)} is not a whole number", wanted)
    return wrong_type(value, "a whole number")


def placeholder(value: str, wanted: str) -> Sentence:
    """Dots, dashes or question marks where words should stand."""
    if not value.strip():
        return Sentence("F203", "nothing stands after the key", wanted)
    cure = f"{wanted}; leave the line out until you know"
    return Sentence("F216", f"{shown_value(value)} still stands here", cure)


def not_a_number(text: str, key: str) -> Sentence:
    """Text that stands where a number is wanted, with the cure for that way of writing it."""
    what = f"{shown_value(text)} for {shown_text(key)} is not a plain number"
    return Sentence("F206", what, number_cure(text, key))


def out_of_range(value: float, unit: str, rule: str) -> Sentence:
    """A number outside what is possible; `rule` says what is, such as `greater than 0`.

    `unit` is a suffix of a key, or empty.
    """
    words = "percent" if unit == "pct" else unit.replace("_", " ")
    amount = f"{shown_value(value)} {words}".strip()
    return Sentence("F204", f"{amount} is out of range", rule)


def no_fraction(value: float) -> Sentence:
    """A number above 1 where a part of one is taken: a percent, most often."""
    what = f"{shown_value(value)} stands where a fraction from 0 to 1 is taken"
    if value > FULL_PERCENT:
        return Sentence("F204", what, "a number from 0 to 1, such as 0.7, or a percent, as in 70%")
    percent = format(value, ".12g")
    return Sentence("F204", what, f"{format(value / FULL_PERCENT, '.12g')} or {percent}%")


def unknown_unit(key: str, stem: str, legal_keys: Sequence[str]) -> Sentence:
    """A key whose last part is no unit: `width_feet`."""
    unit = key.removeprefix(stem).strip("_")
    what = f"the key {shown_value(key)} ends in no known unit"
    if unit:
        what = f"the key {shown_value(key)} ends in {shown_value(unit)}, which is no known unit"
    return Sentence("F205", what, listed(legal_keys))


def two_units(keys: Sequence[str]) -> Sentence:
    """The same amount given twice, in two units."""
    return Sentence("F207", f"{listed(keys, 'and')} say the same thing twice", "one of them only")


def _a(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def unknown_reference(value: str, kind: str, known: Sequence[str]) -> Sentence:
    """An id that points at nothing; `kind` names what was looked for, such as `seed lot`."""
    cure = meant_or_listed(value, known) or f"the id of {_a(kind)}; none is written down yet"
    return Sentence("F208", f"there is no {kind} {shown_value(value)}", cure)


def duplicate_id(value: str, first_place: str) -> Sentence:
    """An id used before, at `first_place` (`screens.yaml:4`)."""
    what = f"the id {shown_value(value)} is used already in {shown_text(first_place)}"
    return Sentence("F209", what, "an id of its own for every entry")


def bad_id(value: str) -> Sentence:
    """An id with letters it may not have, or with a name that Windows keeps for a device."""
    rule = "small letters a to z, digits and hyphens"
    if len(value) > LONGEST_ID:
        what = f"the id {shown_value(value)} is {len(value)} characters long"
        return Sentence("F210", what, f"at most {LONGEST_ID} characters")
    if value.casefold() == README:
        what = f"the id {shown_value(value)} is a name the pages keep for themselves"
        return Sentence("F210", what, f"another one, such as {README}-strip")
    if value.casefold() in WINDOWS_DEVICE_NAMES:
        what = f"the id {shown_value(value)} is a name Windows keeps for itself"
        return Sentence("F210", what, f"another one, such as {value.casefold()}-strip")
    folded = unicodedata.normalize("NFKD", value).encode("ascii", "ignore").decode().lower()
    plain = re.sub(r"[^a-z0-9]+", "-", folded.replace("'", "")).strip("-")[:SHOWN_LENGTH]
    if not plain or plain in WINDOWS_DEVICE_NAMES or plain == value:
        return Sentence("F210", f"{shown_value(value)} cannot be an id", f"{rule}, as in lane-27")
    return Sentence("F210", f"{shown_value(value)} cannot be an id", f"{rule}, as in {plain}")


def bad_choice(value: object, choices: Sequence[str]) -> Sentence:
    """A word that is none of those accepted here."""
    what = f"{shown_value(value)} is not one of the words used here"
    if not isinstance(value, str):
        return Sentence("F211", what, listed(choices))
    close, others = meant(value, choices), listed(choices)
    return Sentence("F211", what, f"{did_you_mean(close)} (of {others})" if close else others)


def bad_direction(value: object, points: Sequence[str]) -> Sentence:
    """What is neither a point of the compass nor degrees of a full circle."""
    wanted = "N, NNE, NE and so on, a word like north-northwest, or degrees from 0 to 360"
    what = f"{shown_value(value)} is not a direction"
    close = meant(value, points) if isinstance(value, str) else ()
    return Sentence("F220", what, f"{did_you_mean(close)} (of {wanted})" if close else wanted)


def newer_format(found: int, known: int) -> Sentence:
    """A folder written for a later version of the program."""
    what = f"this folder is written in format {found}, newer than this program"
    return Sentence("F213", what, f"format {known}, or a newer version of the program")


def bad_date(text: str, wanted: str, *, us_dates: bool = False) -> Sentence:
    """Text that is no date, with the date as it should be written where only one can be meant."""
    wrong, cure = date_cure(text.strip(), wanted, us_dates=us_dates)
    return Sentence("F212", f"{shown_value(text)} {wrong}", cure)


def day_out_of_range(day: datetime.date, first_year: int, last_year: int) -> Sentence:
    """A day that nobody who types it here has seen or will: a digit too many or another one."""
    accepted = f"a day from {first_year}-01-01 to {last_year}-12-31"
    return Sentence("F462", f"{day.isoformat()} is out of range", accepted)


def unknown_file(stem: str, known: Sequence[str]) -> Sentence:
    """A YAML file whose name says nothing to the program: it would be read by nobody."""
    close = [f"{near}.yaml" for near in nearest(stem, known)]
    cure = did_you_mean(close) if close else listed(f"{name}.yaml" for name in known)
    cure = f"{cure}; a copy belongs out of this folder"
    return Sentence("F214", "this file is not read, because of its name", cure)


def other_ending() -> Sentence:
    """A file in a folder of lists whose name holds .yaml and ends in something else."""
    what = "this file is not read, because its name does not end in .yaml"
    return Sentence("F214", what, "a name that ends in .yaml; a copy belongs out of this folder")


def too_deep_file(folder: str) -> Sentence:
    """A YAML file in a folder of a folder, where nothing looks for it."""
    what = "this file is not read, because it lies in a folder of a folder"
    return Sentence("F214", what, f"the file in {folder}/ itself")


def linked_folder() -> Sentence:
    """A link to a folder in a folder: nothing looks into it."""
    what = "this folder is not looked into, because it is a link"
    return Sentence("F217", what, "the folder itself in its place, or links to the files in it")


def closed(words: str) -> Sentence:
    """A folder or file that cannot be opened, or a link that leads nowhere."""
    what = f"this {words}, so what is in it is not read"
    return Sentence("F218", what, "what you may read yourself; else take it out of this folder")


def not_a_file(words: str) -> Sentence:
    """A pipe, a device, a socket or a folder under a name that a file should have."""
    return Sentence("F219", f"this {words}", "a plain text file, or nothing under this name")


def missing_file(name: str) -> Sentence:
    """A file that every property folder has is not there."""
    cure = f"a file {name} that begins with format: 1"
    return Sentence("F215", f"the folder has no {name}", cure)

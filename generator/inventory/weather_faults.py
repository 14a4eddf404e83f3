"""Faults in a weather file, and the sentences that say what is wrong and what is accepted."""

from collections.abc import Sequence

from generator.inventory.problems import Sentence, listed, shown_value

FOLDER = "weather"


def outside_the_folder(name: str) -> Sentence:
    """A file named anywhere but in the folder for weather."""
    what = f"{shown_value(name)} does not lie in the folder {FOLDER}"
    return Sentence("F430", what, f"a file like {FOLDER}/river-farm.csv")


def no_such_file(name: str) -> Sentence:
    """A weather file that is not there, or cannot be opened."""
    what = f"the file {shown_value(name)} cannot be opened"
    return Sentence("F430", what, f"a file in the folder {FOLDER}, beside this one")


def no_file(words: str) -> Sentence:
    """What lies there is a pipe, a device, a socket or a folder, or is far too long."""
    accepted = "a plain file of at most 100 MB, packed or not"
    return Sentence("F430", f"the weather file {words}", accepted)


def not_text(what: str) -> Sentence:
    """A weather file that is no text, or whose packing is broken or holds far too much."""
    return Sentence("F430", what, "plain text, or one text packed as .gz")


def wrong_columns(missing: Sequence[str], wanted: Sequence[str]) -> Sentence:
    """A file without a column that its kind must have."""
    what = f"the first line has no column {listed(missing, 'and no')}"
    return Sentence("F431", what, f"the columns {listed(wanted, 'and')}, or another kind of file")


def wrong_line(what: str, accepted: str) -> Sentence:
    """A line that is not what its kind of file has there."""
    return Sentence("F432", what, accepted)


def bad_number(text: str, column: str) -> Sentence:
    """Something else where a number belongs."""
    what = f"{column} is {shown_value(text)}"
    return Sentence("F432", what, "a number, or nothing where it is missing")


def bad_day(text: str, wanted: str) -> Sentence:
    """Something else where a day belongs."""
    return Sentence("F432", f"{shown_value(text)} is no day", wanted)


def bad_time(text: str) -> Sentence:
    """Something else where a time belongs, or a time that two hours of a fall share."""
    what = f"{shown_value(text)} does not say which hour it is"
    accepted = "a time with its distance from UTC, as 2026-11-01T01:00-05:00, or in UTC with a Z"
    return Sentence("F432", what, accepted)


def bad_wind_from(text: str) -> Sentence:
    """Something else where the direction of a wind belongs."""
    what = f"a wind from {shown_value(text)}"
    return Sentence("F432", what, "1 to 360 degrees, 360 for north; variable; or nothing")


def twice(what: str, line: int) -> Sentence:
    """A day, or an hour, that stands in the file a second time."""
    return Sentence("F433", f"{what} stands in line {line} already", "each only once")


def impossible(what: str, accepted: str) -> Sentence:
    """A value that no weather has, and that no flag sets aside."""
    return Sentence("F434", what, f"{accepted}; leave it empty where it is not known")


def unknown_units(choices: Sequence[str]) -> Sentence:
    """A file whose units neither its kind nor its values tell."""
    what = "the file does not say its units"
    return Sentence("F435", what, f"units: {listed(choices)}")


def unlikely_units(units: str, told: str) -> Sentence:
    """Values that do not go with the units that are stated."""
    return Sentence("F435", f"{told}, which does not go with {units}", "the units of the file")


def nothing_in_it() -> Sentence:
    """A file of the right kind without one temperature."""
    return Sentence("F436", "the file has no temperature of any day", "days with a high and a low")

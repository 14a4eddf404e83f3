"""Heights of the ground: what an owner says of the file of a grid, and what faults it may have."""

from generator.dataclass import dataclass
from generator.inventory.fields import Record, choice, text
from generator.inventory.problems import Sentence, shown_value

HEIGHTS_FOLDER = "elevation"
METERS, FEET = "m", "ft"
A_GRID = "a plain text grid of heights: its size, its corner, its rows"


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation(Record):
    """A grid of heights in a file, and what the file does not say of itself."""

    file: str = text("place", "its file, in the folder elevation", required=True)
    heights_in: str = choice("place", "the unit of its heights", METERS, FEET, required=True)
    utm_zone: str | None = text(
        "place", "UTM zone of its coordinates, as 15N; left out where they are degrees"
    )
    source: str = text("page", "where you got it, and its date", required=True)


def bad_grid_name(name: str) -> Sentence:
    """A name that is not one of a file in the folder for heights."""
    what = f"{shown_value(name)} is no name of a file in {HEIGHTS_FOLDER}/"
    return Sentence("F540", what, "the name alone of a file there, such as farm.asc")


def no_grid(words: str) -> Sentence:
    """A file of heights that is not there, cannot be opened or is too long."""
    return Sentence(
        "F540", f"the file of heights {words}", f"a file in {HEIGHTS_FOLDER}/, up to 40 MB"
    )


def other_grid(form: str) -> Sentence:
    """A file of heights in a form that is not read."""
    what = f"the file of heights is {form}"
    return Sentence("F541", what, f"{A_GRID}; most mapping programs can write one")


def bad_head(what: str) -> Sentence:
    """A head of a grid that lacks a line, or says what no grid is."""
    return Sentence(
        "F542", what, "lines ncols, nrows, xllcorner, yllcorner and cellsize, each with a number"
    )


def bad_rows(what: str, accepted: str) -> Sentence:
    """Rows of a grid that are not what its head says."""
    return Sentence("F542", what, accepted)


def bad_zone(zone: str) -> Sentence:
    """A UTM zone that is none."""
    what = f"{shown_value(zone)} is no UTM zone"
    return Sentence("F543", what, "a number from 1 to 60 and N or S, as 15N")


def other_corner(what: str, accepted: str) -> Sentence:
    """A corner that does not go with the coordinates the grid is said to have."""
    return Sentence("F543", what, accepted)

"""Heights of the ground: what an owner says of the file of a grid, and what faults it may have."""

from generator.dataclass import dataclass
from generator.inventory.fields import Record, choice, text
from generator.inventory.problems import Sentence, shown_value

HEIGHTS_FOLDER = "elevation"
METERS, FEET = "m", "ft"
MOST_CELLS = 4_000_000
# Of no ground on earth: a number past these stands for a height that is not known.
LOWEST_FT, HIGHEST_FT = -1_500, 30_000
AS_A_GRID = "a plain text grid of heights (size, corner, rows)"
AS_A_PICTURE = (
    "a GeoTIFF with one band of heights in square cells, not turned, plain or packed by deflate or"
    " LZW, in degrees of WGS 84 or NAD 83 or in meters of a UTM zone of theirs"
)
# Of the middle of a zone and half its width, with room; of the way from the equator to the pole.
_EAST_M, _NORTH_M = (100_000, 900_000), (0, 10_000_000)


class WrongGridError(Exception):
    """A fault in a file of heights, and its line."""

    def __init__(self, sentence: Sentence, line: int = 1) -> None:
        super().__init__(sentence.what)
        self.sentence, self.line = sentence, line


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
    accepted = f"a file in {HEIGHTS_FOLDER}/, up to 40 MB of text or 1,000 MB of a GeoTIFF"
    return Sentence("F540", f"the file of heights {words}", accepted)


def other_grid(form: str) -> Sentence:
    """A file of heights in a form that is not read."""
    what = f"the file of heights is {form}"
    accepted = f"{AS_A_GRID}, or {AS_A_PICTURE}; mapping programs can write both"
    return Sentence("F541", what, accepted)


def no_reader() -> Sentence:
    """A GeoTIFF where what reads one is not installed."""
    return Sentence(
        "F541",
        "the file of heights is a GeoTIFF, and what reads these is not installed",
        f"the program installed with [elevation] behind its file, as README shows; or {AS_A_GRID}",
    )


def damaged_grid() -> Sentence:
    """A GeoTIFF that the library for these cannot read to its end."""
    return other_grid("a TIFF that is damaged or cut off")


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


def other_zone(lies_in: str) -> Sentence:
    """A UTM zone that is typed against what the file says."""
    what = f"it lies in {lies_in}, and utm_zone in property.yaml says otherwise"
    return Sentence("F543", what, "utm_zone left out: a GeoTIFF says it itself")


def other_unit(said: str, typed: str) -> Sentence:
    """A unit of heights that is typed against what the file says."""
    what = f"it says that its heights are in {said}, and heights_in in property.yaml is {typed}"
    return Sentence("F543", what, f"heights_in: {said}, or a file that says {typed}")


def grid_elsewhere() -> Sentence:
    """A grid on which no place lies."""
    what = "no place of yours lies on this grid of heights"
    return Sentence("F543", what, "a grid of the ground your places lie on")


def too_wide() -> Sentence:
    """A grid of which the places take too many cells."""
    return Sentence(
        "F542",
        f"your places lie on more than {MOST_CELLS:,} of its cells",
        "a grid with larger cells",
    )


def other_corner(what: str, accepted: str) -> Sentence:
    """A corner that does not go with the coordinates the grid is said to have."""
    return Sentence("F543", what, accepted)


def hold_to_zone(west: float, south: float, zone: int) -> None:
    """Raise WrongGridError where a corner is none of its zone, or of degrees where that is 0."""
    in_zone = _EAST_M[0] <= west <= _EAST_M[1] and _NORTH_M[0] <= south <= _NORTH_M[1]
    on_earth = abs(west) <= 180 and abs(south) <= 90  # degrees of longitude and latitude
    if zone and not in_zone:
        what = f"its corner {west:g}, {south:g} lies in no UTM zone"
        raise WrongGridError(other_corner(what, "meters of the zone, or no utm_zone: for degrees"))
    if not zone and not on_earth:
        what = f"its corner {west:g}, {south:g} is no longitude and latitude"
        accepted = "degrees; or utm_zone: in property.yaml for meters of a UTM zone"
        raise WrongGridError(other_corner(what, accepted))

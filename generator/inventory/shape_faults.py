"""Faults in files of shapes, and the sentences that say what is wrong and what is accepted."""

from collections.abc import Sequence
from dataclasses import replace

from generator.inventory.problems import (
    Sentence,
    listed,
    meant_or_listed,
    shown_text,
    shown_value,
)

SHAPES_FOLDER = "shapes"
MOST_LAT, MOST_LON = 90, 180
MOST_SHAPE_BYTES = 20_000_000
MOST_SHAPE_LEVELS = 40  # of groups in groups: nothing that draws shapes goes as deep
MOST_ENTRIES = 1000
MOST_TIMES_AS_LARGE = 200  # text packs to a fiftieth at the most; a trap, to a thousandth
ENDINGS_OF_SHAPES = (".geojson", ".json", ".kml", ".kmz", ".gpx")
AS_SUCH = "a file of shapes: GeoJSON, KML, KMZ or GPX"
IN_MAPPING = "draw it again, or mend it, in the program it came from"
LONGITUDE_FIRST = "GeoJSON and KML have the longitude first, then the latitude"


def bad_name(name: str) -> Sentence:
    """A name that is not one of a file in the folder for shapes."""
    what = f"{shown_value(name)} is not the name of a file of shapes"
    return Sentence(
        "F510", what, f"the name alone of a file in {SHAPES_FOLDER}/, which ends in .geojson, "
        ".kml, .kmz or .gpx"
    )  # fmt: skip


def no_shapes_file(name: str, there: Sequence[str]) -> Sentence:
    """A file of shapes that is not there."""
    what = f"there is no file {shown_value(name)} in {SHAPES_FOLDER}/"
    cure = meant_or_listed(name, there) or f"the name of a file in {SHAPES_FOLDER}/, which is empty"
    return Sentence("F510", what, cure)


def no_plain_file(words: str) -> Sentence:
    """What lies there is a pipe, a device, a socket or a folder, or cannot be opened."""
    return Sentence("F511", f"this file of shapes {words}", "a plain file that you may read")


def damaged(what: str) -> Sentence:
    """A file that is not what it seems to be, or breaks off."""
    return Sentence("F511", what, f"{AS_SUCH}, as a program wrote it")


def other_coordinates(system: str) -> Sentence:
    """Coordinates that are no latitude and longitude on the ellipsoid of satellite receivers."""
    what = f"its coordinates are in the system {shown_value(system)}"
    return Sentence("F511", what, "latitude and longitude on WGS 84: export it again so")


def has_doctype() -> Sentence:
    """A declaration of a document type or an entity: a way to reach other files, or to swell."""
    what = "this file declares a document type or entities, which no shape needs"
    return Sentence("F512", what, "the file without its lines <!DOCTYPE and <!ENTITY")


def too_much(what: str, accepted: str) -> Sentence:
    """More bytes, levels or files in it than shapes of one property take."""
    return Sentence("F513", what, accepted)


def bad_archive(what: str) -> Sentence:
    """A packed file that is broken, or does not hold the one KML file it should."""
    return Sentence("F514", what, "a KMZ file with one .kml file in it, as a program wrote it")


def no_such_shape(name: str, file: str, there: Sequence[str]) -> Sentence:
    """A name that no shape of the file has."""
    what = f"no shape in {shown_text(file)} is named {shown_value(name)}"
    named = list(dict.fromkeys(there))
    return Sentence("F515", what, meant_or_listed(name, named) or "a shape with a name")


def which_shape(file: str, there: Sequence[str]) -> Sentence:
    """A file that holds another number of shapes than one, by their names, where none is named."""
    if not there:
        return Sentence("F515", f"{shown_text(file)} holds no shape", "a file with a shape in it")
    named = [name for name in dict.fromkeys(there) if name]
    what = f"{shown_text(file)} holds {len(there)} shapes, and none is named here"
    return Sentence("F515", what, f"name: with one of {listed(named)}" if named else "one shape")


def two_of_a_name(name: str, file: str, numbers: Sequence[int]) -> Sentence:
    """Several shapes of the name that is asked for, or one in several pieces."""
    which = listed([str(number) for number in numbers], "and")
    what = f"{len(numbers)} shapes in {shown_text(file)} are named {shown_value(name)}: {which}"
    if len(set(numbers)) == 1:
        what = f"{shown_value(name)} in {shown_text(file)} is in {len(numbers)} pieces"
    return Sentence("F516", what, "a name for each piece; handbook import gives them names")


def not_numbers(number: int, shown: object) -> Sentence:
    """A point that is no pair of numbers."""
    what = f"its point {number} is {shown_value(shown)}, not a longitude and a latitude"
    return Sentence("F517", what, f"two numbers; {LONGITUDE_FIRST}")


def blank_in_a_tuple(number: int, shown: str) -> Sentence:
    """A blank behind a comma of KML, where a new point begins."""
    what = f"its point {number} reads {shown_value(shown)}"
    return Sentence("F517", what, "longitude,latitude without a blank, as -93.1,41.02")


def out_of_the_world(number: int, lat: float, lon: float) -> Sentence:
    """A latitude or longitude that no place on earth has."""
    what = f"its point {number} has latitude {shown_value(lat)} and longitude {shown_value(lon)}"
    accepted = "a latitude from -90 to 90, a longitude from -180 to 180"
    if abs(lon) <= MOST_LAT < abs(lat) <= MOST_LON:
        accepted = f"{accepted}; here they look swapped"
    return Sentence("F517", what, f"{accepted}; {LONGITUDE_FIRST}")


def turned(how: str) -> Sentence:
    """Points far from the property that lie on it once two numbers or a sign are turned."""
    what = f"it lies far from the property as it stands, and on it {how}"
    return Sentence(
        "F518", what, f"points as they are; {LONGITUDE_FIRST}, and west of Greenwich is negative"
    )


def not_closed(count: int) -> Sentence:
    """A ring whose last point is not its first."""
    what = f"its outline of {count} points does not end where it begins"
    return Sentence("F519", what, "three corners or more, and the first of them again at the end")


def meets_itself(first: int, second: int) -> Sentence:
    """An outline that crosses or touches itself; sides by the numbers of their first corners."""
    what = f"its outline meets itself: from point {first}, and from point {second}"
    return Sentence("F520", what, f"an outline once around; {IN_MAPPING}")


def of_a_hole(number: int, wrong: Sentence) -> Sentence:
    """What is wrong with a hole in an outline, as it is said of the outline."""
    return replace(wrong, what=f"of hole {number} in it: {wrong.what}")


def hole_astray(number: int) -> Sentence:
    """A hole that does not lie inside of its outline, clear of its edge and of other holes."""
    what = f"hole {number} in its outline meets the edge or another hole, or lies outside"
    return Sentence(
        "F520", what, f"holes inside of the outline, apart from each other; {IN_MAPPING}"
    )


def no_points() -> Sentence:
    """A shape with nothing in it."""
    return Sentence("F521", "it has no points", "a point, a line or an outline")


def no_size(what: str) -> Sentence:
    """A line without a length, an outline without ground, or points far from each other."""
    return Sentence("F521", what, IN_MAPPING)


def other_form(form: str, thing: str, wanted: Sequence[str]) -> Sentence:
    """A shape of a form that the thing cannot have."""
    cure = listed(map(_a, wanted))
    if form == "line" and "outline" in wanted:
        cure = f"{cure}; handbook import --outline makes one of a line walked once around"
    return Sentence("F522", f"it is {_a(form)}, and {thing} is not", cure)


def _a(form: str) -> str:
    return f"an {form}" if form == "outline" else f"a {form}"


def typed_as_well(key: str) -> Sentence:
    """Points that are typed, and stand in a file too."""
    return Sentence("F522", f"{key} is typed as well", f"shape or {key}, not both")

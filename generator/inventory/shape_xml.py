"""Shapes out of KML 2.2 and GPX 1.1, by the standard library's parser of XML events.

Declarations of a document type and of entities are refused as soon as they begin: nothing outside
of the file is ever read, and nothing in it swells.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import field, replace
from typing import NoReturn
from xml.parsers import expat

from generator.dataclass import dataclass
from generator.inventory import shape_faults as say
from generator.inventory.problems import Sentence, shown_value
from generator.inventory.shape_found import (
    LINE,
    NUMBER,
    OUTLINE,
    POINT,
    FoundShape,
    PieceThere,
    UnlikeAPointError,
    UnreadableShapesError,
    piece_of_pairs,
    piece_of_rings,
    shapes_of,
)

_FEATURES = {"kml": ("Placemark",), "gpx": ("wpt", "rte", "trk")}
# What is kept of a feature; all else in it is passed over.
_KEPT = frozenset(
    {
        "Placemark", "name", "MultiGeometry", "Point", "LineString", "LinearRing", "Polygon",
        "outerBoundaryIs", "innerBoundaryIs", "coordinates", "Track", "MultiTrack", "coord",
        "wpt", "rte", "rtept", "trk", "trkseg", "trkpt",
    }
)  # fmt: skip
_FOLDERS = ("Document", "Folder")
_WITH_HEIGHT = 3


@dataclass(slots=True)
class _Node:
    """An element of a feature, with what stands in it."""

    tag: str
    attributes: Mapping[str, str]
    line: int
    texts: list[str] = field(default_factory=list)
    inside: list[_Node] = field(default_factory=list)

    def each(self, *tags: str) -> Iterator[_Node]:
        return (node for node in self.inside if node.tag in tags)

    def text_of(self, tag: str) -> str:
        return "".join(text for node in self.each(tag) for text in node.texts)


@dataclass(slots=True)
class _Events:
    """What the parser came by so far: the way in to where it is, and the features behind it."""

    parser: expat.XMLParserType
    outside: list[str] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    open_nodes: list[_Node | None] = field(default_factory=list)
    features: list[tuple[_Node, tuple[str, ...]]] = field(default_factory=list)

    def begins(self, tag: str, attributes: dict[str, str]) -> None:
        name = tag.rpartition(":")[2]
        if len(self.outside) + len(self.open_nodes) >= say.MOST_SHAPE_LEVELS:
            what = "its elements lie in each other too deep"
            self._refuse(say.too_much(what, f"at most {say.MOST_SHAPE_LEVELS} levels"))
        if not self.outside and name not in _FEATURES:
            shown = shown_value(name)
            self._refuse(say.damaged(f"it begins with {shown}, so it is neither KML nor GPX"))
        if not self.open_nodes and not self._is_feature(name):
            self.outside.append(name)
            self.names.append("")
            return
        is_kept = name in _KEPT and None not in self.open_nodes
        node = _Node(name, attributes, self.parser.CurrentLineNumber) if is_kept else None
        if node is not None and self.open_nodes and self.open_nodes[-1] is not None:
            self.open_nodes[-1].inside.append(node)
        self.open_nodes.append(node)

    def _is_feature(self, name: str) -> bool:
        return bool(self.outside) and name in _FEATURES[self.outside[0]]

    def ends(self, _tag: str) -> None:
        if self.open_nodes:
            node = self.open_nodes.pop()
            if not self.open_nodes and node is not None:
                within = (" ".join(name.split()) for name in self.names)
                self.features.append((node, tuple(name for name in within if name)))
            return
        self.outside.pop()
        self.names.pop()

    def holds(self, text: str) -> None:
        if self.open_nodes:
            if self.open_nodes[-1] is not None:
                self.open_nodes[-1].texts.append(text)
        elif self.outside[-1] == "name" and self.outside[-2:-1] and self.outside[-2] in _FOLDERS:
            self.names[-2] += text

    def declares(self, *_: object) -> NoReturn:
        self._refuse(say.has_doctype())

    def _refuse(self, sentence: Sentence) -> NoReturn:
        line, column = self.parser.CurrentLineNumber, self.parser.CurrentColumnNumber
        raise UnreadableShapesError(sentence, line, column + 1)


def read_xml(content: bytes) -> list[FoundShape]:
    """Return the shapes of a file; raises UnreadableShapesError where it is neither KML nor GPX."""
    events = _parsed(content)
    pieces_of: Callable[[_Node], Iterator[PieceThere]] = (
        _kml_pieces if events.features and events.features[0][0].tag == "Placemark" else _gpx_pieces
    )
    return [
        shape
        for number, (node, within) in enumerate(events.features, start=1)
        for shape in shapes_of(
            list(pieces_of(node)), node.text_of("name"), number, node.line, within
        )
    ]


def _parsed(content: bytes) -> _Events:
    parser = expat.ParserCreate()
    events = _Events(parser)
    parser.buffer_text = True
    parser.StartElementHandler = events.begins
    parser.EndElementHandler = events.ends
    parser.CharacterDataHandler = events.holds
    parser.StartDoctypeDeclHandler = events.declares
    parser.EntityDeclHandler = events.declares
    parser.ExternalEntityRefHandler = events.declares
    try:
        parser.Parse(content, True)
    except expat.ExpatError as error:
        what = f"it is no XML from here on ({expat.ErrorString(error.code)})"
        raise UnreadableShapesError(say.damaged(what), error.lineno, error.offset + 1) from None
    except (LookupError, ValueError):  # an encoding that nobody knows
        what = "its first line names an encoding that cannot be read"
        raise UnreadableShapesError(say.damaged(what)) from None
    return events


def _kml_pieces(node: _Node) -> Iterator[PieceThere]:
    for part in node.inside:
        if part.tag in ("MultiGeometry", "MultiTrack"):
            yield from _kml_pieces(part)
        elif part.tag in ("Point", "LineString", "LinearRing", "Polygon", "Track"):
            yield _kml_piece(part)


def _kml_piece(part: _Node) -> PieceThere:
    form = {"Point": POINT, "LineString": LINE, "Track": LINE}.get(part.tag, OUTLINE)
    try:
        if part.tag == "Track":
            return _recorded(piece_of_pairs(LINE, [_spoken(*one) for one in _coords(part)]))
        if part.tag == "LinearRing":
            return piece_of_rings([_tuples(part)])
        if part.tag == "Polygon":
            outer, inner = list(_rings(part, "outerBoundaryIs")), _rings(part, "innerBoundaryIs")
            return piece_of_rings([*outer, *inner] if outer else [])
        return piece_of_pairs(form, _tuples(part))
    except UnlikeAPointError as unlike:
        return PieceThere(form, (), unlike.sentence)


def _rings(polygon: _Node, edge: str) -> Iterator[list[tuple[float, float]]]:
    for side in polygon.each(edge):
        for ring in side.each("LinearRing"):
            yield _tuples(ring)


def _tuples(node: _Node) -> list[tuple[float, float]]:
    """Return the points of an element: longitude, latitude and maybe a height, without blanks."""
    return [
        _pair_of(number, word)
        for number, word in enumerate(node.text_of("coordinates").split(), start=1)
    ]


def _pair_of(number: int, word: str) -> tuple[float, float]:
    parts = word.split(",")
    if 1 < len(parts) <= _WITH_HEIGHT and all(map(NUMBER.fullmatch, parts)):
        return float(parts[0]), float(parts[1])
    has_blank = word.startswith(",") or word.endswith(",") or len(parts) == 1
    wrong = say.blank_in_a_tuple if has_blank else say.not_numbers
    raise UnlikeAPointError(wrong(number, word))


def _coords(track: _Node) -> Iterator[tuple[int, str, str]]:
    """Yield number, longitude and latitude of the points of a recorded line of KML."""
    for number, node in enumerate(track.each("coord"), start=1):
        parts = "".join(node.texts).split()
        yield (number, parts[0], parts[1]) if len(parts) > 1 else (number, "", "")


def _spoken(number: int, lon: str, lat: str) -> tuple[float, float]:
    if NUMBER.fullmatch(lon) and NUMBER.fullmatch(lat):
        return float(lon), float(lat)
    raise UnlikeAPointError(say.not_numbers(number, f"{lon} {lat}"))


def _gpx_pieces(node: _Node) -> Iterator[PieceThere]:
    if node.tag == "wpt":
        yield _gpx_piece(POINT, [node])
    elif node.tag == "rte":
        yield _gpx_piece(LINE, list(node.each("rtept")))
    else:
        for part in node.each("trkseg"):
            yield _recorded(_gpx_piece(LINE, list(part.each("trkpt"))))


def _recorded(piece: PieceThere) -> PieceThere:
    return replace(piece, is_recorded=True)


def _gpx_piece(form: str, points: list[_Node]) -> PieceThere:
    try:
        pairs = [
            _spoken(number, point.attributes.get("lon", ""), point.attributes.get("lat", ""))
            for number, point in enumerate(points, start=1)
        ]
    except UnlikeAPointError as unlike:
        return PieceThere(form, (), unlike.sentence)
    return piece_of_pairs(form, pairs)

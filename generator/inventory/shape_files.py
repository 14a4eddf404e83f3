"""The files of the folder for shapes: which there are, and the shapes in one, read once."""

from collections.abc import Mapping
from pathlib import Path

from generator.inventory import shape_faults as say
from generator.inventory.files import Hindered, content_of
from generator.inventory.problems import Problem, Sentence
from generator.inventory.shape_found import FoundShape, UnreadableShapesError
from generator.inventory.shape_geojson import read_geojson
from generator.inventory.shape_xml import read_xml

_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_XML, _JSON_ENCODING = b"<", "utf-8-sig"
_OF_AN_ARCHIVE = b"PK"
_MARK = b"\xef\xbb\xbf"  # that a text is UTF-8


class ShapeFiles:
    """The shapes of the files that are asked for, by the files' names; each is read once.

    `beside` are files, by their paths from the property folder, that are read as if they lay there.
    """

    def __init__(self, folder: Path, beside: Mapping[str, bytes]) -> None:
        self._beside = beside
        self._folder = folder / say.SHAPES_FOLDER
        self._read: dict[str, dict[str, list[FoundShape]] | None] = {}
        self.problems: list[Problem] = []

    def shapes_in(self, name: str) -> dict[str, list[FoundShape]] | Sentence | None:
        """Return the shapes of a file by their names, or why there is no such file.

        None where it cannot be read, which is told once, among the problems.
        """
        if not _is_name(name):
            return say.bad_name(name)
        if name not in self._read:
            content = self._content(name)
            if isinstance(content, Hindered) and content.what == "closed":
                return say.no_shapes_file(name, self._names())
            self._read[name] = self._found(name, content)
        return self._read[name]

    def _content(self, name: str) -> bytes | Hindered:
        beside = self._beside.get(f"{say.SHAPES_FOLDER}/{name}")
        return beside or content_of(self._folder / name, say.MOST_SHAPE_BYTES)

    def _found(self, name: str, content: bytes | Hindered) -> dict[str, list[FoundShape]] | None:
        try:
            shapes = found_shapes(content)
        except UnreadableShapesError as error:
            file = f"{say.SHAPES_FOLDER}/{name}"
            self.problems.append(error.sentence.at(file, error.line, error.column))
            return None
        found: dict[str, list[FoundShape]] = {}
        for shape in shapes:
            found.setdefault(shape.name, []).append(shape)
        return found

    def _names(self) -> list[str]:
        try:
            names = sorted(path.name for path in self._folder.iterdir())
        except OSError:
            return []
        return [name for name in names if _is_name(name)]


def _is_name(name: str) -> bool:
    """Return whether a name is that of a file in a folder, and of one of shapes."""
    outside = any(letter in name for letter in "/\\:\0") or name.startswith(".")
    return not outside and name.casefold().endswith(say.ENDINGS_OF_SHAPES)


def found_shapes(content: bytes | Hindered) -> list[FoundShape]:
    """Return the shapes in a file, told by what it begins with.

    Raises UnreadableShapesError where it cannot be read.
    """
    if isinstance(content, Hindered):
        raise UnreadableShapesError(
            say.no_plain_file(content.words)
            if content.what is not None
            else say.too_much(
                f"this file of shapes {content.words}",
                f"at most {say.MOST_SHAPE_BYTES // 1_000_000} MB",
            )
        )
    if content.startswith(_OF_AN_ARCHIVE):
        # what opens archives is slow to come in
        from generator.inventory.shape_archive import kml_in

        content = kml_in(content)
    if content.removeprefix(_MARK).lstrip()[:1] == _XML or content.startswith(_UTF_16):
        return read_xml(content)
    try:
        text = content.decode(_JSON_ENCODING)
    except UnicodeDecodeError:
        raise UnreadableShapesError(say.damaged("it is no text")) from None
    if not text.strip():
        raise UnreadableShapesError(say.damaged("nothing is in it"))
    return read_geojson(text)

"""Writes text into YAML so that it can only be read back as that text."""

_SHORT = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t"}


def quoted(text: str) -> str:
    """`text` as a YAML double-quoted scalar on one line; a reader gets back exactly `text`."""
    if text.isascii() and text.isprintable() and '"' not in text and "\\" not in text:
        return f'"{text}"'
    return '"' + "".join(map(_escaped, text)) + '"'


def _escaped(character: str) -> str:
    if character in _SHORT:
        return _SHORT[character]
    # The byte order mark counts as printable in YAML only at the start of a file.
    if character.isprintable() and character != "\ufeff":
        return character
    return f"\\U{ord(character):08x}"

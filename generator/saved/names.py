"""Names of files that can be saved and put back on any system."""

from generator.inventory.problems import WINDOWS_DEVICE_NAMES

# The names of ours in an archive: the list of all others, by the name that checking tools know.
HASHES = "SHA256SUMS"
MOST_SAVED = 20_000
BYTES_IN_GB = 1_000_000_000
MOST_GB = 8
MOST_IN_ALL_BYTES = MOST_GB * BYTES_IN_GB
# How many times longer a file may be than it is packed: text of a property is ten times so.
MOST_TIMES_PACKED = 200
LONGEST_NAME_BYTES = 240
MOST_LEVELS_DEEP = 16
_NOT_IN_NAMES = '\\:*?"<>|'


def name_fault(name: str) -> str | None:
    """Return why a path in an archive, with forward slashes, is not one of a file; else None.

    >>> name_fault("log/2027-03-14-walk.yaml")
    >>> name_fault("../../else.yaml")
    'leads out of the folder'
    """
    parts = name.split("/")
    if not name or name.startswith("/") or parts[0][1:] == ":":
        return "begins at the top of a disk"
    if ".." in parts or "." in parts:
        return "leads out of the folder"
    if "" in parts:
        return "has a part without a name"
    if len(parts) > MOST_LEVELS_DEEP:
        return f"lies more than {MOST_LEVELS_DEEP} folders deep"
    return next((fault for part in parts if (fault := _part_fault(part)) is not None), None)


def _part_fault(part: str) -> str | None:
    try:
        too_long = len(part.encode()) > LONGEST_NAME_BYTES
    except UnicodeEncodeError:
        return "is no text"
    if too_long:
        return f"has a name of more than {LONGEST_NAME_BYTES} bytes"
    if not part.isprintable() or any(letter in _NOT_IN_NAMES for letter in part):
        return "has a letter in its name that not every system takes"
    if part.endswith((" ", ".")) or part.partition(".")[0].casefold() in WINDOWS_DEVICE_NAMES:
        return "has a name that not every system takes"
    return "is a hidden file" if part.startswith(".") else None

"""The broken and the sound inventories: each a few files laid over the same small property."""

import shutil
from pathlib import Path

HERE = Path(__file__).resolve().parent
GOOD = sorted(path.name for path in (HERE / "good").iterdir())
BAD = sorted(path.name for path in (HERE / "bad").iterdir())


def overlaid(kind: str, name: str, folder: Path) -> Path:
    """A property folder made of the base with the files of one inventory laid over it."""
    shutil.copytree(HERE / "base", folder)
    shutil.copytree(HERE / kind / name, folder, dirs_exist_ok=True)
    return folder


def place_said(name: str) -> str:
    """What the first line of a broken inventory says: `FILE LINE CODE`; of several files, one.

    Read in whatever encoding the file is in: the line itself is plain letters.
    """
    files = [path for path in (HERE / "bad" / name).iterdir() if path.is_file()]
    first = [path.read_bytes().partition(b"\n")[0] for path in files]
    texts = [line.replace(b"\0", b"").decode("ascii", "ignore") for line in first]
    (line,) = (one for one in texts if one.startswith("# "))
    return line.removeprefix("# ")

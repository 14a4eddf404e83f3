"""The broken and the sound inventories: each a few files laid over the same small property."""

import shutil
from pathlib import Path

HERE = Path(__file__).resolve().parent
GOOD = sorted(path.name for path in (HERE / "good").iterdir())
BAD = sorted(path.name for path in (HERE / "bad").iterdir())


def overlaid(kind: str, name: str, folder: Path) -> Path:
    """A property folder made of the base with the files of one inventory laid over it."""
    shutil.copytree(HERE / "base", folder)
    for path in (HERE / kind / name).iterdir():
        shutil.copy(path, folder / path.name)
    return folder


def place_said(name: str) -> str:
    """What the first line of a broken inventory says: `FILE LINE CODE`; of several files, one."""
    texts = [path.read_text(encoding="utf-8") for path in (HERE / "bad" / name).iterdir()]
    (line,) = (one.partition("\n")[0] for one in texts if one.startswith("# "))
    return line.removeprefix("# ")

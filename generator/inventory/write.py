"""The only part that writes into a property folder: new files, never over an old one."""

from collections.abc import Mapping
from pathlib import Path


def write_new_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Make a folder that is not there yet and write the files into it.

    Raises FileExistsError where the folder stands already; nothing is ever overwritten.
    """
    folder.mkdir(parents=True)
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("xb") as file:
            file.write(content)

"""The theme as MkDocs has it, without what costs time and shows nowhere."""

import os
from collections.abc import Iterator
from pathlib import Path

import mkdocs
from jinja2 import Environment, FileSystemLoader
from mkdocs.theme import Theme
from mkdocs.utils import get_theme_dir

from generator.compiled import Compiled


class OwnTheme(Theme):
    """The theme without a walk over its thousands of icons, its templates kept compiled."""

    def __init__(self, theme: Theme) -> None:
        vars(self).update(vars(theme))

    def get_env(self) -> Environment:
        """Return the environment of the theme's templates."""
        env = super().get_env()
        env.loader = _WithoutIcons(self.dirs)
        env.bytecode_cache = Compiled(f"theme {mkdocs.__version__}")
        return env


class _WithoutIcons(FileSystemLoader):
    """Lists what may be published: a page names the icons it shows, and none is a file beside."""

    def list_templates(self) -> list[str]:
        """Return the names of all files but icons."""
        return sorted({name for folder in self.searchpath for name in _shown_files(folder)})


def _shown_files(folder: str) -> Iterator[str]:
    for here, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        yield from (Path(here, name).relative_to(folder).as_posix() for name in names)


def theme_folder() -> Path:
    """Return the folder of the theme as it came."""
    return Path(get_theme_dir("material"))

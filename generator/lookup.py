"""Finds what ships with the package: chapters, templates, the demo and the starter folder."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """The path of something that ships with the program.

    `name` is "content", "site_templates", "demo_property", "mkdocs.yml" or "starter". In an
    installed wheel it lies inside the package, in a checkout beside it.

    Raises FileNotFoundError, with one sentence for the user, where it is in neither.
    """
    for path in _candidates(name):
        if path.exists():
            return path
    raise FileNotFoundError(
        f"{name} is missing from this copy of the handbook program: install the program again."
    )


def _candidates(name: str) -> list[Path]:
    if name == "starter":
        return [PACKAGE / name]
    candidates = [PACKAGE / "shipped" / name]
    # Beside an installed package lie other people's packages, one of which may have the name.
    if (PACKAGE.parent / "pyproject.toml").is_file():
        candidates.append(PACKAGE.parent / name)
    return candidates

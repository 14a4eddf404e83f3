"""The modules of the package as the structure tests read them."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
PACKAGE = CHECKOUT / "generator"


@dataclass(frozen=True)
class Module:
    """One module: its dotted name below `generator` ("compute.seed"), where it stands, its tree."""

    name: str
    file: str
    tree: ast.Module

    @property
    def layer(self) -> str:
        return self.name.split(".")[0]


def module_of(name: str, text: str) -> Module:
    """A module made from text, as the tests of the checks themselves use it."""
    return Module(name, f"generator/{name.replace('.', '/')}.py", ast.parse(text))


def modules(*layers: str) -> Iterator[Module]:
    """The modules of these layers, or of the whole package; "package" is `generator` itself."""
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE).with_suffix("").parts
        if parts[-1] == "__init__":
            parts = parts[:-1] or ("package",)
        module = Module(
            ".".join(parts),
            path.relative_to(CHECKOUT).as_posix(),
            ast.parse(path.read_text(encoding="utf-8")),
        )
        if not layers or module.layer in layers:
            yield module

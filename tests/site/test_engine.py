"""The public names of MkDocs that the engine rests on are there and are called as it calls them."""

import inspect
from pathlib import Path

from mkdocs.commands.build import build, get_context
from mkdocs.config import load_config
from mkdocs.plugins import EVENTS, BasePlugin, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.theme import Theme

from generator.site import engine, engine_theme


def _parameters(function: object) -> list[str]:
    assert callable(function)
    return list(inspect.signature(function).parameters)


def test_functions_take_what_we_give_them() -> None:
    assert _parameters(load_config)[0] == "config_file"
    kwargs = inspect.signature(load_config).parameters["kwargs"]
    assert kwargs.kind is inspect.Parameter.VAR_KEYWORD
    assert _parameters(build)[0] == "config"
    assert _parameters(get_context)[:4] == ["nav", "files", "config", "page"]
    assert _parameters(event_priority) == ["priority"]


def test_pages_files_and_themes_have_what_we_replace_and_read() -> None:
    assert _parameters(Page.__init__) == ["self", "title", "file", "config"]
    assert _parameters(Page.read_source) == ["self", "config"]
    assert _parameters(Page.render) == ["self", "config", "files"]
    assert _parameters(File.generated)[:2] == ["config", "src_uri"]
    assert "content" in _parameters(File.generated)
    assert callable(Files.append)
    assert callable(Files.remove)
    assert callable(Files.documentation_pages)
    assert _parameters(Theme.get_env) == ["self"]
    assert issubclass(engine_theme.OwnTheme, Theme)


def test_every_event_our_plugin_answers_exists() -> None:
    own = {name.removeprefix("on_") for name in vars(engine._Handbook) if name.startswith("on_")}
    assert own == {"config", "env", "files", "nav"}
    assert own <= set(EVENTS)
    assert issubclass(engine._Handbook, BasePlugin)


def test_the_modules_that_know_mkdocs_are_two_and_small() -> None:
    package = Path(engine.__file__).parents[1]
    knowing = [
        path.name
        for path in package.rglob("*.py")
        if any(line.startswith(("import mkdocs", "from mkdocs")) for line in _lines(path))
    ]
    assert sorted(knowing) == ["engine.py", "engine_theme.py"]
    assert len(_lines(Path(engine.__file__))) + len(_lines(Path(engine_theme.__file__))) < 260


def _lines(path: Path) -> list[str]:
    return path.read_text(encoding="utf-8").splitlines()

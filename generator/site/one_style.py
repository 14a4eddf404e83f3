"""The style of the one file: of the theme's own style what it can meet, then ours, then its own."""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from generator.kept import STORE
from generator.lookup import shipped

# Of the many classes of the theme's style those that stand in the file.
MET = frozenset(
    (
        "md-typeset",
        "md-content",
        "md-content__inner",
        "md-header",
        "md-header__inner",
        "md-header__button",
        "md-header__title",
        "md-icon",
        "md-grid",
        "md-main",
        "md-main__inner",
        "md-container",
        "md-sidebar",
        "md-sidebar--primary",
        "md-toggle",
        "md-overlay",
        "md-skip",
    )
)
SCHEMES = ("default", "slate")
_OWN = ("theme/assets/handbook.css", "theme/assets/print.css", "one_file/one-file.css")
_STOCK = ("main", "palette")
_CLASS = re.compile(r"\.(-?[a-zA-Z_][\w-]*)")
_SCHEME = re.compile(r'\[data-md-color-(\w+)="?([\w-]+)"?\]')
# What a rule is for that the file has none of: another writing direction, a theme's colors.
_UNMET = re.compile(
    r"\[dir=rtl\]|\[data-md-color-(?:primary|accent|media)|@(?:font-face|keyframes)"
)
_SELECTORS = re.compile(r",(?![^()]*\))")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_SPACE = re.compile(r"\s+")
_AROUND = re.compile(r" ?([{};,]) ?")
# Pictures of icons that nothing in the file shows.
_ICONS = re.compile(r"--md-[\w-]+:url\((?:\"[^\"]*\"|'[^']*'|[^()]*)\)(?:;|(?=\}))")
# Of what the theme draws diagrams with.
_DIAGRAMS = re.compile(r"--md-mermaid-[\w-]+:[^;}]*;?")


def style(theme: Iterable[str]) -> str:
    """Return the whole style sheet of the one file, the theme's own lying in these folders.

    Raises FileNotFoundError where it lies in none.
    """
    folders = [Path(folder) for folder in theme]
    stock = "".join(_stock(folders, name).read_text(encoding="utf-8") for name in _STOCK)
    templates = shipped("site_templates")
    own = "\n".join((templates / name).read_text(encoding="utf-8") for name in _OWN)
    code = Path(__file__).read_text(encoding="utf-8")
    kept: str = STORE.made_of(f"style {code}", f"{stock}\0{own}", _made)
    return kept


def _stock(folders: Iterable[Path], name: str) -> Path:
    for folder in folders:
        if found := sorted(folder.glob(f"assets/stylesheets/{name}.*.min.css")):
            return found[0]
    raise FileNotFoundError(f"The theme has no style sheet {name}.")


def _made(source: str) -> str:
    stock, _, own = source.partition("\0")
    met = "".join(_met(_DIAGRAMS.sub("", _COMMENT.sub("", stock))))
    return _without_icons(met) + _short(own)


def _short(css: str) -> str:
    return _AROUND.sub(r"\1", _SPACE.sub(" ", _COMMENT.sub("", css))).strip()


def _met(css: str) -> Iterator[str]:
    """Yield the rules of a style sheet that something in the file meets."""
    at = 0
    while (opening := css.find("{", at)) >= 0:
        # a statement without a body may stand before the rule, such as the charset
        head, end = css[at:opening].rpartition(";")[2].strip(), _end(css, opening)
        inside = css[opening + 1 : end - 1]
        at = end
        if head.startswith(("@media", "@supports", "@layer")):
            rules = "".join(_met(inside))
            if rules:
                yield f"{head}{{{rules}}}"
        elif not _UNMET.match(head):
            met = [one for one in _SELECTORS.split(head) if _is_met(one)]
            if met and inside:
                yield f"{','.join(met)}{{{inside}}}"


def _is_met(selector: str) -> bool:
    if _UNMET.search(selector):
        return False
    schemes = (value for kind, value in _SCHEME.findall(selector) if kind == "scheme")
    return all(value in SCHEMES for value in schemes) and MET.issuperset(_CLASS.findall(selector))


def _end(css: str, opening: int) -> int:
    depth = 0
    for sign in re.compile("[{}]").finditer(css, opening):
        depth += 1 if sign[0] == "{" else -1
        if depth == 0:
            return sign.end()
    raise ValueError("a rule of the theme's style is not closed")


def _without_icons(css: str) -> str:
    def needed(icon: re.Match[str]) -> str:
        name = icon[0].partition(":")[0]
        return icon[0] if f"var({name})" in css else ""

    return _ICONS.sub(needed, css)

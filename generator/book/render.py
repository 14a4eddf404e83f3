"""Templates to Markdown: whatever a template prints is text, unless one of ours made it."""

import datetime
import hashlib
import re
from collections.abc import Callable, Iterable, MutableMapping
from functools import cache, lru_cache
from typing import Any

from jinja2 import (
    ChoiceLoader,
    Environment,
    FileSystemLoader,
    FunctionLoader,
    StrictUndefined,
    Template,
)
from jinja2.compiler import CodeGenerator
from markupsafe import Markup

from generator.book.content import drawing, head_words, named_value, sentences
from generator.book.marks import Marks, label, source_words
from generator.book.origin import origin_words
from generator.book.text import clean, in_entities, inert
from generator.compiled import Compiled
from generator.inventory.fields import NOT_ON_LABEL, FirstOfMonth
from generator.inventory.plain_values import named_direction, point_of_compass
from generator.lookup import shipped
from generator.plan.labels.crops import means_in_words
from generator.plan.model.days import MONTHS, Span, day_words, span_ends
from generator.plan.model.job import DateReason
from generator.plan.season.open_dates import SEEN
from generator.reference.library import emergency_numbers, marker_names
from generator.working import Figure, Reference

# a narrow table stays one on a phone, where its heads stand above the columns
_TABLE = re.compile(r'<table class="figures(?! narrow)[^"]*">.*?</table>', re.DOTALL)
_HEAD = re.compile(r"<th\b[^>]*>(.*?)</th>", re.DOTALL)
_BODY_ROW = re.compile(r"<tr\b[^>]*>(?:(?!</tr>).)*<td\b.*?</tr>", re.DOTALL)
_CELL = re.compile(r"<td\b")
_TAG = re.compile(r"<[^>]*>")
_BLANK_LINES = re.compile(r"\n\s*\n+")
_INDENT = re.compile(r"\n[ \t]+")
_BOLD = re.compile(r"\*\*(.+?)\*\*")
_PATH = re.compile(r"[A-Za-z0-9._-]+")
_authored_texts: dict[str, str] = {}
_NOON = 12
_TICK_VALUE = re.compile(r"\{(\w+)\}")


def _finalize(value: object) -> object:
    """Make everything a template prints inert, unless our own code made it markup."""
    return value if isinstance(value, Markup) else inert(str(value))


class _Printing(CodeGenerator):
    """Compiles templates that print what `_finalize` returns as it is.

    It is markup, which escaping gives back unchanged, two hundred times a page.
    """

    def _output_child_pre(self, node: Any, frame: Any, finalize: Any) -> None:  # noqa: ARG002 - jinja2 calls it so
        self.write(f"({finalize.src}")


class _Pages(Environment):
    code_generator_class = _Printing

    def make_globals(self, d: MutableMapping[str, Any] | None) -> MutableMapping[str, Any]:
        """Return what every template knows as one dictionary: it does not change any more.

        Each template that takes from another asks for all its names again, a few times a page.
        """
        return {**self.globals, **(d or {})}


@cache
def _environment() -> Environment:
    environment = _Pages(
        loader=ChoiceLoader(
            [
                FileSystemLoader(shipped("site_templates") / "pages"),
                FunctionLoader(_authored_texts.get),
            ]
        ),
        bytecode_cache=Compiled("pages, printing"),
        autoescape=True,
        auto_reload=False,
        undefined=StrictUndefined,
        # escaping is of HTML alone: what is printed would still be live as Markdown
        finalize=_finalize,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["day"] = _day
    environment.filters["span"] = _span
    environment.filters["month"] = _month
    environment.filters["clock"] = _clock
    environment.filters["point"] = point_of_compass
    environment.filters["direction"] = named_direction
    environment.filters["path"] = _path
    environment.filters["id"] = _id
    environment.globals["html"] = _block
    environment.globals["say"] = _say
    environment.globals["head_words"] = head_words
    environment.globals["drawing"] = _drawn
    environment.globals["emergency_numbers"] = emergency_numbers()
    environment.globals["label"] = label
    environment.globals["card_words"] = _card_words
    environment.globals["means_in_words"] = means_in_words
    environment.globals["source_words"] = source_words
    return environment


def _say(name: str, /, **filled_in: object) -> Markup:
    """Return a sentence of the content, what is filled in made inert as all that is printed."""
    parts = {key: _finalize(value) for key, value in filled_in.items()}
    return Markup(sentences()[name]).format(**parts)


@cache
def _authored(text: str) -> Template:
    # by a name of its own: what has none is not kept compiled
    name = f"authored {hashlib.sha256(text.encode()).hexdigest()}"
    _authored_texts[name] = text
    return _environment().get_template(name)


@lru_cache(maxsize=None, typed=True)  # a month counts as its first day, and is not shown as one
def _day(day: datetime.date) -> Markup:
    if isinstance(day, FirstOfMonth):
        return _month(day)
    return Markup('<time datetime="{}">{}</time>').format(day.isoformat(), day_words(day))


@cache
def _span(span: Span) -> Markup:
    """Return a span of days: the year once, and the month too where it is the same."""
    first, last = span
    if first == last:
        return _day(first)
    marked = '<time datetime="{}">{}</time> to <time datetime="{}">{}</time>'
    begins, ends = span_ends(first, last)
    return Markup(marked).format(first.isoformat(), begins, last.isoformat(), ends)


@cache
def _month(first: datetime.date) -> Markup:
    words = f"{MONTHS[first.month - 1]} {first.year}"
    return Markup('<time datetime="{}">{}</time>').format(f"{first:%Y-%m}", words)


def _clock(time: datetime.datetime | datetime.time) -> Markup:
    half = "a.m." if time.hour < _NOON else "p.m."
    hour = time.hour % _NOON or _NOON
    return Markup('<time datetime="{}">{}</time>').format(
        f"{time:%H:%M}", f"{hour}:{time.minute:02} {half}"
    )


@cache
def _path(part: str) -> Markup:
    """Return a part of an address as it is. Raises ValueError for what is no such part."""
    if not _PATH.fullmatch(part):
        raise ValueError(f"{part!r} cannot stand in an address")
    return Markup(part)


def _id(name: str) -> Markup:
    """Return an id that may be parted between its words, and nowhere else."""
    return Markup("_<wbr>").join(_path(name).split("_"))


def _card_words(entry: str) -> str:
    """Return a word of a label card as a page says it."""
    return "not on the label" if entry == NOT_ON_LABEL else entry


def _block(caller: Callable[[], Markup]) -> Markup:
    """Return an HTML block as our Markdown extension takes it: flush left, no blank line in it."""
    text = _INDENT.sub("\n", _BLANK_LINES.sub("\n", str(caller()).strip()))
    text = _TABLE.sub(_cells_with_heads, text)
    return Markup("\n\n" + text + "\n\n")


def _drawn(name: str, caller: Callable[[], Markup]) -> Markup:
    """Return a drawing with the words under it, as a block of its own."""
    words = Markup("<figcaption>{}</figcaption>").format(Markup(str(caller()).strip()))
    figure = Markup('<figure class="drawing">\n{}{}\n</figure>')
    return _block(lambda: figure.format(Markup(drawing(name)), words))


def _cells_with_heads(table: re.Match[str]) -> str:
    """Return a table whose cells carry their heads: on a phone a row stands as lines."""
    found = _HEAD.findall(table[0].partition("</thead>")[0])
    heads = [_TAG.sub("", head) for head in found]

    def cells(row: re.Match[str]) -> str:
        names = iter(heads)
        return _CELL.sub(lambda _: f'<td data-head="{next(names, "")}"', row[0])

    return _BODY_ROW.sub(cells, table[0])


def render(template: str, marks: Marks, **context: Any) -> str:
    """Return a page's Markdown; numbers shown are gathered in `marks`."""
    text = (
        _environment()
        .get_template(template)
        .render(
            show=marks.show,
            source=marks.cite,
            tick=_ticks(marks),
            date_reason=_date_reasons(marks),
            **context,
        )
    )
    return str(text).strip() + "\n"


def render_authored(text: str, marks: Marks) -> str:
    """Return a chapter or callout with its values filled in."""

    def value(key: str) -> Markup:
        return marks.show(named_value(key))

    return str(_authored(text).render(value=value, source=marks.cite)).strip() + "\n"


def cautions_block(texts: Iterable[str], marks: Marks) -> str:
    """Return callouts as one HTML list: every job sheet carries them, so they are not parsed again.

    A callout is one caution a line, `- **Words.** More words.` Raises ValueError on any other line.
    """
    items = [_caution(line) for text in texts for line in render_authored(text, marks).splitlines()]
    return '<ul class="cautions">\n' + "\n".join(items) + "\n</ul>\n"


def caution_heads(text: str) -> list[str]:
    """Return the bold words that the cautions of a callout begin with.

    >>> caution_heads("- **Label first.** Read it.\\n- **Wear** what it asks for.")
    ['Label first', 'Wear']
    """
    return [found[1].rstrip(".,:?") for line in text.splitlines() if (found := _BOLD.search(line))]


def _caution(line: str) -> str:
    if not line.startswith("- ") or line.count("**") % 2:
        raise ValueError(f"not a caution of one line: {line!r}")
    marked = _BOLD.sub(r"<strong>\1</strong>", line.removeprefix("- "))
    return f"<li>{marked}</li>"


def _ticks(marks: Marks) -> Callable[[str, tuple[Figure, ...]], Markup]:
    """Return the function that fills a tick's settings in: `{cut_low_in}` as a marked number.

    What names no setting of the step, as an owner's own tick may, stays as it is typed.
    """

    def filled(text: str, settings: tuple[Figure, ...]) -> Markup:
        # what was computed has an id in place of a name
        by_name = {
            setting.name: setting for setting in settings if not hasattr(setting, "identity")
        }
        # what stood in braces is left on the odd places
        parts = _TICK_VALUE.split(clean(text))
        return Markup("").join(
            marks.show(by_name[part])
            if number % 2 and part in by_name
            else in_entities(f"{{{part}}}" if number % 2 else part)
            for number, part in enumerate(parts)
        )

    return filled


def _rests(reason: DateReason) -> str:
    return f" ({origin_words(reason.rests_on)})" if reason.rests_on is not None else ""


def _date_reasons(marks: Marks) -> Callable[[DateReason], Markup]:
    """Return the function that says how one end of the open dates came about."""

    def told(reason: DateReason) -> Markup:
        source = inert(marks.cite(reason.source))
        if reason.sign is None:
            return Markup("a day of the calendar. {}.").format(source)
        name = marker_names()[reason.sign].lower()
        year = f"{name} as it was seen" if reason.by == SEEN else f"the {reason.by} year of {name}"
        sign = inert(f"{year}{_rests(reason)}")
        if not reason.offset_days:
            return Markup("{}. {}.").format(sign, source)
        side = "before" if reason.offset_days < 0 else "after"
        days = Reference(
            f"{side}_{reason.sign}_days",
            abs(reason.offset_days),
            "days",
            reason.source,
            "waiting time",
        )
        return Markup("{} {} {}. {}.").format(marks.show(days), side, sign, source)

    return told

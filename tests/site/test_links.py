"""The check of finished pages finds each kind of fault, and nothing in pages that are right."""

import pytest

from generator.site.links import check_links, read, read_file


def _faults(index: str = "<h1 id='home'>Home</h1>", **others: str) -> tuple[str, ...]:
    """What is said of a page, beside a page in a folder, a drawing and a style sheet."""
    texts = {
        "plan.svg": "<svg xmlns='http://www.w3.org/2000/svg'></svg>",
        "look.css": "a { background: url(plan.svg) url(data:image/png;base64,) }",
        "work/job.html": '<h1 id="top">Job</h1><a href="../index.html">x</a>',
        "index.html": index,
    }
    texts |= {name.replace("_", "."): text for name, text in others.items()}
    return check_links(texts, {name: read_file(name, text) for name, text in texts.items()})


RIGHT = (
    '<a href="work/job.html#top">x</a>',
    '<a href="#here">x</a><p id="here">y</p>',
    "<a href='work/job.html'>x</a>",
    "<a href=work/job.html>x</a>",
    '<a href="work/j%6Fb.html?h=word#top">x</a>',
    '<img src="plan.svg" alt="a > b">',
    '<img src="data:image/gif;base64,R0">',
    '<a href="tel:911">911</a>',
    '<a class="n source" rel="noopener" href="https://example.org/a?b=1&amp;c=2">x</a>',
    '<link rel="stylesheet" href="look.css">',
    '<p style="background: url(plan.svg)">x</p>',
    "<script>const x = '<a href=\"gone.html\">'; // <!-- </script>",
    '<p>href="gone.html" is only text, as is url(gone.png)</p>',
    '<p title="so is href=gone.html here">x</p>',
    """<p title='and src="gone.png" here'>x</p>""",
)
WRONG = {
    '<a href="gone.html">x</a>': "leads to gone.html, which does not exist",
    "<a href='gone.html'>x</a>": "leads to gone.html, which does not exist",
    "<a href=gone.html>x</a>": "leads to gone.html, which does not exist",
    '<a title="a > b"\nhref="gone.html">x</a>': "leads to gone.html, which does not exist",
    '<a href="work/">x</a>': "leads to work/, which does not exist",
    '<a href="work/job.md">x</a>': "leads to work/job.md, which does not exist",
    '<a href="../index.html">x</a>': "leads to ../index.html, which does not exist",
    '<a href="Work/Job.html">x</a>': "leads to Work/Job.html, which does not exist",
    '<a href="/index.html">x</a>': "leads to /index.html, which does not exist",
    '<a href="#gone">x</a>': "leads to #gone, but index.html has no such place",
    '<a href="work/job.html#gone">x</a>': "but work/job.html has no such place",
    '<img alt="" src="gone.png">': "leads to gone.png, which does not exist",
    '<script src="gone.js"></script>': "leads to gone.js, which does not exist",
    '<svg><use xlink:href="gone.svg#a"/></svg>': "leads to gone.svg#a, which does not exist",
    '<p id="a">x</p><p id="a">y</p>': "uses the same id twice: a.",
    "<p>x<!-- y --></p>": "has an HTML comment.",
    '<p style="background: url(gone.png)">x</p>': "leads to gone.png, which does not exist",
    '<style>@import "gone.css";</style>': "leads to gone.css, which does not exist",
    '<style>a { background: url("http://example.org/a.png") }</style>': "loads the network address",
    '<img src="https://example.org/a.png">': "network address https://example.org/a.png",
    '<img src="//example.org/a.png">': "network address //example.org/a.png",
    '<a href="https://example.org">x</a>': "network address https://example.org",
    '<a class="source" href="https://example.org">x</a>': "network address https://example.org",
    '<a class="source" rel="noopener" href="http://example.org">x</a>': "network address http:",
    '<a class="resource" rel="noopener" href="https://example.org">x</a>': "network address",
    '<a class="source" rel="noopener" href="https://example.org/a">x</a>'
    '<img src="https://example.org/a">': "network address https://example.org/a",
    '<form action="mailto:a@example.org"></form>': "network address mailto:",
    '<a href="javascript:void(0)">x</a>': "network address javascript:",
    '<a href="data:text/html,x">x</a>': "network address data:text/html",
}


@pytest.mark.parametrize("html", RIGHT)
def test_what_is_right_passes(html: str) -> None:
    assert _faults(f"<h1>Home</h1>{html}") == ()


@pytest.mark.parametrize(("html", "fault"), WRONG.items())
def test_what_is_wrong_is_named_once(html: str, fault: str) -> None:
    faults = _faults(f"<h1>Home</h1>{html}")
    assert len(faults) == 1
    assert faults[0].startswith("index.html: ")
    assert fault in faults[0]


def test_a_style_sheet_and_a_drawing_are_read_too() -> None:
    drawing = '<svg><image href="http://example.org/a.png"/></svg>'
    assert _faults(look_css="a { background: url(gone.png) }", plan_svg=drawing) == (
        "look.css: leads to gone.png, which does not exist.",
        "plan.svg: leads to the network address http://example.org/a.png.",
    )


def test_a_safety_line_that_was_lost_is_a_fault() -> None:
    html = '<li data-safety="wear">Wear it.</li>'
    assert read(html, ("wear",)).faults == ()
    pages = {"index.html": read(html, ("wear", "wells")), "gone.html": read("")}
    assert check_links(["index.html"], pages) == (
        "gone.html: was not written.",
        "index.html: the safety line wells is missing.",
    )


def test_what_the_theme_puts_around_a_page_is_read_with_it() -> None:
    body, frame = read('<p id="a">x</p>'), '<a href="#a">x</a><a href="{}">y</a><p id="z"></p>'
    files, pages = ["a.html", "b.html"], {"a.html": body, "b.html": body}

    def told(html: str, **changes: str) -> tuple[str, ...]:
        around = {"a.html": read(html.format(changes.get("to", "b.html")))}
        return check_links(files, pages, around)

    assert told(frame) == ()
    assert told(frame, to="b.html#z") == ()
    assert told(frame, to="gone.html") == ("a.html: leads to gone.html, which does not exist.",)
    assert told(frame.replace("#a", "#b")) == (
        "a.html: leads to #b, but a.html has no such place.",
    )
    # an id of the frame stands on every page
    assert told(frame.replace('"z"', '"a"')) == (
        "a.html: uses the same id twice: a.",
        "b.html: uses the same id twice: a.",
    )

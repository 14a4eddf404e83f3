"""Invented books for the tests of the site layer: no property, only pages of the usual make-up."""

from datetime import date

from generator.book.model import Book, Page, SearchRecord
from generator.in_two import TWO_FROM

ROWS = 12
PARAGRAPH = (
    "The strip lies along the **old lane** and is sown in the spring after its second fall kill. "
    "See [the next job](job-{other}.md) and [where it stands](../index.md#all-of-it) for what "
    "comes before and after. Thatch off before green-up; seed no deeper than a quarter inch."
)


def book_of(count: int) -> Book:
    """A book with a home page, an emergency page, and `count` job pages of about 12 kB each."""
    jobs = tuple(_job(number, count) for number in range(1, count + 1))
    return Book(
        title="Lane &amp; Creek",
        reader="owner",
        as_of=date(2026, 7, 12),
        pages=(_home(count), _emergency(), *jobs),
        files={"figures/plan.svg": PLAN},
    )


def tiny_book(words: str) -> Book:
    """Enough pages for two processes, each with little on it but `words`."""
    pages = tuple(
        Page(
            address="index.md" if number == 0 else f"page-{number}.md",
            title=f"Page {number}",
            group="Pages" if number else "",
            markdown=f"# Page {number}\n\nThe {words} book.\n",
            search=SearchRecord(f"Page {number}", words),
        )
        for number in range(TWO_FROM + 1)
    )
    return Book("Tiny", "owner", date(2026, 7, 12), pages)


PLAN = (
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">'
    b'<path d="M2 18 L38 2" stroke="currentColor"/></svg>\n'
)


def _home(count: int) -> Page:
    cards = "\n".join(
        f'<a href="work/job-{n}.html"><strong>Job {n}</strong><span>Lane screen</span></a>'
        for n in range(1, min(count, 6) + 1)
    )
    markdown = f"""# Lane &amp; Creek

<p class="lead">What is to be done, where, and what it takes.</p>

<p class="stamp">As of Jul 12, 2026. Replaces older sheets.</p>

<nav class="cards">
{cards}
</nav>

## All of it

The whole year, from the first freeze to the last mowing, in the order in which it is done.
"""
    return Page("index.md", "Lane &amp; Creek", "", markdown, _record("Lane &amp; Creek", "year"))


def _emergency() -> Page:
    markdown = """# Emergency

<section class="emergency">
<p><strong>Call 911.</strong> Say: north gate, county road 4.</p>
<p>Nearest way in for an ambulance: <strong class="blank">not written down</strong></p>
</section>
"""
    return Page("emergency.md", "Emergency", "", markdown, _record("Emergency", "gate ambulance"))


def _job(number: int, count: int) -> Page:
    other = number % count + 1
    prose = PARAGRAPH.format(other=other)
    sections = "\n".join(
        f"## Part {part}\n\n{prose}\n\n- first *this*\n- then `that`\n- and the rest\n\n"
        f"{_figures(number, part)}\n"
        for part in range(1, 5)
    )
    markdown = f"""# Job {number}

<p class="stamp">As of Jul 12, 2026. Replaces older sheets.</p>

{_finding(number)}

{_sheet(number)}

{sections}
<figure>
<img src="../figures/plan.svg" alt="Where the strip lies">
<figcaption>The strip, seen from the lane.</figcaption>
</figure>

{_workings(number)}
"""
    title = f"Job {number}"
    record = _record(title, f"spring{number} switchgrass drill sowing lane creek")
    return Page(f"work/job-{number}.md", title, "Work", markdown, record, ("wear", "people"))


def _figures(number: int, part: int) -> str:
    rows = "\n".join(
        f'<tr><td>Line {row}</td><td class="num">{number * row / 7:.1f} lb</td>'
        f'<td class="num"><a class="n" href="#w-{number}-{row % 3}"'
        f' data-q="lane/2027/line/{part}">{row / 3:.1f} fl oz</a></td>'
        f'<td class="num">{row * part}.5 ac</td></tr>'
        for row in range(ROWS)
    )
    return f"""<div class="wide"><table class="figures">
<thead><tr><th>Line</th><th>Seed</th><th>Measure</th><th>Ground</th></tr></thead>
<tbody>
{rows}
</tbody>
</table></div>
"""


def _finding(number: int) -> str:
    kind, word = (("stop", "Stop"), ("caution", "Caution"), ("note", "Note"))[number % 3]
    return f"""<section class="finding {kind}" id="f-{number}">
<p class="head"><strong>{word}</strong> The seed tag has not been read.</p>
<p>Read the tag and write down its purity and germination.</p>
</section>"""


def _sheet(number: int) -> str:
    return f"""<section class="sheet">
<h2>In the field</h2>
<dl class="facts">
<div><dt>Ground</dt><dd>{number / 10:.1f} ac</dd></div>
<div><dt>Nozzle</dt><dd><strong class="blank">not written down</strong></dd></div>
<div><dt>Pace</dt><dd>4.0 mph</dd></div>
</dl>
<ul class="ticks"><li>Label read</li><li>Neighbor told</li><li>Water within reach</li></ul>
<ul class="safety"><li data-safety="wear">Wear what the label asks for.</li>
<li data-safety="people">Nobody else on the strip.</li></ul>
<p class="signoff">Done on ________ by ________</p>
</section>"""


def _workings(number: int) -> str:
    items = "\n".join(
        f'<div class="working" id="w-{number}-{n}">'
        f"<p>Line {n}: rate × ground = {n}.5 × 2.0</p></div>"
        for n in range(3)
    )
    return f'<details class="workings">\n<summary>Show the working</summary>\n{items}\n</details>'


def _record(title: str, text: str) -> SearchRecord:
    return SearchRecord(title, text)

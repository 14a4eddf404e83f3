"""The strip and the tank on job sheets: what is drawn is what the passes and loads are."""

import re

import pytest

from generator.book.charts.strip import FIRST_OF_MANY, StripPass, StripPicture, strip_drawn
from generator.book.marks import printed
from generator.plan.model.job import Job
from tests.book.charts.drawn import name_of, number, pictures
from tests.book.reading import Element, read
from tests.book.sites import CHECKOUT, Site

PICTURE_BYTES, SHEET_BYTES = 4000, 6000
DOT = re.compile(r'<circle [^>]*class="dot"[^>]*data-day[^>]*/>')


def _sheet(site: Site, job: Job) -> Element:
    return read((site.folder / f"work/{job.address}.html").read_text(encoding="utf-8"))


def _strips(page: Element) -> list[Element]:
    return [one for one in pictures(page) if name_of(one) == "strip"]


def _mixed(site: Site) -> list[Job]:
    return [job for job in site.plan.jobs if job.mix is not None and job.state.is_ahead]


@pytest.mark.parametrize("reader", ["owner", "hired-sprayer"])
def test_a_strip_has_its_passes_where_they_run(demo_sites: dict[str, Site], reader: str) -> None:
    """In shares of the strip's width, measured off the drawing from the edge to begin at."""
    looked = 0
    for job in _mixed(demo_sites[reader]):
        drawn = _strips(_sheet(demo_sites[reader], job))
        assert len(drawn) == ("lanes_count" in job.numbers)
        if not drawn or job.numbers["lanes_count"].value > FIRST_OF_MANY + 2:
            continue
        looked += 1
        (ground,) = drawn[0].all("rect", "strip")
        top, tall = number(ground, "y"), number(ground, "height")
        middles = [
            (number(one, "y") + number(one, "height") / 2 - top) / tall
            for one in drawn[0].all("rect", "pass")
        ]
        ft = {name: figure.value for name, figure in job.numbers.items()}
        count = int(ft["lanes_count"])
        apart = ft.get("passes_apart_ft", ft["pass_width_ft"])
        last_ft = ft.get("last_pass_ft", ft["first_pass_ft"])
        if count == 1:
            wide, expected = 2 * ft["first_pass_ft"], [ft["first_pass_ft"]]
        else:
            # the strip is what lies before the middle of the first, between, and after the last
            steps = [ft["first_pass_ft"] + n * apart for n in range(count - 1)]
            wide = steps[-1] + apart + ft["pass_width_ft"] / 2
            wide = wide if "last_pass_ft" not in ft else wide - ft["pass_width_ft"] + 2 * last_ft
            expected = [*steps, wide - last_ft]
        assert middles == pytest.approx([one / wide for one in expected], abs=0.002)
        assert bool(drawn[0].all("rect", "lap")) == ("lap_in" in ft)
    assert looked


def test_a_strip_is_as_wide_as_it_was_typed(demo_sites: dict[str, Site]) -> None:
    """The picture takes no width: the passes alone must come to the one the owner typed."""
    site = demo_sites["owner"]
    job = next(one for one in _mixed(site) if one.id == "lane/2027/autumn_kill")
    (drawn,) = _strips(_sheet(site, job))
    (ground,) = drawn.all("rect", "strip")
    first = drawn.all("rect", "pass")[0]
    px_per_ft = number(first, "height") / job.numbers["pass_width_ft"].value
    typed = site.plan.place("lane").typed
    assert typed is not None
    assert typed.width_ft is not None
    assert number(ground, "height") / px_per_ft == pytest.approx(typed.width_ft.value, abs=0.05)


def test_of_many_passes_the_first_and_the_last_are_drawn() -> None:
    passes = tuple(StripPass(10.0 * n, 10.0 * n + 10) for n in range(40))
    drawn = read(str(strip_drawn(StripPicture("strip", "Passes", 400.0, passes))))
    words = [one.text() for one in drawn.all("text")]
    assert words == ["1", "2", "40", "to", "begin here", "far edge"]
    assert len(drawn.all("rect", "pass")) == 3


def test_a_single_pass_that_is_too_wide_reaches_beside_the_strip() -> None:
    chart = StripPicture("strip", "Passes", 8.0, (StripPass(-1.0, 9.0),))
    drawn = read(str(strip_drawn(chart)))
    (ground,), (one,) = drawn.all("rect", "strip"), drawn.all("rect", "pass")
    assert number(one, "y") < number(ground, "y")
    assert number(one, "height") / number(ground, "height") == pytest.approx(10 / 8)


def test_a_tank_is_filled_in_the_order_of_its_mix(demo_sites: dict[str, Site]) -> None:
    looked = 0
    for job in _mixed(demo_sites["owner"]):
        assert job.mix is not None
        tanks = _sheet(demo_sites["owner"], job).all("ol", "tank")
        assert len(tanks) == bool(job.mix.order)
        if not tanks:
            continue
        looked += 1
        load = job.mix.loads[0]
        amounts = {dose.name: printed(dose.amount) for dose in load.doses}
        layers = [" ".join(one.text().split()) for one in tanks[0].all("li")]
        expected = [f"{amounts[name]} {name}" for name in job.mix.order]
        assert layers[1:-1] == expected
        assert layers[0] == "Half the water, agitator on"
        full = " ".join(map(printed, load.poured)) or printed(load.spray)
        assert layers[-1] == f"Water to {full}"
    assert looked


def test_a_tank_of_one_s_own_has_the_order_without_the_amounts_of_another(
    demo_sites: dict[str, Site],
) -> None:
    """A contractor's own sprayer takes other amounts than the tank of the place."""
    site = demo_sites["hired-sprayer"]
    (job,) = [one for one in _mixed(site) if one.mix is not None and one.mix.order]
    assert job.mix is not None
    page = _sheet(site, job)
    assert not page.all("ol", "tank")
    (order,) = page.all("ol", "order")
    assert [one.text() for one in order.all("li")][:-1] == list(job.mix.order)


def test_no_tank_and_no_strip_stands_on_a_stopped_job(demo_sites: dict[str, Site]) -> None:
    for site in demo_sites.values():
        stopped = site.plan.stopped()
        for job in site.plan.jobs:
            if job.id in stopped or not job.state.is_ahead:
                page = _sheet(site, job)
                assert not _strips(page)
                assert not page.all("ol", "tank")
    assert any(site.plan.stopped() for site in demo_sites.values())


def test_pictures_are_small(demo_sites: dict[str, Site]) -> None:
    for site in demo_sites.values():
        for address, html in site.pages().items():
            # of dots there are as many as heights were logged
            sizes = _sizes(DOT.sub("", html))
            if address.startswith("work/"):
                assert sum(sizes) <= SHEET_BYTES, address
            if address == "buy.html":
                assert sum(sizes) <= PICTURE_BYTES
            if address.startswith(("work/", "places/")):
                assert all(size <= PICTURE_BYTES for size in sizes), (address, sizes)
    for drawing in sorted((CHECKOUT / "content" / "drawings").glob("*.svg")):
        assert drawing.stat().st_size <= PICTURE_BYTES, drawing.name


def _sizes(html: str) -> list[int]:
    """How long each picture and each tank is, all that is nested in it counted."""
    sizes = [part.find("</ol>") for part in html.split('<ol class="tank"')[1:]]
    begins, depth = 0, 0
    for found in re.finditer(r'<svg( class="picture")?|</svg>', html):
        if found[0] == "</svg>":
            depth -= depth > 0
            if begins and not depth:
                sizes.append(found.end() - begins)
                begins = 0
        elif depth or found[1]:
            begins = begins or found.start()
            depth += 1
    return sizes


def test_a_picture_is_measured_with_all_that_is_in_it() -> None:
    one = '<svg class="picture"><svg><path/></svg></svg>'
    assert _sizes(f"<svg></svg><p>{one}</p><svg></svg>{one}") == [len(one), len(one)]

"""The command that takes shapes a phone or a mapping program wrote into a property folder."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from generator.said import FolderTrouble, how_many, loaded_from, say_faults
from generator.typed import HERE, PropertyFolder, safe, told, why

if TYPE_CHECKING:
    from generator.inventory.imported import Offered, ShapeWanted
    from generator.inventory.shape_found import FoundShape
    from generator.units import LatLon

NOT_TAKEN = "Nothing was written."
PASSED_OVER = ""
MOST_THIN_FT = 100
ENDS_ARE_NEAR = 10  # of ends, that lie apart by less than such a part of the length
HOW_GOT = ("phone", "phone_under_trees", "surveyed", "drawn")
ASK = "What is it? (? lists what there is, Enter passes it over)"


class ToldOf(NamedTuple):
    """What the options say of the shapes that are taken in."""

    what: str | None
    name: str | None
    width_ft: float | None
    got: str | None
    outline: bool


@click.command("import")
@click.argument("words", nargs=-1, required=True, metavar="FILES [FOLDER]")
@click.option("--list", "only_list", is_flag=True, help="Say what is in the files, and no more.")
@click.option("--pick", "picks", multiple=True, metavar="SHAPE", help="Take it, by number or name.")
@click.option("--as", "what", metavar="KIND", help="What they are, such as screen, walk or creek.")
@click.option("--name", metavar="NAME", help="What it is called, where that is another name.")
@click.option("--width", "width_ft", type=float, metavar="FEET", help="Taped width, along a line.")
@click.option("--got", type=click.Choice(HOW_GOT), help="How the points were got.")
@click.option("--outline", is_flag=True, help="A line was walked once around: it is an outline.")
@click.option("--thin", "thin_ft", type=float, metavar="FEET", help="How near points are left out.")
def import_command(
    words: tuple[str, ...],
    only_list: bool,
    picks: tuple[str, ...],
    thin_ft: float | None,
    what: str | None,
    name: str | None,
    width_ft: float | None,
    got: str | None,
    outline: bool,
) -> None:
    """Take shapes out of files into a property folder.

    It lists what is in the files with feet and acres, and asks what each shape is, unless --as says
    it. The shapes are written as one new file in the folder shapes, and each gets a new file with
    an entry to type further; no file that is there is changed. A line that a device recorded is
    thinned: points within 3 ft of the rest of it, or within --thin, are left out. --pick may stand
    more than once.
    """
    files, folder = _files_and_folder(words)
    loaded = loaded_from(folder)
    say_faults(loaded, NOT_TAKEN)
    assert loaded.inventory is not None
    offered = _offered(files, loaded.inventory.property.location_lat_lon, thin_ft)
    for number, one in enumerate(offered, start=1):
        click.echo(safe(f"{number:3}  {_in_words(one)}"))
    if only_list:
        return
    wanted = _wanted(_picked(offered, picks), ToldOf(what, name, width_ft, got, outline))
    if not wanted:
        click.echo(NOT_TAKEN)
        return
    _take_in(folder, files[0].name, wanted)


def _take_in(folder: Path, source: str, wanted: Sequence[ShapeWanted]) -> None:
    from generator.inventory.imported import take_in

    try:
        taken = take_in(folder, source, wanted)
    except OSError as error:
        raise FolderTrouble(f"{told(folder)} cannot be written: {why(error)}.") from None
    for fault in taken.faults:
        click.echo(safe(str(fault)), err=True)
    if taken.faults:
        raise FolderTrouble(f"{how_many(len(taken.faults), 'fault')}. {NOT_TAKEN}")
    for written in taken.names:
        click.echo(told(folder / written))
    click.echo(f"Type there what else you know. Then: handbook check {told(folder)}")


def _files_and_folder(words: Sequence[str]) -> tuple[list[Path], Path]:
    """Return the files that are named, and the property folder behind them or around a person."""
    last = Path(words[-1])
    names, folder = (words[:-1], last) if last.is_dir() else (words, Path(HERE))
    if not names:
        raise click.UsageError("name the files to take in, and the property folder behind them")
    PropertyFolder().convert(str(folder), None, None)
    return [Path(name) for name in names], folder


def _offered(files: Sequence[Path], middle: LatLon | None, thin_ft: float | None) -> list[Offered]:
    from generator.inventory.imported import fault_of_file, offered_by
    from generator.inventory.shape_found import UnreadableShapesError
    from generator.reference.library import values

    if thin_ft is not None and not 0 <= thin_ft <= MOST_THIN_FT:
        raise click.UsageError(f"--thin takes feet from 0 to {MOST_THIN_FT}")
    most_ft = values()["thinned_to_ft"].value if thin_ft is None else thin_ft
    offered: list[Offered] = []
    faults = []
    for file in files:
        try:
            offered += offered_by(file, middle, most_ft)
        except UnreadableShapesError as error:
            faults.append(fault_of_file(file, error))
    for fault in faults:
        click.echo(safe(str(fault)), err=True)
    if faults:
        raise FolderTrouble(f"{how_many(len(faults), 'file')} cannot be read. {NOT_TAKEN}")
    if not offered:
        raise FolderTrouble(f"No shape is in what was named. {NOT_TAKEN}")
    return offered


def _in_words(one: Offered) -> str:
    """Return a shape in a line: where it stands, its name, its form and how large it is."""
    shape = one.there
    name = " / ".join((*shape.within, shape.name or "without a name"))
    if one.wrong is not None:
        told_so = f"cannot be taken in: {one.wrong.what} - {one.wrong.accepted}"
        return f"{one.file}: {name}: {told_so}"
    return f"{one.file}: {name}: {_size(one)}"


def _size(one: Offered) -> str:
    from generator.geometry.geodesic import line_length_ft, outline_area_ac

    there, taken = one.there, one.taken
    if there.form == "point":
        return f"point at {there.lat_lon[0][0]:.5f}, {there.lat_lon[0][1]:.5f}"
    if there.form == "outline":
        corners = how_many(len(there.lat_lon), "corner")
        inside_ac = outline_area_ac(there.lat_lon, there.holes)
        without = f", without {how_many(len(there.holes), 'hole')} in it" if there.holes else ""
        return f"outline of {inside_ac:,.2f} acres, {corners}{without}"
    points = how_many(len(there.lat_lon), "point")
    size = f"line of {line_length_ft(there.lat_lon):,.0f} ft, {points}"
    if len(taken.lat_lon) < len(there.lat_lon):
        left = how_many(len(taken.lat_lon), "point")
        size += f"; thinned to {line_length_ft(taken.lat_lon):,.0f} ft, {left}"
    return f"{size}{_around(taken)}"


def _around(line: FoundShape) -> str:
    """Return how much ground a line goes around, and how far its ends lie apart; or nothing."""
    from generator.geometry.geodesic import line_length_ft, outline_area_ac
    from generator.inventory.imported import as_outline
    from generator.inventory.shape_sound import wrong_with

    outline = as_outline(line)
    if wrong_with(outline) is not None:
        return ""
    apart_ft = line_length_ft((line.lat_lon[0], line.lat_lon[-1]))
    inside_ac = outline_area_ac(outline.lat_lon)
    return f"; as an outline {inside_ac:,.2f} acres, ends {apart_ft:,.0f} ft apart"


def _picked(offered: Sequence[Offered], picks: Sequence[str]) -> list[Offered]:
    """Return the shapes that are picked by number or name, or all that can be taken in."""
    if not picks:
        return [one for one in offered if one.wrong is None]
    return [_one_picked(offered, pick) for pick in dict.fromkeys(picks)]


def _one_picked(offered: Sequence[Offered], pick: str) -> Offered:
    numbered = {str(number): one for number, one in enumerate(offered, start=1)}
    named = [one for one in offered if one.there.name == pick]
    if pick not in numbered and len(named) != 1:
        many = "several shapes are" if named else "no shape is"
        raise click.UsageError(f"{many} called {safe(pick)}; --pick takes the number before it too")
    one = numbered[pick] if pick in numbered else named[0]
    if one.wrong is not None:
        raise click.UsageError(f"{safe(pick)} cannot be taken in: {safe(one.wrong.what)}")
    return one


def _wanted(picked: Sequence[Offered], of: ToldOf) -> list[ShapeWanted]:
    if of.name is not None and len(picked) != 1:
        raise click.UsageError("--name is for one shape: --pick it")
    if of.what is not None and not _kind(of.what):
        raise click.UsageError(f"{safe(of.what)} is nothing that a shape can be: {_kinds()}")
    found = []
    for one in picked:
        what = _kind(of.what) if of.what is not None else _asked_what(one)
        if what:
            found.append(_one_wanted(one, what, of))
    return found


def _one_wanted(one: Offered, what: str, of: ToldOf) -> ShapeWanted:
    from generator.inventory.imported import NEED_A_WIDTH, ShapeWanted, as_outline

    is_asked = of.what is None
    shape = one.taken
    if shape.form == "line" and (of.outline or (is_asked and _is_walked_around(what, shape))):
        shape = as_outline(shape)
    called = of.name or one.there.name
    if not called and not is_asked:
        raise click.UsageError("a shape without a name needs --name")
    called = called or click.prompt("What is it called?", type=str)
    _refuse_form(what, shape, called)
    width_ft = None
    if what in NEED_A_WIDTH and shape.form == "line":
        if of.width_ft is None and not is_asked:
            raise click.UsageError(f"{safe(called)} is a line: --width says its width, as taped")
        width_ft = of.width_ft or click.prompt("How wide is it, in feet, as taped?", type=float)
    return ShapeWanted(shape, what, called, width_ft, of.got)


def _is_walked_around(what: str, line: FoundShape) -> bool:
    """Ask whether a line is an outline, where what it is can only be one, or the ends are near."""
    from generator.geometry.geodesic import line_length_ft
    from generator.inventory.imported import forms_for

    apart_ft = line_length_ft((line.lat_lon[0], line.lat_lon[-1]))
    are_near = apart_ft < line_length_ft(line.lat_lon) / ENDS_ARE_NEAR
    if "outline" not in forms_for(what) or ("line" in forms_for(what) and not are_near):
        return False
    said = f"It is a line, and its ends lie {apart_ft:,.0f} ft apart. Was it walked once around?"
    return click.confirm(said)


def _refuse_form(what: str, shape: FoundShape, called: str) -> None:
    from generator.inventory.imported import forms_for
    from generator.inventory.problems import listed

    forms = forms_for(what)
    if shape.form in forms:
        return
    around = "outline" in forms and shape.form == "line"
    more = ": --outline, if it was walked once around" if around else ""
    takes = f"{what.replace('_', ' ')} takes {listed(forms)}"
    raise click.UsageError(f"{safe(called)} is in the file as {shape.form}; {takes}{more}")


def _asked_what(one: Offered) -> str:
    """Ask what a shape is until it is something there is; Enter passes it over."""
    click.echo(safe(_in_words(one)))
    while True:
        kind = _kind(click.prompt(ASK, default=PASSED_OVER, show_default=False))
        if kind is not None:
            return kind
        click.echo(_kinds())


def _kind(typed: str) -> str | None:
    """Return what is meant by a word, nothing typed as passing over; None where it is no kind."""
    from generator.inventory.imported import what_there_is

    word = typed.strip().casefold().replace(" ", "_")
    return word if word in (PASSED_OVER, *what_there_is()) else None


def _kinds() -> str:
    from generator.inventory.imported import what_there_is

    return ", ".join(word.replace("_", " ") for word in what_there_is())

"""Records one entry: checked together with the whole folder before a byte of it is written."""

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.entry import Typed, entry_file, entry_from, id_for
from generator.inventory.fields import rules_of
from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry, LoggedJob
from generator.inventory.log_work import NotDoing
from generator.inventory.problems import Problem, listed
from generator.inventory.schema import Inventory
from generator.inventory.write import clear_unfinished, one_writer, write_new_file
from generator.reference.library import marker_names
from generator.units import shown
from generator.working import Given

# Fields of an entry that are told in words of their own.
TOLD = ("job", "upkeep", "not_doing", "used", "bought", "spent")

LOG = "log"
# Keys of an entry that an option of the command stands for.
OPTIONS = {"done_on": "--on", "recorded_on": "--recorded-on", "markers_seen": "--seen"}

# What an entry raises: from the folder without it and with it, in sentences for the owner.
Asks = Callable[[Inventory, Inventory], tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Recorded:
    """An entry that was written, the name of its file, and the folder with it; or faults in words.

    `asked` is what it says that cannot be, or hardly; there is no entry where that kept it from
    being written.
    """

    name: str
    entry: LogEntry | None
    inventory: Inventory | None
    faults: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()

    def told(self) -> str:
        """Return in one line what the entry changed, and what keeps it from counting yet."""
        assert self.entry is not None
        assert self.inventory is not None
        return f"{entry_told(self.entry, self.inventory)}.{_later(self.entry, self.inventory)}"


def entry_told(entry: LogEntry, inventory: Inventory) -> str:
    """Return in one line what an entry says."""
    told = "; ".join(_changes(entry, inventory)) or "a note"
    return f"{told[0].upper()}{told[1:]}"


def record_entry(folder: Path, typed: Typed, asks: Asks, *, yes: bool) -> Recorded:
    """Write what was typed as one new file in the log, or return the faults it would make.

    What `asks` finds in it keeps it from being written, unless `yes` is said to it. Raises
    NotMeantError for what cannot be put into keys, and OSError where the folder cannot be read or
    written.
    """
    return write_entry(folder, lambda inventory: entry_from(typed, inventory), asks, yes=yes)


def write_entry(
    folder: Path, made_of: Callable[[Inventory], dict[str, Any]], asks: Asks, *, yes: bool
) -> Recorded:
    """Write an entry as `record_entry` does; `made_of` makes its keys of the folder as it is."""
    # from the first look to the writing: what another writes in between was not checked with this
    with one_writer(folder):
        before = load_inventory(folder)
        if before.inventory is None:
            return Recorded("", None, None, tuple(map(str, before.problems)))
        was, data = before.inventory, made_of(before.inventory)

        def made(taken: set[str]) -> tuple[str, bytes]:
            identity = id_for(data, taken)
            return identity, entry_file(identity, data)

        put = put_new(
            folder,
            LOG,
            {logged.id for logged in was.entries},
            made,
            OPTIONS,
            lambda after: () if yes else asks(was, after),
        )
        if put.inventory is None:
            return Recorded("", None, None, put.faults, put.asked)
        entry = next(logged for logged in put.inventory.entries if logged.id == put.identity)
        asked = asks(was, put.inventory) if yes else ()
        return Recorded(put.name, entry, put.inventory, asked=asked)


@dataclass(frozen=True, slots=True)
class NewFile:
    """The file of one new record and the folder with it; or why it was not written."""

    name: str
    identity: str
    inventory: Inventory | None
    faults: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()


def put_new(
    folder: Path,
    kept_in: str,
    ids: set[str],
    made: Callable[[set[str]], tuple[str, bytes]],
    options: Mapping[str, str],
    asks: Callable[[Inventory], tuple[str, ...]],
) -> NewFile:
    """Write a new record as one file of a folder of its kind, unless it makes a fault or is asked.

    `made` makes its id and its file, of the ids that are taken. One writer at a time calls it.
    """
    taken = set(ids)
    clear_unfinished(folder / kept_in)
    while True:
        identity, content = made(taken)
        name = f"{kept_in}/{identity}.yaml"
        after = load_inventory(folder, {name: content})
        if after.inventory is None:
            text = content.decode()
            faults = (_fault(problem, name, text, options) for problem in after.problems)
            return NewFile(name, identity, None, tuple(faults))
        asked = asks(after.inventory)
        if asked:
            return NewFile(name, identity, None, asked=asked)
        try:
            write_new_file(folder / name, content)
        except FileExistsError:
            # by who does not wait, as an editor: under another id, and checked with that file
            taken.add(identity)
            continue
        return NewFile(name, identity, after.inventory)


def _fault(problem: Problem, name: str, content: str, options: Mapping[str, str]) -> str:
    """Return a fault in words; one of the new record by the key, since its file is not there."""
    if problem.file != name:
        return str(problem)
    # every key begins a line, since the file is written without wrapping
    lines = content.splitlines()[: problem.line]
    # what stands in a plain list is told by the key of the list
    key = next(line for line in reversed(lines) if ":" in line).strip(" -").partition(":")[0]
    what = "entry" if name.startswith(f"{LOG}/") else "sit"
    return (
        f"{options.get(key, key)} of this {what} {problem.code} {problem.what} - {problem.accepted}"
    )


def _later(entry: LogEntry, inventory: Inventory) -> str:
    """Return what to do where an entry is later than the day typed for the plan, else nothing."""
    as_of, day = inventory.property.as_of, entry.done_on
    if as_of is None or day <= as_of:
        return ""
    return (
        f" It is later than as_of: {as_of} in property.yaml, so no book counts it yet, and jobs it "
        f"weighs on are stopped. Type as_of: {day} or a later day there, leave the line out, or "
        f"build with --as-of {day}."
    )


def _changes(entry: LogEntry, inventory: Inventory) -> Iterator[str]:
    if entry.corrects is not None:
        yield f"entry {entry.corrects} no longer counts"
    if entry.confirms:
        yield f"{listed(entry.confirms, 'and')} confirmed as right"
    if entry.job is not None:
        yield _job_told(entry.job, inventory)
    for done in entry.upkeep:
        yield f"{_upkeep_told(done.at, done.step, inventory)}, is done"
    for left_out in entry.not_doing:
        yield f"{_step_told(left_out, inventory)}, will not be done"
    for marker in entry.markers_seen:
        yield f"{marker_names()[marker].lower()} was seen on {entry.done_on}"
    for used in entry.used:
        yield f"{_amount(used.amount)} of {used.item} used"
    for bought in entry.bought:
        cost = f" for {_amount(bought.cost_usd)}" if bought.cost_usd is not None else ""
        yield f"{_amount(bought.amount)} of {bought.item} bought{cost}"
    for spent in entry.spent:
        yield f"{_amount(spent.cost_usd)} spent on {spent.what}"
    for name, rule in rules_of(LogEntry).items():
        said = rule.form == "record" and name not in TOLD
        if said and getattr(entry, name):
            yield f"{name.replace('_', ' ')} written down"


def _job_told(job: LoggedJob, inventory: Inventory) -> str:
    state = "is finished" if job.finished else "is begun"
    if job.answer is not None:
        state = f"{state}, answered {job.answer}"
    return f"{_planting_told(job.planting, job.step, inventory)}, {state}"


def _step_told(left_out: NotDoing, inventory: Inventory) -> str:
    if left_out.planting is not None:
        return _planting_told(left_out.planting, left_out.step, inventory)
    return _upkeep_told(str(left_out.at), left_out.step, inventory)


def _planting_told(planting_id: str, step_id: str, inventory: Inventory) -> str:
    place, planting = next(
        (place, planting)
        for place in inventory.places()
        for planting in place.plantings
        if planting.id == planting_id
    )
    step = next(planned for planned in inventory.steps_of(planting) if planned.id == step_id)
    return f"{step.name}, {place.name}"


def _upkeep_told(thing_id: str, step_id: str, inventory: Inventory) -> str:
    subject = next(thing for thing in inventory.kept_up() if thing.id == thing_id)
    steps = inventory.plans()[subject.upkeep].steps if subject.upkeep is not None else ()
    step = next(planned for planned in steps if planned.id == step_id)
    return f"{step.name}, {subject.name}"


def _amount(amount: Given) -> str:
    typed = shown(amount.typed, amount.typed_unit)
    return typed or str(amount.typed)

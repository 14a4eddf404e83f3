"""How long the cards of what was and will be sprayed ask to wait before a planting is sown."""

import datetime
import math
from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.inventory.label import ActiveStrength, CropDays, Use
from generator.inventory.places import PlantedGround
from generator.inventory.stock import Product
from generator.plan.after.residues import Residue
from generator.plan.labels.crops import lines_for, meant_by
from generator.plan.labels.history import works_of
from generator.plan.log.longest import bound_of_a_sowing, longest_of
from generator.plan.model.counts import Ask, Earliest, PlaceWaits, Spraying
from generator.plan.model.plan import grouped
from generator.reference.library import planting_kinds, species
from generator.working import Given

# What is left of these in the soil keeps a crop down, whatever a card says of others.
HOLDS_BACK = {
    "auxin": "is a growth regulator",
    "soil_residual": "works through the soil",
    "sulfonylurea": "is a sulfonylurea, of which traces hold crops back",
}
BEFORE_SOWING = "before_sowing"
# A use at one of these times lets its own planting be sown as it is sprayed, or was before.
_AT_SOWING = ("at_sowing", "after_sowing_before_emergence")
_WAITS_TOLD = {
    "seeding_interval_days": "the days before this planting is sown",
    "plant_back_days": "the days before other crops are sown",
}
CURE_CROPS = (
    "Read the label again, and type each as a crop under plant_back_days of that use, with its "
    "wait_days; 0 only where the label lets it be sown at once. Where it is silent, ask its maker "
    "or an extension office."
)


@dataclass(frozen=True, slots=True)
class Wait:
    """What a card asks for: days, none where `days` is None, and what it leaves open."""

    days: Given | None = None
    asks: tuple[Ask, ...] = ()


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be sown: the kinds it makes and its species, any of a kind where none is named."""

    kinds: frozenset[str]
    species: tuple[str, ...] = ()

    def crops(self) -> Iterator[tuple[str, str]]:
        """Yield every kind with each species of it that may be sown."""
        for kind in sorted(self.kinds):
            named = [name for name in self.species if species()[name].kind == kind]
            every = [crop.id for crop in species().values() if crop.kind == kind]
            yield from ((kind, name) for name in named or every)

    def name_of(self, kind: str, name: str) -> str:
        """Return what a crop is called: by its species where that is named, else by its kind."""
        return species()[name].name if name in self.species else planting_kinds()[kind]


def wait_of(residue: Residue, wanted: Wanted, bound: Given | None) -> Wait:
    """Return the longest wait the card's uses ask for, and what is not known of any of them.

    `bound` is the most that an answer can be that no card tells.
    """
    product, name = residue.product, residue.spraying.product_name
    if product is None:
        step = residue.spraying.step_name
        return Wait(asks=(Ask(f"{step}: {name}.", "Type used: with the product.", bound),))
    if not residue.uses:
        about = f"The label card of {name} has no uses."
        return Wait(asks=(Ask(about, "Type them from the label.", bound),))
    # of every use it may rest on: which one it was need not be known
    waits = [_wait_of_use(use, wanted, product, bound) for use in residue.uses]
    days = [wait.days for wait in waits if wait.days is not None]
    longest = max(days, key=lambda span: span.value, default=None)
    least = longest.value if longest is not None else 0
    asks = dict.fromkeys(ask for wait in waits for ask in wait.asks)
    # a line nobody can place is asked about only where it could lengthen the wait
    return Wait(longest, tuple(ask for ask in asks if ask.line is None or _most(ask) > least))


def _most(ask: Ask) -> float:
    return ask.longest.value if ask.longest is not None else math.inf


def _wait_of_use(use: Use, wanted: Wanted, product: Product, bound: Given | None) -> Wait:
    covered = _covers(use, wanted)
    interval = use.seeding_interval_days
    lines = use.plant_back_days if isinstance(use.plant_back_days, tuple) else ()
    days = [interval] if isinstance(interval, Given) else []
    # the interval alone, not what other crops of a mixture have to wait
    says_when = bool(days) or use.timing in _AT_SOWING
    unsaid: list[str] = []
    for kind, name in wanted.crops():
        meant = [line.wait_days for line in lines_for(lines, kind, name)]
        days += meant
        # a use says when its own crop may be sown; of any other, silence is no zero
        if not meant and not (covered and says_when):
            unsaid.append(wanted.name_of(kind, name))
    asks = [*_gaps(use, product, bound)]
    # asked, and not put at the longest listed: what lasts in soil may need more than that
    if unsaid and (held := _holds_back(product)) is not None:
        asks.append(_ask_crops(use, product, held, tuple(dict.fromkeys(unsaid)), bound))
    # what does not last waits as long as the longest that is listed, lines of no crop here too
    elif unsaid and lines and not (covered and use.timing == BEFORE_SOWING):
        known = (line.wait_days for line in lines if meant_by(line) is not None)
        days += [longest] if (longest := longest_of(known)) is not None else []
    asks += [_ask_name(use, product, line) for line in lines if meant_by(line) is None]
    return Wait(longest_of(days), tuple(asks))


def _gaps(use: Use, product: Product, bound: Given | None) -> Iterator[Ask]:
    missing = [
        name
        for name in ("seeding_interval_days", "plant_back_days")
        if getattr(use, name) in (None, ())
    ]
    if missing:
        told = " and ".join(_WAITS_TOLD[name] for name in missing)
        about = f"The label card of {product.name}, use {use.site_words}, leaves out {told}."
        keys = " and ".join(missing)
        cure = f"With the label in hand, type {keys}; not_on_label where it is silent."
        yield Ask(about, cure, bound)


def _ask_crops(
    use: Use, product: Product, held: str, crops: tuple[str, ...], bound: Given | None
) -> Ask:
    about = f"{product.name} {held}, and its card, use {use.site_words}, types no wait for:"
    return Ask(about, CURE_CROPS, bound, crops)


def _ask_name(use: Use, product: Product, line: CropDays) -> Ask:
    about = (
        f"The card of {product.name}, use {use.site_words}, types a wait for {line.crop.strip()}, "
        "which is no name of a kind or species here."
    )
    cure = (
        "Type means: on that line: the kinds or species it means, all_other_kinds where it is all "
        "that no other line names, or none."
    )
    return Ask(about, cure, line.wait_days, line=line)


def _covers(use: Use, wanted: Wanted) -> bool:
    covers = use.covers
    # all of a mixture: the one that is not covered has to wait
    if covers is None or not wanted.kinds <= set(covers.kinds):
        return False
    if "any" in covers.species:
        return True
    # a kind without species may be any of them, more than a list covers
    return bool(wanted.species) and set(wanted.species) <= set(covers.species)


def _holds_back(product: Product) -> str | None:
    """Return how a product may hold a crop back that its card does not name, None where not."""
    works = [works_of(active) for active in _actives(product)]
    for way, words in HOLDS_BACK.items():
        if any(way in ways for ways in works):
            return words
    # one active of no known way may hold back, whatever the others do
    return None if works and all(works) else "works in a way its card does not say"


def _actives(product: Product) -> tuple[ActiveStrength, ...]:
    return product.label.actives if product.label is not None else ()


def place_waits(
    products: tuple[Product, ...],
    places: tuple[PlantedGround, ...],
    all_residues: tuple[Residue, ...],
) -> tuple[PlaceWaits, ...]:
    """Return for every place what was and will be sprayed, and the first day for every kind."""
    bound = bound_of_a_sowing(products)
    left = grouped((residue.spraying.place_id, residue) for residue in all_residues)
    return tuple(_place_waits(place.id, left.get(place.id, ()), bound) for place in places)


def _place_waits(place_id: str, left: Iterable[Residue], bound: Given | None) -> PlaceWaits:
    here = list(left)
    # sprayings of no known day last: they may come after all others
    here.sort(
        key=lambda residue: (
            residue.spraying.last or datetime.date.max,
            residue.spraying.product_id,
        )
    )
    logged = [residue for residue in here if residue.spraying.logged]
    return PlaceWaits(
        place_id,
        tuple(residue.spraying for residue in here),
        tuple(earliest(kind, logged, bound) for kind in planting_kinds()),
        tuple(earliest(kind, here, bound) for kind in planting_kinds()),
    )


def earliest(kind: str, sprayed: Iterable[Residue], bound: Given | None) -> Earliest:
    """Return the first day a kind may be sown after these sprayings, as far as cards tell."""
    wanted = Wanted(frozenset({kind}))
    found: list[tuple[datetime.date, Spraying, Given]] = []
    asks: list[Ask] = []
    for residue in sprayed:
        wait = wait_of(residue, wanted, bound)
        asks += wait.asks
        if wait.days is not None and residue.spraying.last is None:
            step = residue.spraying.step_name
            asks.append(Ask(f"{step}: its open dates are not known.", "", wait.days))
        elif wait.days is not None and residue.spraying.last is not None:
            found.append((day_after(residue.spraying.last, wait.days), residue.spraying, wait.days))
    # a day beside an open question would be taken for the answer
    if asks:
        return Earliest(kind, None, None, None, tuple(dict.fromkeys(asks)))
    # the one that ends last, which need not be the one sprayed last
    day, by, asked = max(found, key=lambda candidate: candidate[0], default=(None, None, None))
    return Earliest(kind, day, by, asked, ())


def day_after(sprayed_on: datetime.date, wait: Given) -> datetime.date:
    """Return the first day on which so many whole days have passed, or the last there is."""
    last = (datetime.date.max - sprayed_on).days
    return sprayed_on + datetime.timedelta(days=min(math.ceil(wait.value), last))

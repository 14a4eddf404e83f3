"""What a finding on a record of the property files is about, whatever the record is of."""

from generator.inventory.dates import DateRange, ShootingHours
from generator.inventory.drill import Drill
from generator.inventory.equipment import Measure, Sprayer, Spreader
from generator.inventory.fields import Record
from generator.inventory.ground import SoilTest, WaterHole
from generator.inventory.land import LandThing
from generator.inventory.law import LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.machine import Machine
from generator.inventory.money import CostShare, Hire
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.people import Applicator, Contractor, Helper
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import Reader
from generator.inventory.sits import Sit
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.weather import Station, WindStation
from generator.inventory.woody import Guard, Plant
from generator.plan.model.finding import WHOLE_FOLDER, Subject, SubjectKind

KINDS_OF_RECORDS: tuple[tuple[tuple[type[Record], ...], SubjectKind], ...] = (
    ((PlantedGround,), "place"),
    ((SeedLot, Product, Adjuvant, Fertilizer, Lime, Plant, Guard), "item"),
    ((Sprayer,), "sprayer"),
    ((Spreader,), "spreader"),
    ((Drill,), "drill"),
    ((Measure,), "measure"),
    ((Machine,), "machine"),
    ((Hire,), "hire"),
    ((CostShare,), "cost_share"),
    ((WaterHole,), "water_hole"),
    ((SoilTest,), "soil_test"),
    ((Stand,), "stand"),
    ((Route,), "route"),
    ((LandThing,), "land"),
    ((Sit,), "sit"),
    ((LogEntry,), "entry"),
    ((Station, WindStation), "station"),
    ((DateRange,), "dates"),
    ((ShootingHours,), "shooting_hours"),
    ((LookedUp,), "looked_up"),
    ((Applicator, Helper), "person"),
    ((Contractor,), "contractor"),
    ((Permit,), "permit"),
    ((Contract,), "contract"),
    ((OneCall,), "one_call"),
    ((Reader,), "reader"),
)


def about_record(record: Record) -> Subject:
    """Return what a finding on a record is about; the folder, where it has no page of its own."""
    kind = next((kind for types, kind in KINDS_OF_RECORDS if isinstance(record, types)), None)
    # every kind listed above has an id, which records in general have not
    return Subject(kind, record.id) if kind is not None else WHOLE_FOLDER  # type: ignore[attr-defined]

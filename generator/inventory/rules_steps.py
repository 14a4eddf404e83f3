"""Rules on step plans of the owner's own, and on which plan goes with what."""

from collections.abc import Iterable, Iterator

from generator.inventory.problems import meant_or_listed, shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import SUBJECTS, Inventory
from generator.inventory.season import season_of
from generator.reference.steps import Step, StepPlan, step_plans

_ASKED_FOR = "work"


def _whole_or_based(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        whole = bool(own.steps) and (own.kind is None) != (own.subject is None)
        if own.based_on is None and not whole:
            what = f"plan {shown_value(own.id)} is neither whole nor based on another"
            yield Broken(own.where, what, "kind: or subject:, with steps:; or based_on:")
        elif own.based_on is not None and own.based_on not in step_plans():
            # only on a shipped one: plans of the owner's own could lead round in a circle
            what = f"based_on: {shown_value(own.based_on)} is no plan of the program"
            yield Broken(own.where_of("based_on"), what, meant_or_listed(own.based_on, _shipped()))
        elif own.based_on is not None and (own.kind or own.subject or own.yearly_from is not None):
            what = "a plan based on another is for what that one is for"
            where = own.where_of("kind", "subject", "yearly_from")
            yield Broken(where, what, "no kind:, subject: or yearly_from: beside based_on:")


def _skipped_steps(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        base = step_plans().get(own.based_on or "")
        known = [step.id for step in base.steps] if base is not None else []
        for skipped in own.skip:
            if skipped.step not in known:
                what = f"there is no step {shown_value(skipped.step)} to skip"
                accepted = meant_or_listed(skipped.step, known) or "skip: goes with based_on:"
                yield Broken(skipped.where_of("step"), what, accepted)


def _steps_once(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        seen: set[str] = set()
        for step in own.steps:
            if step.step in seen:
                what = f"step {shown_value(step.step)} stands twice"
                yield Broken(step.where_of("step"), what, "once each")
            seen.add(step.step)


def _bounds(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        for step in own.steps:
            for bound in (*step.opens, *step.closes):
                if (bound.date is None) == (bound.sign is None):
                    what = "an end of the open dates is a day or a sign"
                    yield Broken(bound.where_of("sign"), what, "date: or sign:, one of them")
                elif bound.date is not None and (bound.by or bound.offset_days):
                    what = "a day of the calendar is the same in every year"
                    yield Broken(
                        bound.where_of("by", "offset_days"),
                        what,
                        "by: and offset_days: with sign: alone",
                    )


def _answers(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        steps = {step.id: step for step in inventory.plans()[own.id].steps}
        mine = {typed_step.step: typed_step for typed_step in own.steps}
        for name, step in steps.items():
            typed = mine.get(name)
            for number, need in enumerate(step.needs):
                # nobody would ever be asked, and the step would wait for good
                if need.step not in steps or steps[need.step].asks is None:
                    what = f"step {shown_value(need.step)} asks nothing here"
                    # a step taken over is typed nowhere: told at the plan that changed its needs
                    where = typed.needs[number].where_of("step") if typed else own.where
                    yield Broken(where, what, _asking(steps) or "a step with asks:")
            for number, other in enumerate(step.excludes):
                if other not in steps:
                    what = f"there is no step {shown_value(other)} here"
                    where = typed.where_of("excludes", number=number) if typed else own.where
                    yield Broken(where, what, meant_or_listed(other, list(steps)))


def _shipped() -> list[str]:
    return list(step_plans())


def _asking(steps: dict[str, Step]) -> str:
    return ", ".join(name for name, step in steps.items() if step.asks is not None)


def _plan_for_what_it_is_for(inventory: Inventory) -> Iterator[Broken]:
    plans = inventory.plans()
    for place in inventory.places():
        for planting in place.plantings:
            chosen = plans[planting.steps]
            stands = planting.once is None
            if chosen.kind is None or (chosen.yearly_from is not None) != stands:
                what = f"steps: {chosen.id} is not for a planting from its sowing on"
                if stands:
                    what = f"steps: {chosen.id} does not come back every season"
                fitting = _ids(plans.values(), yearly=stands)
                yield Broken(planting.where_of("steps"), what, fitting)
            upkeep = plans[planting.upkeep] if planting.upkeep is not None else None
            if upkeep is not None and (upkeep.kind is None or upkeep.yearly_from is None):
                what = f"upkeep: {upkeep.id} does not come back every season"
                fitting = _ids(plans.values(), yearly=True)
                yield Broken(planting.where_of("upkeep"), what, fitting)


def _upkeep_for_what_it_is_for(inventory: Inventory) -> Iterator[Broken]:
    plans = inventory.plans()
    for thing in inventory.kept_up():
        subject, plan = SUBJECTS[type(thing)], plans.get(thing.upkeep or "")
        if plan is not None and plan.subject != subject:
            what = f"upkeep: {plan.id} is not for a {subject.replace('_', ' ')}"
            fitting = ", ".join(each.id for each in plans.values() if each.subject == subject)
            yield Broken(thing.where_of("upkeep"), what, fitting)


def _upkeep_steps(inventory: Inventory) -> Iterator[Broken]:
    plans = inventory.plans()
    steps = {
        thing.id: plans[thing.upkeep].steps if thing.upkeep is not None else ()
        for thing in inventory.kept_up()
    }
    for thing in inventory.kept_up():
        optional = [step.id for step in steps[thing.id] if step.only_with == _ASKED_FOR]
        for number, name in enumerate(thing.asked_for):
            if name not in optional:
                what = f"asked_for: {shown_value(name)} is no step that waits to be asked for"
                where = thing.where_of("asked_for", number=number)
                fitting = meant_or_listed(name, optional) or "upkeep: with such a step"
                yield Broken(where, what, fitting)
    for entry in inventory.entries:
        for done in entry.upkeep:
            known = [step.id for step in steps[done.at]]
            if done.step not in known:
                what = f"{shown_value(done.at)} has no upkeep step {shown_value(done.step)}"
                fitting = meant_or_listed(done.step, known) or "a thing with upkeep:"
                yield Broken(done.where_of("step"), what, fitting)


def _nobody_waits(inventory: Inventory) -> Iterator[Broken]:
    for own in inventory.step_plans:
        if inventory.plans()[own.id].subject is None:
            continue
        for step in own.steps:
            if step.needs or step.excludes or step.asks is not None:
                what = "a step of a stand, a walk or a water hole stands by itself"
                yield Broken(
                    step.where_of("asks", "needs", "excludes"),
                    what,
                    "no asks:, needs: or excludes:",
                )


def _seasons_named(inventory: Inventory) -> Iterator[Broken]:
    yearly = {
        (planting.id, step.id)
        for place in inventory.places()
        for planting in place.plantings
        if planting.yearly is not None
        for step in inventory.plans()[planting.yearly].steps
    }
    for entry in inventory.entries:
        job, day = entry.job, season_of(entry.done_on)
        named = [(done.where_of("season"), done.season) for done in entry.upkeep]
        if job is not None and job.season is not None and (job.planting, job.step) not in yearly:
            what = f"season: stands beside {shown_value(job.step)}, which comes once"
            yield Broken(job.where_of("season"), what, "season: for a step of an upkeep")
        elif job is not None:
            named.append((job.where_of("season"), job.season))
        for where, season in named:
            # one off is work done early, before its fall, or late, after the next has begun
            if season is not None and abs(season - day) > 1:
                what = f"{entry.done_on} is of season {day}, not near season {season}"
                yield Broken(where, what, f"season: {day - 1} to {day + 1}, or left out")


def _ids(plans: Iterable[StepPlan], *, yearly: bool) -> str:
    return ", ".join(
        plan.id
        for plan in plans
        if plan.kind is not None and (plan.yearly_from is not None) == yearly
    )


STEP_RULES = (
    Rule("F370", "A step plan is whole, or based on one that is.", _whole_or_based),
    Rule("F371", "What is skipped is there to be skipped.", _skipped_steps, alone=True),
    Rule("F372", "A plan has each step once.", _steps_once, alone=True),
    Rule("F373", "An end of the open dates is a day or a sign.", _bounds, alone=True),
    Rule("F374", "A step waits for answers that somebody is asked for.", _answers),
    Rule("F375", "A plan is used for what it is for.", _plan_for_what_it_is_for),
    Rule("F376", "Upkeep is by a plan for such a thing.", _upkeep_for_what_it_is_for),
    Rule("F377", "A step of an upkeep is one of its plan.", _upkeep_steps),
    Rule("F378", "Steps of an upkeep wait for no other.", _nobody_waits),
    Rule("F379", "Work counts for the season of its day, or the one beside.", _seasons_named),
)

"""The words of the setup walk, by the keys of `resources/walk.toml`: steps, results, events, what is looked at.

Limits in "good enough": common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.records.rows import Motion
from core.words import Words, tr


@dataclass(frozen=True, slots=True)
class StepWords:
    """A step in words: its title, what is done, why it stands where it stands, and when to stop."""

    title: Words
    do: Words
    why: Words
    enough: Words


def step_title(key: str) -> Words:
    """Return the title of a step."""
    return STEPS[key].title


def result_words(key: str) -> Words:
    """Return the name of a result."""
    return _RESULTS[key]


def event_words(kind: str) -> Words:
    """Return the name of a kind of event; a kind of another version of this program keeps its key."""
    return _EVENTS.get(kind) or tr("{kind}", kind=kind)


def item_words(item: str) -> Words:
    """Return what is looked at by hand."""
    return _ITEMS[item]


def kind_words(step: str, motion: Motion) -> Words | None:
    """Return what this step means on a machine of another kind; None where it is the same as on any."""
    return _OTHER_KINDS.get((step, motion))


STEPS = {
    "record": StepWords(
        tr("Machine record"),
        tr("Count and write down the parts of each drive, with the motors and their microsteps."),
        tr("Steps per millimetre follow from the parts; a wrong count makes every later number wrong."),
        tr("Nothing on a moving axis is only assumed."),
    ),
    "mechanics": StepWords(
        tr("Mechanical health"),
        tr("Look at screws, belts, slides, fans and wiring, with the machine switched off and unplugged."),
        tr("A loose part moves differently each time; no setting cures that."),
        tr("No click, no rock; both belts within 5 % in tone."),
    ),
    "steps": StepWords(
        tr("Steps per millimetre, calculated"),
        tr("Take the calculated values over, then command 100 mm and read the travel on a rule."),
        tr("The rule finds wrong factors only; it is too coarse to tune anything by."),
        tr("Commanded 100 mm reads 100 ± 0.5 mm."),
    ),
    "gauges": StepWords(
        tr("Instruments"),
        tr("Check caliper, indicator and balance against something known, and your own hand by repeats."),
        tr("Whatever is read with a bad instrument is in doubt until it is read again."),
        tr("Zero returns within ± 0.01 mm, the known piece within the limit of error."),
    ),
    "reversal": StepWords(
        tr("Reversal error"),
        tr("Approach the same place from both sides under an indicator, on X and on Y."),
        tr("Lost motion looks like an error of size; found first, it is not booked to the filament."),
        tr("Up to 0.02 mm is good, up to 0.05 mm will do; above that mend it, do not compensate."),
    ),
    "square": StepWords(
        tr("Squareness and bed plane"),
        tr("Measure the angle between X and Y, then the bed while it is as hot as in use."),
        tr("A leaning axis changes diagonals, a tilted bed the first layer; both spoil the size piece."),
        tr("Tilt below a quarter of the first layer across the bed, the rest below half of it."),
    ),
    "feed": StepWords(
        tr("Extruder feed"),
        tr("Feed a marked length slowly and unloaded; repeat."),
        tr("The flow factor is only worth something when the filament commanded is the filament fed."),
        tr("Twice running 100 mm come within ± 0.5 mm."),
    ),
    "spool": StepWords(
        tr("Filament lot"),
        tr(
            "Dry it, measure its diameter in pairs along some metres, and weigh cut metres: the flow trials need the "
            "mass per length."
        ),
        tr("Diameter enters by its square; another spool is another filament."),
        tr("Equivalent diameter known to ± 0.5 %, ovality 0.05 mm or less."),
    ),
    "temp": StepWords(
        tr("Temperature ladder"),
        tr("Print the steps of a coarse ladder and find the plateau."),
        tr("Flow and sizes are measured at one temperature; it is chosen before them."),
        tr("A plateau of 10 K or more; take its middle."),
    ),
    "ceiling": StepWords(
        tr("Flow ceiling"),
        tr("Raise the volumetric rate until delivery falls behind, and stay with the machine."),
        tr("Above the ceiling walls get thin, and nobody knows why."),
        tr("The wanted speed is covered by 80 % of the ceiling."),
    ),
    "flow": StepWords(
        tr("Flow factor"),
        tr("Weigh a box, measure a wall, score the top pads."),
        tr("A bead that is too wide makes all parts fat; a size correction would hide it."),
        tr("The estimates agree within their U; a change below 1.5 % is left alone."),
    ),
    "lag": StepWords(
        tr("Pressure lag, then retraction"),
        tr("Find the lag, then the least retraction that reaches the highest score."),
        tr("Corners bulge with the wrong lag, and the size piece is read at corners too."),
        tr("The highest score with the least retraction."),
    ),
    "speed": StepWords(
        tr("Speed and acceleration"),
        tr("Score pieces printed at several speeds, and measure the ringing."),
        tr("Sizes are measured at the speed that is going to be used."),
        tr("The knee: beyond it less than 5 % of time is saved for one step of score."),
    ),
    "size": StepWords(
        tr("Size piece"),
        tr("Print combs for X and Y from one lot on one day, and read them."),
        tr("Only now is what remains an error of scale, of wall outset or of shrinkage."),
        tr("Scale error known to 0.03 %, wall outset to 0.01 mm (standard uncertainties)."),
    ),
    "decision": StepWords(
        tr("Decide what to change"),
        tr(
            "Read the verdict of the size piece. Put one change in force in the Logbook, under Put in force, or write "
            "down here that nothing is changed."
        ),
        tr("Every error has one owner; booked to another one, the next part gets worse."),
        tr("Each corrected term is beyond its U and above a tenth of the tolerance."),
    ),
    "proof": StepWords(
        tr("Proof part"),
        tr(
            "Lock the prediction, print a part that was not used for tuning and read it on Size error; then hold both "
            "together on Prediction, and keep that."
        ),
        tr("A machine that was tuned on a piece proves nothing on that piece."),
        tr("All readings within their predicted intervals, no class of features to one side."),
    ),
    "promise": StepWords(
        tr("Capability and promise"),
        tr("From 10 parts or more, work out the tolerance that can be promised."),
        tr("A spread needs parts; fewer show one but promise nothing."),
        tr("The promise covers deviation and spread at the stated confidence."),
    ),
    "watch": StepWords(
        tr("Watching"),
        tr("Print one check piece a week and look at the charts."),
        tr("Belts and nozzles wear slowly; a chart sees it before a customer does."),
        tr("In control: wait longer. Out of control: check twice as often."),
    ),
    "yearly": StepWords(
        tr("Yearly upkeep"),
        tr("Go through the list with the machine switched off and unplugged, then prove it again."),
        tr("What nobody looks at for a year is what fails."),
        tr("A new proof part passes."),
    ),
}

_OTHER_KINDS = {
    ("mechanics", Motion.CROSSED_BELT): tr(
        "Crossed belts: both belts move both axes; tension them alike. Unequal belts lean the axes, they do not change "
        "X against Y."
    ),
    ("steps", Motion.CROSSED_BELT): tr("Crossed belts: X and Y share one value, for both motors move both axes."),
    ("steps", Motion.DELTA): tr("Three carriages: all three have one value; rod length and radius set the size."),
    ("square", Motion.DELTA): tr("Three carriages: there is no pair of axes to square; the bed plane is what is left."),
}  # fmt: skip

_RESULTS = {
    "record": tr("parts list"),
    "mechanics": tr("mechanics"),
    "steps": tr("steps per millimetre"),
    "gauge": tr("gauges"),
    "reversal": tr("reversal error"),
    "square": tr("squareness"),
    "bed": tr("bed plane"),
    "feed": tr("extruder feed"),
    "spool": tr("diameter of the lot"),
    "temp": tr("temperature"),
    "ceiling": tr("flow ceiling"),
    "flow": tr("flow factor"),
    "lag": tr("lag and retraction"),
    "speed": tr("speed"),
    "outset": tr("wall outset"),
    "scale": tr("scale of the machine"),
    "shrink": tr("shrinkage"),
    "squash": tr("first-layer squash"),
    "decision": tr("decision"),
    "proof": tr("proof"),
    "promise": tr("promise"),
    "watch": tr("watching"),
    "yearly": tr("yearly upkeep"),
}

_EVENTS = {
    "belt_tension": tr("Belt tensioned again"),
    "belt_changed": tr("New belt or pulley"),
    "screw_changed": tr("New screw, rack or gear"),
    "nozzle_same": tr("New nozzle, same bore"),
    "nozzle_other": tr("New nozzle, other bore"),
    "feed_gear": tr("New feed gear or wheel"),
    "heater": tr("New heater or heat sensor"),
    "new_spool": tr("New spool, same product and colour"),
    "new_lot": tr("New colour or lot"),
    "new_polymer": tr("New polymer"),
    "controller": tr("Controller program or settings loaded anew"),
    "moved": tr("Machine moved"),
    "room": tr("Room 8 K warmer or colder, enclosure, draught"),
    "crash": tr("Crash, shifted layer or lost steps"),
    "bed_surface": tr("Other bed sheet or surface"),
    "path_program": tr("Other slicing program or bead model"),
    "gauge_bad": tr("Instrument found bad"),
    "checked": tr("Checked by hand"),
    "skipped": tr("Step skipped"),
    "withdrawn": tr("Trial withdrawn"),
    "note": tr("Note"),
}

_ITEMS = {
    "frame_screws": tr("Frame screws are tight"),
    "grub_screws": tr("Each pulley's grub screw sits on the flat of its shaft"),
    "belt_tone": tr("Belts are tight, both with the same tone"),
    "slides": tr("Slides and wheels run without play"),
    "lead_screws": tr("Lead screws are clean and greased"),
    "fans": tr("Fans run and are clean"),
    "wiring": tr("Wiring and terminals show no chafing and no browning"),
    "directions": tr("Each axis moves the way it is told"),
    "travel_ends": tr("The ends of travel are where the record says"),
    "hundred_mm": tr("Commanded 100 mm reads 100 ± 0.5 mm on a rule"),
    "belts": tr("Belts: no frayed edge, tone as on record"),
    "grease": tr("Slides and screws cleaned and greased"),
    "nozzle": tr("Nozzle measured or changed"),
    "heat_probes": tr("Heat sensors agree with a thermometer"),
    "gauges_again": tr("Instruments checked"),
    "proof_again": tr("Proof part printed and read"),
    "backup": tr("A copy of the database lies elsewhere"),
}

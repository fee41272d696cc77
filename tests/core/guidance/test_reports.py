"""Reports: what they say, what they do not claim, and the same numbers as CSV."""

import csv
import io
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.guidance.predicted import locked_trial, predict_from, verification_columns, verify_locked
from core.guidance.promised import judge_promise
from core.guidance.promisereport import conformity_words, machine_label, promise_report
from core.guidance.reportblocks import Heading, Picture, Report, Says, Signature, Table, csv_text
from core.guidance.reports import Of, machine_card, trial_report
from core.measuring.tolerance import Conformity
from core.part_size.prediction import Changes
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial, TrialState
from core.words import as_plain, tr
from tests.core.guidance.shops import BELT
from tests.core.guidance.test_predicted import NOON, size_trial
from tests.core.guidance.test_promised import pieces
from tests.core.part_size.printouts import Faults

AT = datetime(2026, 5, 4, 9, 30, tzinfo=UTC)
CALIPER = Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008, sd_hand_mm=0.01)
CHECK = Trial("instrument", id=8, kept_at=AT - timedelta(days=12))
ASH = Machine("Ash", drives={"x": BELT}, limits={"nozzle_mm": 0.4}, id=3)
SLATE = Lot("Slate", "PETG", maker="invented", id=5)
OF = Of(ASH, SLATE, CALIPER, CHECK, AT, "0.1")


def texts(report):
    found = []
    for block in report.blocks:
        if isinstance(block, Table):
            found += [cell for row in (block.headings, *block.rows) for cell in row]
        elif not isinstance(block, Picture):
            found.append(block.text)
    return "\n".join(map(str, found))


def table(report, name):
    return next(block for block in report.blocks if isinstance(block, Table) and block.name == name)


def test_a_report_of_the_demo_shop_says_so_on_every_page_and_in_the_tables():
    trial = size_trial(7, Faults(), np.random.default_rng(1))
    invented = replace(OF, demo=True)
    for report, own in (
        (trial_report(trial, invented), trial_report(trial, OF)),
        (machine_card(invented, (), (), {}), machine_card(OF, (), (), {})),
    ):
        assert report.blocks[0] == own.blocks[0]
        assert "Demo shop, invented data" in csv_text(report.blocks)
        assert str(report.foot) == f"Demo shop, invented data · {own.foot}"
        assert "Demo shop" not in csv_text(own.blocks) + str(own.foot)
    assert "Demo shop, invented data" in map(str, machine_label(invented, None, None, AT).lines)
    assert "Demo shop, invented data" not in map(str, machine_label(OF, None, None, AT).lines)


def test_a_trial_is_reported_as_it_was_kept():
    said = {
        "setting": "contour_offset",
        "action": "Change it.",
        "because": "It stands proud.",
        "do_not_touch": "Steps.",
    }
    trial = replace(
        size_trial(7, Faults(), np.random.default_rng(1)),
        verdict=(said,),
        estimates=(Estimate("wall_outset", 0.04, 0.002, 8, "mm"), Estimate("spread_outside", 0.02, 0.001, 8, "mm")),
    )
    report = trial_report(trial, OF)
    assert report.blocks[0] == Heading(report.blocks[0].text) and "Trial № 7" in report.blocks[0].text
    told = texts(report)
    assert "Contour offset: Change it. It stands proud." in told and "Do not touch: Steps." in told
    assert "+0.0400 ± 0.0046 mm" in told and "0.0200 ± 0.0023 mm" in told and "k 2.31" in told
    assert "Slate (PETG, invented)" in told and "Caliper 2, checked 2026-04-22 (check № 8)" in told
    assert len(table(report, "readings").rows) == len(trial.readings["axis"])
    assert "0.1 · made 2026-05-04 09:30 UTC · readings " in report.foot
    other = trial_report(replace(trial, readings=trial.readings | {"axis": ["y"] * 11}), OF)
    assert other.foot != report.foot  # one reading changed: another hash
    bare = trial_report(Trial("walk", id=1, readings={"lag_s": [1.0, None]}), replace(OF, lot=Lot("Bare", "")))
    assert "lag s" in texts(bare) and "Verdict" not in texts(bare) and "Bare" in texts(bare)
    assert "Readings as typed" not in texts(trial_report(Trial("walk", id=1), OF))
    assert "Results" not in texts(trial_report(Trial("walk", id=1), OF))


def test_what_held_the_note_and_the_trials_it_rests_on_are_reported():
    held = {"tolerance": "m", "part_temperature_c": 23.5, "nozzle_temperature_c": 215.0, "bed_temperature_c": 60}
    promise = Trial("promise", id=9, conditions=held, used=(3, 4), note="Outside lengths: ±0.20 mm.",
                    estimates=(Estimate("promise_outside", 0.2, 0.01, 11, "mm"),))  # fmt: skip
    report = trial_report(promise, OF, "Promise")
    assert tuple(map(str, table(report, "conditions").headings)) == ("Kept with the trial", "What")
    assert [tuple(map(str, row)) for row in table(report, "conditions").rows] == [
        ("tolerance asked for", "ISO 2768-1 m, medium"),
        ("part temperature", "23.5 °C"),
        ("in force when begun", "nozzle 215 °C, bed 60 °C"),
    ]
    assert "Outside lengths: ±0.20 mm." in texts(report) and "It rests on trials № 3, 4." in texts(report)
    assert trial_report(replace(promise, used=(3,)), OF).foot != report.foot  # other pieces: another hash
    own = trial_report(replace(promise, conditions={"tolerance": 0.15}), OF)
    assert [tuple(map(str, row)) for row in table(own, "conditions").rows] == [("tolerance asked for", "± 0.15 mm")]
    bare = trial_report(Trial("promise", id=9, conditions={"tolerance": "of a later version"}), OF)
    assert "tolerance asked for" not in texts(bare) and "It rests on" not in texts(bare)


def test_the_settings_of_a_trial_are_reported_by_their_labels_and_each_once():
    stored = {
        "bead_model": "obround", "width_mm": 0.45, "height_mm": 0.2, "nozzle_mm": 0.4, "temperature_c": 215.0,
        "rate_mm3_s": 4.0, "in_force_ratio": 1.0, "hot_end_limit_c": 260.0, "part_temperature_c": 23.5,
    }  # fmt: skip
    labels = {key: (f"label of {key}", f"{value} X") for key, value in stored.items()}

    def rows(conditions):
        told = table(trial_report(Trial("wall", id=2, conditions=conditions), OF, "", labels), "conditions").rows
        return [str(row[0]) for row in told]

    assert rows(stored) == ["label of in_force_ratio", "label of hot_end_limit_c", "part temperature"]
    whole = [f"label of {key}" for key in stored if key != "part_temperature_c"]
    assert rows({**stored, "nozzle_mm": None}) == [*whole, "part temperature"]  # no sentence tells the others then
    blocks = trial_report(Trial("wall", id=2, conditions=stored), OF, "", labels).blocks
    names = [getattr(block, "name", "") for block in blocks]
    assert names.index("about") < names.index("conditions") < names.index("trial")


def test_an_instrument_is_reported_only_where_it_was_read():
    def names(subject, conditions, group, **readings):
        trial = Trial(subject, id=1, conditions=conditions, readings={
            "feature": ["A", "B"], "axis": [group] * 2, "raw": ["12", "9"], "measured_mm": [12.0, 9.0],
            "step": [1.0, 2.0], **readings,
        })  # fmt: skip
        return [str(row[0]) for row in table(trial_report(trial, OF), "about").rows]

    high = {"ladder": "temperature", "read": "high", "value_unit": "N"}
    assert "instrument" not in names("ladder", high, "temperature/high")
    assert "instrument" in names("ladder", high | {"value_unit": "mm"}, "temperature/high")
    assert "instrument" in names("ladder", {}, "lag/widths")
    assert "instrument" not in names("ladder", {}, "lag/widths", raw=["", ""])
    assert "instrument" not in names("speed", {}, "speed", judge=["1", "1"])
    assert "instrument" not in names("top", {}, "")
    assert "instrument" in names("sizeerror", {}, "x")


def test_the_checks_that_were_not_met_are_reported_as_cautions():
    mind = ["Read the zero again.", as_plain(tr("Row {row} is doubtful.", row=3))]
    report = trial_report(Trial("wall", id=2, conditions={"mind": mind}), OF)
    cautions = [str(block.text) for block in report.blocks if isinstance(block, Says) and block.mind]
    assert cautions == ["Read the zero again.", "Row 3 is doubtful."]


def test_a_withdrawn_trial_says_so_and_a_name_of_another_version_stays():
    gone = Trial("promise", id=9, state=TrialState.WITHDRAWN, withdrawn_because="wet spool",
                 estimates=(Estimate("promise_of_later", 0.2, 0.01, 11, "mm"),))  # fmt: skip
    says = next(block for block in trial_report(gone, OF).blocks if isinstance(block, Says))
    assert says.mind and str(says.text) == "Withdrawn, out of use: wet spool"
    assert "promise_of_later" in texts(trial_report(gone, OF))


def test_a_flow_trial_says_what_it_holds_for():
    stored = {"width_mm": 0.45, "height_mm": 0.2, "bead_model": "obround", "nozzle_mm": 0.4, "temperature_c": 215.0,
              "rate_mm3_s": 5.0, "in_force_ratio": 1.0, "hot_end_limit_c": 260.0}  # fmt: skip
    told = texts(trial_report(Trial("wall", id=2, conditions=stored), OF))
    assert "nozzle 0.4 mm, 215 °C ± 5 K, up to 5 mm³/s" in told


@pytest.mark.parametrize(
    ("instrument", "check", "words"),
    [
        (CALIPER, None, "never checked here: no traceability is claimed"),
        (CALIPER, Trial("instrument", id=8), "no traceability is claimed"),
        (None, None, "none on record: no traceability is claimed"),
    ],
)
def test_no_traceability_is_claimed_that_is_not_there(instrument, check, words):
    told = texts(trial_report(Trial("sizeerror", id=1), replace(OF, instrument=instrument, check=check, lot=None)))
    assert words in told and "certified" not in told


def test_a_machines_card_has_drives_results_with_days_and_what_is_in_force():
    kept = Trial("reversal", 3, 5, id=4, kept_at=AT)
    found = (kept, Estimate("reversal_x", 0.02, 0.004, 9, "mm"))
    settings = [
        SettingInForce(3, 5, "shrink_allowance_x", 1.0, 1.0024, "1", AT, verified_by=9),
        SettingInForce(3, None, "extruder_steps", 90.0, 93.1, "steps/mm"),
    ]
    told = texts(machine_card(OF, [found, (replace(kept, kept_at=None), found[1])], settings, {5: SLATE}))
    assert "200 × 16 ÷ (2 mm × 20 teeth) = 80.0000 steps/mm" in told and "reversal error X" in told
    assert "2026-05-04" in told and "№ 4" in told and "Slate" in told
    assert "shrink allowance X\n1.0024\nSlate\n2026-05-04\nverified" in told
    assert "93.1 steps/mm" in told and "not verified" in told and "Void after a crash" in told
    turning = Machine("Teasel", drives={"y": {"kind": "rotary", "gears": [[90, 10]]}})
    assert "200 × 16 × 90/10 ÷ 360° = 80.0000 steps/°" in texts(machine_card(replace(OF, machine=turning), [], [], {}))
    empty = texts(machine_card(replace(OF, machine=Machine("Bare")), [], [], {}))
    assert "Nothing was measured on this machine yet." in empty


def verification():
    rng = np.random.default_rng(1)
    source = size_trial(1, Faults(), rng)
    locked = replace(locked_trial(source, predict_from(source, CALIPER, Changes()), Changes()), id=2, kept_at=NOON)
    read = size_trial(3, Faults(), rng, begun=NOON + timedelta(hours=1))
    return Trial("verification", readings=verification_columns(verify_locked(locked, read, CALIPER)))


def test_a_promise_to_a_customer_names_rule_proof_and_what_it_is_not():
    report = promise_report(OF, judge_promise(pieces(12), CALIPER), pieces(1)[0], verification())
    told = texts(report)
    summary = report.blocks[1].text
    assert summary.count(".") >= 3 and "Of 100 parts at least 95 keep to outside lengths ±0." in summary
    assert "Decision rule" in told and "JCGM 106" in told and "accepted" in told
    assert "Predicted beforehand, then measured" in told and "E_n" in told and "Not claimed" in told
    assert any(isinstance(block, Signature) for block in report.blocks) and Picture("promise") in report.blocks
    assert "certified" not in told and "trials № 1, 2, 3" in told
    (row, *_) = table(report, "promise").rows
    assert row[1] == "12" and " ± " in row[4] and row[6].startswith("±") and float(row[7]) > 1


def test_what_cannot_be_promised_is_said_and_nothing_is_decided_without_an_uncertainty():
    bare = replace(OF, instrument=None, check=None, lot=None)
    told = texts(promise_report(bare, judge_promise(pieces(1), None, 0.15), pieces(1)[0], None))
    assert "Nothing can be promised yet" in told and "± 0.15 mm" in told and "not proved" in told and "± ?" in told
    few = texts(promise_report(replace(OF, lot=None), judge_promise(pieces(4), CALIPER), None, None))
    assert "none" in few and "First article" not in few
    twelve = texts(promise_report(replace(OF, lot=None), judge_promise(pieces(12), CALIPER), None, None))
    assert "Parts of ? printed on Ash" in twelve


def test_decisions_have_words():
    assert [conformity_words(c) for c in Conformity] == ["accepted", "refused", "not proved"]
    wrong = pieces(1, bias=1.0)[0]
    assert "refused" in texts(promise_report(OF, judge_promise(pieces(12), CALIPER), wrong, None))


def test_a_trial_of_an_instrument_has_no_machine_and_a_mark_is_a_word():
    trial = Trial("instrument", id=4, readings={"nominal_mm": [10.0, 20.5], "kind": ["tooth", "other"],
                                                "excluded": [False, True], "reason": ["", None]})  # fmt: skip
    report = trial_report(trial, replace(OF, machine=None, lot=None), "Instruments")
    assert report.blocks[0] == Heading("Trial № 4: Instruments")
    assert [row[0] for row in table(report, "about").rows] == ["instrument"]
    rows = [tuple(map(str, row)) for row in table(report, "readings").rows]
    assert rows == [("10", "comb tooth", ""), ("20.5", "other", "yes")]


def test_a_label_without_a_promise_claims_none():
    lines = machine_label(OF, None, Trial("sizeerror", id=44, kept_at=AT), AT).lines
    assert "no tolerance promised" in lines and "measured 2026-05-04" in lines
    assert not any("shown" in line for line in lines)


def test_a_label_has_name_promise_material_days_and_the_code_of_its_record():
    proof = Trial("promise", id=44, kept_at=AT)
    label = machine_label(OF, judge_promise(pieces(12), CALIPER), proof, AT + timedelta(days=90))
    assert label.lines[:2] == ("Ash", "nozzle 0.4\u00a0mm") and "outside lengths ±0." in label.lines[2]
    assert "shown for PETG" in label.lines and "shown 2026-05-04, due 2026-08-02" in label.lines
    assert label.code == "slipgauge machine 3 trial 44" and "Void after a crash" in label.lines[-1]
    empty = machine_label(replace(OF, machine=Machine("Bare", id=1), lot=None), None, None, AT)
    assert empty.lines[:2] == ("Bare", "no tolerance promised") and empty.code == "slipgauge machine 1"
    unknown = machine_label(replace(OF, lot=None), judge_promise(pieces(12), CALIPER), None, AT)
    assert "shown for ?" in unknown.lines
    nameless = machine_label(replace(OF, lot=Lot("Spool", "")), judge_promise(pieces(12), CALIPER), None, AT)
    assert "shown for Spool" in nameless.lines


def test_the_tables_are_the_same_as_csv():
    blocks = (Heading("Title"), Table("a", ("x", "y"), (("1, 2", "3"),)), Says("no"), Table("b", ("z",), (("4",),)))
    text = csv_text(Report("Title", blocks, "").blocks)
    assert text == 'table,x,y\na,"1, 2",3\n\ntable,z\nb,4\n'
    report = promise_report(OF, judge_promise(pieces(12), CALIPER), pieces(1)[0], None)
    rows = [row for row in csv.reader(io.StringIO(csv_text(report.blocks))) if row]
    assert ["promise", *table(report, "promise").rows[0]] in rows

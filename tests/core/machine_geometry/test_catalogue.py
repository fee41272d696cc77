"""The shipped tables of parts against the standards they name."""

import pytest

from core.machine_geometry import catalogue
from core.machine_geometry.slips import Slip
from tests.published import table

TABLES = ("belts", "screws", "racks", "teeth", "motors", "gears", "tolerances", "slips")


@pytest.mark.parametrize("name", TABLES)
def test_each_row_names_its_source(name):
    rows = catalogue.table(f"drive_{name}")
    assert rows
    assert all(row["source"] for row in rows)


@pytest.mark.parametrize("row", table("drive_belt_pitches"), ids=lambda row: row["type"])
def test_belt_pitches_are_those_of_the_standards(row):
    ours = {known["name"]: known for known in catalogue.table("drive_belts")}[row["type"]]
    assert float(ours["pitch_mm"]) == float(row["pitch_mm"])
    assert ours["source"].startswith(row["standard"])
    if row["pitch_in"]:
        assert float(ours["pitch_mm"]) == pytest.approx(float(row["pitch_in"]) * 25.4, abs=1e-12)


def test_every_belt_that_claims_a_standard_is_checked():
    claimed = {row["name"] for row in catalogue.table("drive_belts") if "ISO" in row["source"]}
    assert claimed == {row["type"] for row in table("drive_belt_pitches")}


def test_metric_threads_are_those_of_iso_261():
    ours = {
        (row["name"], float(row["pitch_mm"])) for row in catalogue.table("drive_screws") if "ISO 261" in row["source"]
    }
    assert ours == {(f"M{row['d']}", float(row["P"])) for row in table("drive_iso261_coarse")}


def test_trapezoidal_threads_are_in_iso_2904():
    ours = {
        (row["name"], float(row["pitch_mm"])) for row in catalogue.table("drive_screws") if row["source"] == "ISO 2904"
    }
    assert ours < {(row["size"], float(row["P"])) for row in table("drive_iso2904")}


def test_the_common_8_mm_screws_claim_no_standard_as_tr8x2_is_in_none():
    assert not [row for row in table("drive_iso2904") if (row["d"], row["P"]) == ("8.0", "2.0")]
    trade = [row for row in catalogue.table("drive_screws") if row["name"].startswith("8 mm")]
    assert [float(row["pitch_mm"]) * int(row["starts"]) for row in trade] == [2, 4, 8]
    assert all("no source" in row["source"] for row in trade)


def test_step_angle_and_full_steps_make_a_whole_turn():
    for row in catalogue.table("drive_motors"):
        assert float(row["step_angle_deg"]) * int(row["full_steps"]) == pytest.approx(360, abs=1e-12)


def test_every_slip_has_a_weight_and_no_weight_is_without_slip():
    assert set(catalogue.lookup("drive_slips", "slip", "weight")) == {str(slip) for slip in Slip}


def test_numbers_are_listed_once_and_empty_cells_are_left_out():
    assert catalogue.numbers("drive_racks", "pitch_mm") == (2.5, 5, 10)
    assert catalogue.numbers("drive_belts", "pitch_mm").count(5.0) == 1
    assert catalogue.counts("drive_motors", "full_steps")[:2] == (200, 400)
    assert catalogue.common("drive_motors", "full_steps") == {200, 400}

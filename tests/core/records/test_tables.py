import sqlite3

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext

from core.errors import StoreError
from core.quantity import Estimate
from core.records.columns import value_from_json
from core.records.engine import Database
from core.records.place import file_place
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial
from core.records.store import open_store
from core.records.tables import Base


def test_the_tables_are_those_that_the_migrations_make(path):
    database = Database(file_place(path))
    with database.transaction() as session:
        context = MigrationContext.configure(session.connection(), opts={"compare_type": True})
        differences = compare_metadata(context, Base.metadata)
    database.close()
    assert differences == []


def test_no_second_open_trial_gets_past_the_database(path):
    store = open_store(path)
    store.save_draft(Trial("sizeerror"))
    store.close()
    other = sqlite3.connect(path)
    columns = "subject, state, open_as, readings, conditions, verdict, method, note, started_at, withdrawn_because"
    with pytest.raises(sqlite3.IntegrityError):
        other.execute(f"INSERT INTO trial ({columns}) SELECT {columns} FROM trial")
    other.close()


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE trial SET readings = '{'",
        "UPDATE trial SET readings = '[]'",
        "UPDATE trial SET readings = x'ff'",
        "UPDATE trial SET readings = CAST(x'ff' AS TEXT)",
        """UPDATE trial SET conditions = '{"$float": "much"}'""",
        """UPDATE trial SET conditions = '{"$float": []}'""",
        "UPDATE trial SET verdict = '{}'",
        "UPDATE trial SET verdict = '[1]'",
        "UPDATE trial SET state = 'keqt'",
        "UPDATE trial SET state = 7",
        "UPDATE trial SET started_at = 'yesterday'",
        "UPDATE trial SET started_at = 5",
        "UPDATE trial SET note = x'00'",
        "UPDATE result SET value = 'much'",
        "UPDATE result SET name = x'00'",
        "UPDATE machine SET motion = 'hover'",
        "UPDATE machine SET drives = 'null'",
        "UPDATE instrument SET sd_hand_mm = 'a'",
        "UPDATE lot SET maker = x'00'",
        "UPDATE lot SET nominal_diameter_mm = 'thin'",
        "UPDATE setting SET new = 'much'",
        "UPDATE setting SET old = 'little'",
        "UPDATE setting SET since = 'yesterday'",
    ],
)
def test_a_value_that_cannot_be_read_is_damage(path, change):
    store = open_store(path)
    store.add_machine(Machine("A"))
    store.add_lot(Lot("L", "PLA", nominal_diameter_mm=1.75))
    store.add_instrument(Instrument("C", sd_hand_mm=0.01))
    estimate = Estimate("scale_x", 1.0, 1.0, 1.0, "1")
    kept = store.keep(Trial("sizeerror", 1, estimates=(estimate,)), [SettingInForce(1, None, "scale_x", 0.9, 1.0, "1")])
    with sqlite3.connect(path) as other:
        other.execute(change)
    other.close()
    with pytest.raises(StoreError, match="shop.sqlite is damaged and was left as it is"):
        (store.trial(kept.id), store.machines(), store.lots(), store.instruments(), store.settings(1))
    store.close()


@pytest.mark.parametrize("text", ['{"a": 1, "a": 2}', "[" * 100_000, '{"$float": {}}'])
def test_a_stored_group_that_cannot_be_read_back_whole_is_refused(text):
    with pytest.raises(ValueError):
        value_from_json(text)

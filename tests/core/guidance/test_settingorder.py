"""The order in which settings came into force, and what of them was undone."""

from core.guidance.settingorder import in_order, undone_ids
from core.records.rows import SettingInForce


def setting(number, serial=None, undoes=None):
    return SettingInForce(1, 1, "flow_factor", 1.0, 0.97, "1", id=number, serial=serial, undoes=undoes)


def test_settings_go_by_their_serial_number_and_those_of_one_trial_by_their_own():
    given = [setting(5, 9), setting(4, 9), setting(7, 3), setting(8)]
    assert [one.id for one in in_order(given)] == [8, 7, 4, 5]


def test_what_was_undone_stands_again_when_its_undoing_is_undone():
    changed, undone, redone = setting(1, 1), setting(2, 2, undoes=1), setting(3, 3, undoes=2)
    assert undone_ids([changed]) == set()
    assert undone_ids([undone, changed]) == {1}
    assert undone_ids([redone, changed, undone]) == {2}
    assert undone_ids([setting(4, 4, undoes=3), redone, changed, undone]) == {1, 3}

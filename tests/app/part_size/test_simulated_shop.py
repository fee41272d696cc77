"""A shop of 12 machines and 8 lots with planted truths: kept trials in, shares read off the window."""

import numpy as np
from scipy.stats import chi2

from app.pages.part_size.shop_split import ShopSplitPage
from tests.core.guidance.shops import joint_chi2, plant


def test_the_window_shows_truths_as_its_intervals_say_and_blames_no_belt(qtbot, context, store):
    """Read as a person would: the table's shares against what was planted; the card's allowance against the lot."""
    rng = np.random.default_rng(2)
    shop = plant(store, 12, 8, rng)
    for machine in range(12):
        for lot in rng.choice(8, 3, replace=False):
            shop.keep(machine, int(lot), rng)
    context.select_machine(shop.machines[0].id)
    context.select_lot(shop.lots[2].id)
    page = ShopSplitPage(context)
    qtbot.addWidget(page)
    page.show()
    shown = {name: share.replace("−", "-").split(" ± ") for name, _, share, *_ in page.table.rows.rows()}
    split = page.result.shop.axes["x"].split
    off = {}
    truths = [(m.name, t) for m, t in zip(shop.machines, np.expm1(shop.machine_ratio), strict=True)]
    truths += [(lot.name, -t) for lot, t in zip(shop.lots, np.expm1(shop.lot_ratio), strict=True)]
    for row, truth in truths:
        value, U = (float(text) for text in shown[row])
        off[row] = value / 100 - truth
        assert 0.01 < U < 0.2
    machine_off = np.array([off[m.name] for m in shop.machines])
    lot_off = np.array([-off[lot.name] for lot in shop.lots])
    # all 20 truths at once, by the covariance that the intervals are cut from; one shop's intervals go off together
    assert chi2.ppf(0.001, 20) < joint_chi2(split, machine_off, lot_off) < chi2.ppf(0.999, 20)
    said = page.card.body.toPlainText()
    assert "Shrink allowance" in said and "Axis scale" not in said and "Mend the mechanics" not in said
    allowance = float(said.partition("this filament ")[2].split()[0])
    assert abs(allowance - np.exp(-shop.lot_ratio[2])) < 0.0008
    for machine in shop.machines:
        context.select_machine(machine.id)
        assert "Axis scale" not in page.card.body.toPlainText()

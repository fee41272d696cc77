"""Ten thousand fits in one call, beside statsmodels in a loop and numpy on stacks of matrices.

The peers in numpy are what one writes for a stack of equal data sets: the closed form, the normal equations, and QR.
Ours takes lines of any length, in any order, and checks every reading.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tests.benchmarks.onefit import READINGS, line_readings
from tests.benchmarks.sidebyside import Contest, Way, relative

TITLE = "Many fits in one call"


def contests(quick: bool) -> Iterator[Contest]:
    from core.measuring.lines import fit_lines

    count = 200 if quick else 10_000
    x, y, u = line_readings(count)
    of_line = np.repeat(np.arange(count), READINGS)
    flat = x.ravel(), y.ravel(), u.ravel()

    def ours():
        lines = fit_lines(of_line, *flat)
        return lines.value(), lines.slope, lines.covariance(), lines.chi2

    yield Contest(
        "lines",
        f"{count} weighted lines of {READINGS} readings",
        Way("fit_lines", ours),
        (
            Way("numpy, closed form on a stack", lambda: by_closed_form(x, y, u), relative),
            Way("numpy, normal equations on a stack", lambda: by_normal_equations(x, y, u), relative),
            Way("numpy, QR on a stack", lambda: by_qr(x, y, u), relative),
            Way("statsmodels WLS in a loop", lambda: by_statsmodels(x, y, u), relative),
        ),
        (1e-9, "of the largest number"),
        rounds=7,
    )


def by_closed_form(x: np.ndarray, y: np.ndarray, u: np.ndarray) -> tuple[np.ndarray, ...]:
    w = 1.0 / (u * u)
    total = w.sum(-1)
    x0, y0 = (w * x).sum(-1) / total, (w * y).sum(-1) / total
    dx, dy = x - x0[:, None], y - y0[:, None]
    s_xx = (w * dx * dx).sum(-1)
    slope = (w * dx * dy).sum(-1) / s_xx
    chi2 = (w * (dy - slope[:, None] * dx) ** 2).sum(-1)
    covariance = np.empty((total.size, 2, 2))
    covariance[:, 0, 0] = 1.0 / total + x0 * x0 / s_xx
    covariance[:, 0, 1] = covariance[:, 1, 0] = -x0 / s_xx
    covariance[:, 1, 1] = 1.0 / s_xx
    return y0 - slope * x0, slope, covariance, chi2


def by_normal_equations(x: np.ndarray, y: np.ndarray, u: np.ndarray) -> tuple[np.ndarray, ...]:
    design = np.stack([1.0 / u, x / u], -1)
    right = (y / u)[..., None]
    turned = design.swapaxes(-1, -2)
    covariance = np.linalg.inv(turned @ design)
    coef = covariance @ (turned @ right)
    chi2 = ((right - design @ coef) ** 2).sum((-1, -2))
    return coef[:, 0, 0], coef[:, 1, 0], covariance, chi2


def by_qr(x: np.ndarray, y: np.ndarray, u: np.ndarray) -> tuple[np.ndarray, ...]:
    design = np.stack([1.0 / u, x / u], -1)
    right = (y / u)[..., None]
    q, r = np.linalg.qr(design)
    inverse = np.linalg.inv(r)
    coef = inverse @ (q.swapaxes(-1, -2) @ right)
    chi2 = ((right - design @ coef) ** 2).sum((-1, -2))
    return coef[:, 0, 0], coef[:, 1, 0], inverse @ inverse.swapaxes(-1, -2), chi2


def by_statsmodels(x: np.ndarray, y: np.ndarray, u: np.ndarray) -> tuple[np.ndarray, ...]:
    import statsmodels.api as sm

    coef, covariance, chi2 = np.empty((len(x), 2)), np.empty((len(x), 2, 2)), np.empty(len(x))
    for i in range(len(x)):
        fit = sm.WLS(y[i], np.column_stack([np.ones(READINGS), x[i]]), weights=1.0 / u[i] ** 2).fit()
        coef[i], covariance[i], chi2[i] = fit.params, fit.normalized_cov_params, fit.ssr
    return coef[:, 0], coef[:, 1], covariance, chi2

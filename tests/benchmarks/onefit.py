"""One fit with its covariance: a weighted line, and the model of size error, beside numpy and statsmodels."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tests.benchmarks.sidebyside import Contest, Way, relative

TITLE = "One fit with its covariance"
READINGS = 20


def contests(quick: bool) -> Iterator[Contest]:
    import statsmodels.api as sm

    from core.measuring.linefit import fit_linear
    from core.measuring.straightline import fit_line

    x, y, u = line_readings(1)
    x, y, u = x[0], y[0], u[0]

    def ours() -> tuple[np.ndarray, np.ndarray]:
        line = fit_line(x, y, u)
        return np.array([line.intercept, line.slope]), line.covariance()

    def by_statsmodels(design: np.ndarray, right: np.ndarray, weights: np.ndarray):
        fit = sm.WLS(right, design, weights=weights).fit()
        return fit.params, fit.normalized_cov_params

    def line_design() -> np.ndarray:
        return np.column_stack([np.ones_like(x), x])

    allowed = (1e-9, "of the largest number")
    yield Contest(
        "line",
        f"weighted line, {READINGS} readings",
        Way("fit_line", ours),
        (
            Way("numpy lstsq and inv", lambda: by_lstsq(line_design(), y, 1 / u**2), relative),
            Way("statsmodels WLS", lambda: by_statsmodels(line_design(), y, 1 / u**2), relative),
        ),
        allowed,
    )
    design, error, weights = print_readings()

    def ours_linear() -> tuple[np.ndarray, np.ndarray]:
        fit = fit_linear(design, error, weights)
        return fit.coef, fit.unscaled_cov

    yield Contest(
        "print",
        f"scale, outset and lost motion, {READINGS} readings",
        Way("fit_linear", ours_linear),
        (
            Way("numpy lstsq and inv", lambda: by_lstsq(design, error, weights), relative),
            Way("statsmodels WLS", lambda: by_statsmodels(design, error, weights), relative),
        ),
        allowed,
    )


def by_lstsq(design: np.ndarray, right: np.ndarray, weights: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    root = np.sqrt(weights)
    weighted = design * root[:, None]
    coef = np.linalg.lstsq(weighted, right * root, rcond=None)[0]
    return coef, np.linalg.inv(weighted.T @ weighted)


def line_readings(count: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """(count, 20) lengths, errors and their uncertainties, in mm."""
    rng = np.random.default_rng(0)
    x = np.sort(rng.uniform(5.0, 200.0, (count, READINGS)), axis=1)
    u = rng.uniform(0.005, 0.03, x.shape)
    return x, 0.02 + 0.0012 * x + u * rng.standard_normal(x.shape), u


def print_readings() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Design of scale, wall outset and lost motion of 20 features of one print, their errors and weights."""
    rng = np.random.default_rng(4)
    length = rng.uniform(10.0, 180.0, READINGS)
    outside = np.where(np.arange(READINGS) % 2, 1.0, -1.0)
    closed = (np.arange(READINGS) % 5 == 0).astype(float)
    design = np.column_stack([length, 2.0 * outside, -closed])
    error = design @ np.array([-0.003, 0.06, 0.04]) + 0.01 * rng.standard_normal(READINGS)
    return design, error, 1.0 / rng.uniform(0.005, 0.02, READINGS) ** 2

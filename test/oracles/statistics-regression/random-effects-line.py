"""Values for the random-effects line, by dense matrices and a general optimiser: no step in common with the library code.

Made with Python 3.11, NumPy 2.4.6, SciPy 1.17.1; no chance is involved. Run: python3 random-effects-line.py
Data: sleep-study.ts beside this file (Belenky et al. 2003, as in the R package lme4). Case "thinned" keeps of subject
number i (0, 1, 2 ...) the first (i mod 5) + 1 days, so that some subjects have one observation only.
Covariances of a subject's line are blocks of the inverse of Henderson's mixed model equations.
"""

import re
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

rows = re.findall(r"\[(\d+), \[([^\]]*)\]\]", re.sub(r"\s+", " ", Path(__file__).with_name("sleep-study.ts").read_text()))
subjects = [np.array([float(v) for v in re.findall(r"[\d.]+", values)]) for _, values in rows]
assert len(subjects) == 18 and all(len(s) == 10 for s in subjects)


def criterion(theta, units):
    """-2 log restricted likelihood with sigma profiled out; theta are the entries of the relative factor."""
    a, b, c = theta
    relative = np.array([[a * a, a * b], [a * b, b * b + c * c]])
    n = sum(len(y) for _, y in units)
    info, score, logdet = np.zeros((2, 2)), np.zeros(2), 0.0
    parts = []
    for x, y in units:
        design = np.column_stack([np.ones_like(x), x])
        v = np.eye(len(y)) + design @ relative @ design.T
        parts.append((design, v, y))
        solved = np.linalg.solve(v, design)
        info += design.T @ solved
        score += solved.T @ y
        logdet += np.linalg.slogdet(v)[1]
    beta = np.linalg.solve(info, score)
    squares = sum((y - d @ beta) @ np.linalg.solve(v, y - d @ beta) for d, v, y in parts)
    sigma2 = squares / (n - 2)
    value = (n - 2) * (1 + np.log(2 * np.pi * sigma2)) + logdet + np.linalg.slogdet(info)[1]
    return value, beta, sigma2, relative, info


def fit(name, units, shown):
    best = None
    for start in ([1, 0, 0.3], [0.3, 0.1, 0.1], [2, -0.2, 0.5]):
        theta = np.array(start)
        for _ in range(6):
            theta = minimize(lambda t: criterion(t, units)[0], theta, method="Nelder-Mead",
                             options=dict(xatol=1e-11, fatol=1e-13, maxiter=20000, maxfev=20000)).x
        value = criterion(theta, units)[0]
        if best is None or value < best[0]:
            best = (value, theta)
    value, beta, sigma2, relative, info = criterion(best[1], units)
    between = sigma2 * relative
    mean_cov = sigma2 * np.linalg.inv(info)
    print(name, "criterion", repr(value))
    print(name, "sigma2", repr(sigma2), "between", between[0, 0], between[0, 1], between[1, 1])
    print(name, "beta", beta.tolist(), "cov", mean_cov[0, 0], mean_cov[0, 1], mean_cov[1, 1])
    k = len(units)
    size = 2 + 2 * k
    equations, right = np.zeros((size, size)), np.zeros(size)
    inverse_between = np.linalg.inv(between)
    for i, (x, y) in enumerate(units):
        design = np.column_stack([np.ones_like(x), x])
        rows = np.zeros((len(y), size))
        rows[:, :2] = design
        rows[:, 2 + 2 * i:4 + 2 * i] = design
        equations += rows.T @ rows / sigma2
        right += rows.T @ y / sigma2
        equations[2 + 2 * i:4 + 2 * i, 2 + 2 * i:4 + 2 * i] += inverse_between
    covariance = np.linalg.inv(equations)
    solution = np.linalg.solve(equations, right)
    for i in shown:
        pick = np.zeros((2, size))
        pick[0, 0] = pick[1, 1] = pick[0, 2 + 2 * i] = pick[1, 3 + 2 * i] = 1
        line, cov = pick @ solution, pick @ covariance @ pick.T
        x = units[i][0]
        design = np.column_stack([np.ones_like(x), x])
        conditional = np.linalg.inv(design.T @ design / sigma2 + inverse_between)
        print(name, "unit", i, line.tolist(), "cov", cov[0, 0], cov[0, 1], cov[1, 1],
              "conditional", conditional[0, 0], conditional[0, 1], conditional[1, 1])


days = np.arange(10.0)
fit("full", [(days, y) for y in subjects], [0, 1])
fit("thinned", [(days[: i % 5 + 1], y[: i % 5 + 1]) for i, y in enumerate(subjects)], [0, 3, 14])

"""Solves, with SciPy and numpy only, the problems of one kind that arrive as
JSON on standard input, and writes the answers as JSON. It shares no code with
the program it checks."""

import json
import sys

import numpy as np
from scipy import integrate, optimize, signal, special, stats


def weibull(problem):
    """Maximum likelihood by search, second derivatives by differences."""
    time = np.array(problem["times"])
    failed = np.array(problem["failed"], dtype=bool)

    def minus_log_likelihood(p):
        shape, scale = np.exp(p)
        law = stats.weibull_min(shape, scale=scale)
        return -(law.logpdf(time[failed]).sum() + law.logsf(time[~failed]).sum())

    start = np.array([0.0, np.log(time.mean())])
    best = optimize.minimize(minus_log_likelihood, start, method="Nelder-Mead",
                             options={"xatol": 1e-11, "fatol": 1e-13, "maxiter": 20000, "maxfev": 20000})
    shape, scale = np.exp(best.x)
    step = 1e-4
    hessian = np.empty((2, 2))
    for i in range(2):
        for j in range(2):
            a, b = np.eye(2)[i] * step, np.eye(2)[j] * step
            f = minus_log_likelihood
            hessian[i, j] = (f(best.x + a + b) - f(best.x + a - b) - f(best.x - a + b) + f(best.x - a - b)) / (4 * step * step)
    logs = np.linalg.inv(hessian)  # of ln shape, ln scale
    factor = np.diag([shape, scale])
    covariance = factor @ logs @ factor
    return {
        "shape": shape, "scale": scale, "log_likelihood": -best.fun,
        "b10": float(stats.weibull_min(shape, scale=scale).ppf(0.1)),
        "shape_variance": covariance[0, 0], "scale_variance": covariance[1, 1], "covariance": covariance[0, 1],
    }


def rainflow(problem):
    """Turning points by peak search, then the four-point rule: an inner range no
    wider than both its neighbours is a cycle; what is left counts half."""
    record = np.array(problem["history"])
    peaks, _ = signal.find_peaks(record)
    valleys, _ = signal.find_peaks(-record)
    turns = np.unique(np.concatenate(([0, len(record) - 1], peaks, valleys)))
    points = record[turns].tolist()
    cycles = []
    i = 0
    while i + 3 < len(points):
        outer1, inner, outer2 = (abs(points[i + k + 1] - points[i + k]) for k in range(3))
        if inner <= outer1 and inner <= outer2:
            cycles.append((inner, (points[i + 1] + points[i + 2]) / 2, 1.0))
            del points[i + 1:i + 3]
            i = max(0, i - 2)
        else:
            i += 1
    for a, b in zip(points, points[1:]):
        cycles.append((abs(b - a), (a + b) / 2, 0.5))
    cycles.sort()
    return {"ranges": [c[0] for c in cycles], "means": [c[1] for c in cycles], "counts": [c[2] for c in cycles],
            "sum": float(sum(c[2] * c[0] ** problem["exponent"] for c in cycles))}


def speed(problem):
    theta = np.arctan(problem["grade"])
    steady = problem["weight"] * (np.sin(theta) + problem["rolling"] * np.cos(theta))
    air = problem["density"] / 2 * problem["drag_area"]
    return {"speed": optimize.brentq(lambda v: air * v**3 + steady * v - problem["power"], 1e-6, 1e3, xtol=1e-13, rtol=1e-14)}


def ellipse(problem):
    """Hertz with the eccentricity found by brentq on the complete integrals."""
    a_, b_, force, modulus = problem["small"], problem["large"], problem["force"], problem["modulus"]

    def residual(e):
        m, k2 = e * e, 1 - e * e
        return (special.ellipe(m) / k2 - special.ellipk(m)) / (special.ellipk(m) - special.ellipe(m)) - b_ / a_

    e = optimize.brentq(residual, 1e-4, 1 - 1e-12, xtol=1e-15, rtol=1e-14)
    m, k = e * e, np.sqrt(1 - e * e)
    long = np.cbrt(3 * force * special.ellipe(m) / (2 * np.pi * k * k * (a_ + b_) * modulus))
    return {"long": long, "short": k * long, "pressure": 3 * force / (2 * np.pi * k * long * long),
            "approach": 3 * force * special.ellipk(m) / (2 * np.pi * long * modulus)}


def heating(problem):
    """Middle of a disc source on a half-space: the point-source answer summed over time."""
    q = problem["heat"] / (np.pi * problem["radius"] ** 2)
    alpha, k, a = problem["diffusivity"], problem["conductivity"], problem["radius"]
    # with s = sqrt(time) the integrand has no singularity
    total, _ = integrate.quad(lambda s: 2 * (1 - np.exp(-a * a / (4 * alpha * s * s))) if s > 0 else 2.0,
                              0, np.sqrt(problem["duration"]), epsabs=1e-12, epsrel=1e-12, limit=400)
    return {"rise": q * np.sqrt(alpha / np.pi) / k * total}


def proportion(problem):
    limits = stats.binomtest(problem["cases"], problem["trials"]).proportion_ci(problem["confidence"], method="exact")
    return {"low": limits.low, "high": limits.high}


def regression(problem):
    line = stats.linregress(problem["x"], problem["y"])
    return {"slope": line.slope, "intercept": line.intercept, "slope_error": line.stderr, "intercept_error": line.intercept_stderr}


def chart(problem):
    n, phi = problem["n"], stats.norm.cdf
    d2, _ = integrate.quad(lambda x: 1 - (1 - phi(x)) ** n - phi(x) ** n, -9, 9, epsabs=1e-12)
    square, _ = integrate.dblquad(lambda y, x: 1 - phi(y) ** n - (1 - phi(x)) ** n + (phi(y) - phi(x)) ** n,
                                  -9, 9, lambda x: x, 9, epsabs=1e-9)
    c4, _ = integrate.quad(lambda s: s * stats.chi.pdf(s, n - 1) / np.sqrt(n - 1), 0, np.inf)
    return {"d2": d2, "d3": np.sqrt(2 * square - d2 * d2), "c4": c4}


def mean_life(problem):
    tail, r = (1 - problem["confidence"]) / 2, problem["failures"]
    return {"low": 2 * problem["time"] / stats.chi2.ppf(1 - tail, 2 * r + 2), "high": 2 * problem["time"] / stats.chi2.ppf(tail, 2 * r)}


def bearing(problem):
    """Rollers of a cone that has moved as a rigid body, by vectors: axis, radial 1, radial 2."""
    count, diameter, length, pitch, alpha = (problem[k] for k in ("count", "diameter", "length", "pitch", "angle"))  # N, mm
    shift, turn = np.array(problem["shift"]), np.array([0.0, *problem["turn"]])
    cos, sin = np.cos(alpha), np.sin(alpha)

    def rollers(slices):
        s = (np.arange(slices) + 0.5) / slices * length - length / 2
        force, moment, loads = np.zeros(3), np.zeros(3), []
        for psi in 2 * np.pi * np.arange(count) / count:
            out = np.array([0.0, np.cos(psi), np.sin(psi)])
            axis = np.array([1.0, 0.0, 0.0])
            square, along = sin * axis + cos * out, cos * axis - sin * out  # to the cup's raceway
            places = pitch / 2 * out + np.outer(s, along)
            press = (shift + np.cross(turn, places)) @ square
            q = 35948 * length ** (8 / 9) / slices * np.maximum(press, 0) ** (10 / 9)
            loads.append(q)
            force += q.sum() * square
            moment += np.cross(places, np.outer(q, square)).sum(axis=0)
        return force, moment, np.array(loads)

    force, moment, fine = rollers(20001)
    n = problem["laminae"]
    loads = rollers(n)[2]
    gamma = diameter * cos / pitch
    ratio = (1 - gamma) / (1 + gamma)
    fc = 207.9 * 0.83 * gamma ** (2 / 9) * (1 - gamma) ** (29 / 27) / (1 + gamma) ** 0.25 * (1 + (1.04 * ratio ** (143 / 108)) ** 4.5) ** (-2 / 9)
    dynamic = 1.1 * fc * (length * cos) ** (7 / 9) * count ** 0.75 * diameter ** (29 / 27)
    v = (1.038 * ratio ** (143 / 108)) ** 4.5
    even = dynamic / 0.83 / (count * cos) * n ** (-7 / 9)
    cone, cup = even / 0.378 * (1 + v) ** (2 / 9), even / 0.364 * (1 + 1 / v) ** (2 / 9)
    x = abs(2 * np.arange(1, n + 1) - n - 1) / (2 * n)
    edge = np.array([1 - 0.01 / np.log(1.985 * y) if y > 0 else 1.0 for y in x])
    stressed = edge * loads
    on_cone = (stressed ** 4).mean(axis=0) ** (1 / 4)  # the cone turns
    on_cup = (stressed ** 4.5).mean(axis=0) ** (1 / 4.5)
    life = ((on_cone / cone) ** 4.5 + (on_cup / cup) ** 4.5).sum() ** (-8 / 9)
    return {
        "force": list(force), "moment": list(moment), "hardest": fine.sum(axis=1).max(), "dynamic": dynamic,
        "static": 44 * (1 - gamma) * count * length * diameter * cos, "life": life,
        "pressure": np.sqrt(loads.max() * n / length * (2 / diameter) / (1 - gamma) * 206e3 / (2 * np.pi * (1 - 0.3 ** 2))),
    }


solve = globals()[sys.argv[1]]
json.dump([solve(problem) for problem in json.load(sys.stdin)], sys.stdout)

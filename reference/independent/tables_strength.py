"""Thick tubes by integrating their equilibrium, and burst-disc windows by root finding."""

import random

import numpy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq


def displacement(inner, outer):
    """Two independent solutions of u'' + u'/r - u/r2 = 0, as (u, u') at both radii; no closed form used."""
    equilibrium = lambda r, y: [y[1], -y[1] / r + y[0] / r**2]
    ends = []
    for start in ([inner, 1.0], [inner, -1.0]):
        run = solve_ivp(equilibrium, (inner, outer), start, method="DOP853", rtol=1e-13, atol=1e-18)
        ends.append(((start[0], start[1]), (run.y[0, -1], run.y[1, -1])))
    return ends


def tube(outside, bore, inside_pressure, outside_pressure, young, poisson, ends):
    """Stresses and strains; `ends` is open, closed or anchored. Unknowns: two amplitudes and the axial strain."""
    inner, outer = bore / 2, outside / 2
    solutions = displacement(inner, outer)
    lame = young * poisson / ((1 + poisson) * (1 - 2 * poisson))
    shear = young / (2 * (1 + poisson))
    place = lambda k, side: (solutions[k][side], (inner, outer)[side])

    def row(side, of):
        cells = [of(*place(k, side)) for k in (0, 1)]
        return cells

    radial = lambda uv, r: lame * (uv[1] + uv[0] / r) + 2 * shear * uv[1]
    axial = lambda uv, r: lame * (uv[1] + uv[0] / r)
    closing = inside_pressure * bore**2 / (outside**2 - bore**2) - outside_pressure * outside**2 / (outside**2 - bore**2)
    last = {
        "open": ([*row(0, axial), lame + 2 * shear], 0.0),
        "closed": ([*row(0, axial), lame + 2 * shear], closing),
        "anchored": ([0.0, 0.0, 1.0], 0.0),
    }[ends]
    system = numpy.array([[*row(0, radial), lame], [*row(1, radial), lame], last[0]])
    # Stresses are near 1e7, the axial strain near 1e-4: scaled so that the small system is well conditioned.
    scale = numpy.array([young, young, last[0][2] if ends != "anchored" else 1.0])
    a, b, strain = numpy.linalg.solve(
        system / scale[:, None], numpy.array([-inside_pressure, -outside_pressure, last[1]]) / scale
    )
    hoop = []
    for side, r in ((0, inner), (1, outer)):
        u, slope = (a * solutions[0][side][k] + b * solutions[1][side][k] for k in (0, 1))
        hoop.append(lame * (slope + u / r + strain) + 2 * shear * u / r)
    widening = (a * solutions[0][0][0] + b * solutions[1][0][0]) / inner
    return hoop, widening, strain


def tube_rows():
    rng = random.Random(20240124)
    for _ in range(60):
        bore = rng.uniform(0.002, 0.025)
        outside = bore * rng.uniform(1.15, 2.5)
        pressure, around = rng.uniform(2e6, 6e7), rng.choice([0.0, rng.uniform(1e5, 5e6)])
        young, poisson = rng.choice([(206e9, 0.3), (120e9, 0.34), (0.5e9, 0.4)])
        hoop, _, _ = tube(outside, bore, pressure, around, young, poisson, "closed")
        _, open_widening, _ = tube(outside, bore, pressure, 0.0, young, poisson, "open")
        _, held_widening, _ = tube(outside, bore, pressure, 0.0, young, poisson, "anchored")
        _, closed_widening, closed_strain = tube(outside, bore, pressure, 0.0, young, poisson, "closed")
        yield (
            outside, bore, pressure, around, young, poisson, hoop[0], hoop[1],
            pressure / (2 * open_widening), pressure / (2 * held_widening), 2 * closed_widening + closed_strain,
        )


PSI = 0.45359237 * 9.80665 / 0.0254**2
SHARE, FLOOR = 0.05, 2 * PSI


def lowest(specified, minus, hot):
    marked = specified * (1 - minus)
    return (marked - max(SHARE * marked, FLOOR)) * hot


def highest(specified, plus, cold):
    marked = specified * (1 + plus)
    return (marked + max(SHARE * marked, FLOOR)) * cold


def window_rows():
    rng = random.Random(20240125)
    for case in range(120):
        scale = 1e5 if case % 4 else 3e3
        working, rating = rng.uniform(20, 250) * scale, rng.uniform(100, 450) * scale
        ratio = rng.choice([0.5, 0.6, 0.7, 0.8, 0.85, 0.9])
        plus, minus = rng.choice([0.0, rng.uniform(0, 0.1)]), rng.choice([0.0, rng.uniform(0, 0.1)])
        hot, cold = rng.uniform(0.7, 1.0), rng.uniform(1.0, 1.2)
        back_low = rng.choice([0.0, rng.uniform(0, 0.1) * working])
        back_high = back_low + rng.choice([0.0, rng.uniform(0, 0.1) * rating])
        top = 1e4 * 1e5
        low = brentq(lambda s: ratio * lowest(s, minus, hot) - (working - back_low), 0, top, xtol=1e-9, rtol=1e-15)
        high = brentq(lambda s: highest(s, plus, cold) + back_high - rating, 0, top, xtol=1e-9, rtol=1e-15)
        yield (
            working, rating, ratio, plus, minus, hot, cold, back_low, back_high, low, high,
            lowest(low, minus, hot), highest(high, plus, cold),
        )


TABLES = [
    (
        "thick_tube.csv",
        """Thick elastic tube: hoop stress of a closed tube at the bore and outside, stiffness of its content with open and with
anchored ends, and growth of its content with closed ends. Pa, m.
SciPy: equilibrium in the radial displacement integrated, three conditions solved; Lame's formula not used. Seed 20240124.""",
        ["outside_m", "bore_m", "inside_pressure_pa", "outside_pressure_pa", "young_pa", "poisson", "hoop_at_bore_pa",
         "hoop_outside_pa", "wall_modulus_open_pa", "wall_modulus_anchored_pa", "growth_closed"],
        tube_rows,
    ),
    (
        "relief_window.csv",
        """Window for the ordered pressure of a burst disc: lowest for life, highest for strength; Pa.
SciPy: roots of the chain from order to burst, with 5 % and never less than 2 psi of tolerance. Seed 20240125.""",
        ["working_pa", "rating_pa", "ratio", "range_plus", "range_minus", "hot_factor", "cold_factor", "back_low_pa",
         "back_high_pa", "window_low_pa", "window_high_pa", "lowest_burst_at_low_pa", "highest_burst_at_high_pa"],
        window_rows,
    ),
]

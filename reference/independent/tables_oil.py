"""Oil: viscosity with temperature, viscosity index (chemicals), density, stiffness with air."""

import math
import random

import numpy
from chemicals.viscosity import viscosity_index
from mpmath import mp, mpf
from scipy.optimize import brentq

ZERO = 273.15


def z_of(viscosity):
    """The quantity of ASTM D341 whose double logarithm is straight in log T; viscosity in mm2/s."""
    return viscosity + 0.7 + math.exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity**2)


def double_log(z):
    return math.log10(math.log10(z))


def viscosity_at(celsius, cool, warm):
    """The line through two points by a linear system, then the exact way back from Z, not the standard's fit."""
    system = [[1, -math.log10(cool[0] + ZERO)], [1, -math.log10(warm[0] + ZERO)]]
    a, b = numpy.linalg.solve(numpy.array(system), numpy.array([double_log(z_of(cool[1])), double_log(z_of(warm[1]))]))
    z = 10 ** 10 ** (a - b * math.log10(celsius + ZERO))
    return brentq(lambda nu: z_of(nu) - z, max(z - 1.5, 0.05), z, xtol=1e-14 * z, rtol=1e-15)


def temperature_rows():
    rng = random.Random(20240120)
    for _ in range(60):
        at_40 = math.exp(rng.uniform(math.log(12), math.log(900)))
        at_100 = (1.1 + rng.uniform(0, 0.5)) * at_40 ** rng.uniform(0.42, 0.52)
        for celsius in (-20, -5, 0, 20, 40, 60, 90):
            yield 40, at_40, 100, at_100, celsius, viscosity_at(celsius, (40, at_40), (100, at_100))


def index_rows():
    rng = random.Random(20240121)
    for _ in range(200):
        at_100 = math.exp(rng.uniform(math.log(2.05), math.log(110)))
        # From about -40 to about 250: between the two reference oils and beyond the better one.
        worse = 0.8353 * at_100**2 + 14.67 * at_100 - 216
        worse = worse if at_100 > 70 else at_100 * (1.4 + 1.55 * at_100**0.72)
        at_40 = worse * rng.uniform(0.3, 1.0)
        index = viscosity_index(nu_40=at_40 * 1e-6, nu_100=at_100 * 1e-6)
        if index is not None and -60 <= index <= 300:
            yield at_40, at_100, index


K1 = 0.34878


def factor(density_60, celsius):
    above = celsius * 1.8 + 32 - 60
    alpha = K1 / density_60
    return math.exp(-alpha * above * (1 + 0.8 * alpha * above))


def density_rows():
    rng = random.Random(20240122)
    for _ in range(100):
        at_15, celsius = rng.uniform(810, 1100), rng.uniform(-30, 110)
        at_60 = brentq(lambda rho: rho * factor(rho, 15) - at_15, 700, 1300, xtol=1e-12)
        yield at_15, celsius, at_60 * factor(at_60, celsius)


def air_rows():
    """Stiffness by a numerical derivative in forty digits, the volume straight from the two contents."""
    mp.dps = 40
    rng = random.Random(20240123)
    atmosphere = mpf("101325")
    for _ in range(120):
        modulus, air = rng.uniform(1.2e9, 2.0e9), rng.choice([0.0, rng.uniform(0.0005, 0.1)])
        gauge = math.exp(rng.uniform(math.log(1e4), math.log(4e7)))
        left = lambda p: (1 - mpf(air)) * mp.exp(-(p - atmosphere) / mpf(modulus)) + mpf(air) * atmosphere / p
        p = mpf(gauge) + atmosphere
        stiffness = -left(p) / mp.diff(left, p, h=mpf(10) ** -12 * p)
        yield modulus, air, gauge, float(stiffness), float(1 - left(p))


TABLES = [
    (
        "viscosity_temperature.csv",
        """Viscosity of an oil from two points, mm2/s and degC.
NumPy and SciPy: equations of ASTM D341, the way back from Z solved exactly. The standard's own way back is a fit that
differs by up to 3e-4 between 0.2 and 2 mm2/s and by 1e-10 above 5 mm2/s. Seed 20240120.""",
        ["cool_c", "cool_viscosity", "warm_c", "warm_viscosity", "temperature_c", "viscosity"],
        temperature_rows,
    ),
    (
        "viscosity_index.csv",
        """Viscosity index from kinematic viscosities at 40 and 100 degC, mm2/s.
chemicals: viscosity_index, which holds the table of ASTM D2270. Compare within 0.1. Seed 20240121.""",
        ["at_40", "at_100", "index"],
        index_rows,
    ),
    (
        "oil_density.csv",
        """Density of a lubricating oil from that at 15 degC, kg/m3.
SciPy: ASTM D1250 for lubricating oils, density at 60 degF solved for; rounding of the 2004 edition left out. Seed 20240122.""",
        ["density_15", "temperature_c", "density"],
        density_rows,
    ),
    (
        "oil_with_air.csv",
        """Stiffness of oil with entrained air, and the share of the volume lost to compression; gauge pressure, Pa.
mpmath: numerical derivative of the volume in forty digits; slow change, no air dissolves. Seed 20240123.""",
        ["modulus_pa", "air_fraction", "pressure_pa", "stiffness_pa", "compressed_fraction"],
        air_rows,
    ),
]

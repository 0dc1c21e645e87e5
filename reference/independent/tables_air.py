"""Compressed air: times of filling and venting by quadrature, the atmosphere and valve coefficients (fluids)."""

import math
import random

from fluids.atmosphere import ATMOSPHERE_1976
from fluids.control_valve import size_control_valve_g
from scipy.integrate import quad

REFERENCE_PRESSURE = 1e5
REFERENCE_TEMPERATURE = 293.15


def share(ratio, critical):
    """The flow over the choked flow, ISO 6358 with exponent one half."""
    return 1.0 if ratio <= critical else math.sqrt(max(0.0, 1 - ((ratio - critical) / (1 - critical)) ** 2))


def integral(of, low, high, kink):
    edges = [low, *([kink] if low < kink < high else []), high]
    return sum(quad(of, a, b, epsabs=0, epsrel=1e-12, limit=200)[0] for a, b in zip(edges, edges[1:]))


def fill_time(volume, conductance, critical, supply, start, end, exponent):
    rate = lambda p: exponent * REFERENCE_PRESSURE * conductance * supply * share(p / supply, critical) / volume
    return integral(lambda p: 1 / rate(p), start, end, critical * supply)


def exhaust_time(volume, conductance, critical, around, start, end, exponent):
    rate = lambda p: exponent * REFERENCE_PRESSURE * conductance * p * share(around / p, critical) / volume
    return integral(lambda p: 1 / rate(p), end, start, around / critical)


def time_rows():
    rng = random.Random(20240126)
    for case in range(120):
        volume, conductance = rng.uniform(5e-5, 2e-3), rng.uniform(0.1, 5) * 1e-8
        critical, exponent = rng.uniform(0.1, 0.5), rng.choice([1.0, 1.4])
        around, supply = rng.uniform(0.7e5, 1.03e5), rng.uniform(4e5, 11e5)
        if case % 2:
            start = rng.uniform(around, 0.6 * supply)
            end = start + rng.uniform(0.1, 0.97) * (0.98 * supply - start)
            spent = fill_time(volume, conductance, critical, supply, start, end, exponent)
            yield "fill", volume, conductance, critical, supply, start, end, exponent, spent
        else:
            end = around * (1 + rng.uniform(0.02, 0.8))
            start = end + rng.uniform(0.1, 1) * (supply - end)
            spent = exhaust_time(volume, conductance, critical, around, start, end, exponent)
            yield "exhaust", volume, conductance, critical, around, start, end, exponent, spent


def atmosphere_rows():
    for metres in range(-400, 5001, 300):
        yield metres, ATMOSPHERE_1976(float(metres)).P


def valve_rows():
    """Choked air through a valve of Kv = 1: the library finds the Kv of a flow, so the flow is scaled."""
    upstream = 7e5
    for terminal_ratio in (0.65, 0.68, 0.70, 0.72, 0.75, 0.80):
        trial = 0.01
        coefficient = size_control_valve_g(
            T=REFERENCE_TEMPERATURE, MW=28.9647, mu=1.82e-5, gamma=1.4, Z=1.0, P1=upstream, P2=1e5, Q=trial,
            xT=terminal_ratio,
        )
        # The library counts flow at 0 degC and one atmosphere; it returns Kv in m3/h.
        normal = trial / coefficient
        reference = normal * 101325 / REFERENCE_PRESSURE * REFERENCE_TEMPERATURE / 273.15
        yield terminal_ratio, reference / upstream


TABLES = [
    (
        "air_times.csv",
        """Time to fill a volume from a supply and to vent it, with the flow law of ISO 6358; m3, m3/(s Pa), Pa absolute, s.
SciPy: quadrature of the flow law, to 1e-12. surrounding is the supply of a filling, the atmosphere of a venting.
Seed 20240126.""",
        ["kind", "volume_m3", "conductance", "critical_ratio", "surrounding_pa", "from_pa", "to_pa", "exponent", "time_s"],
        time_rows,
    ),
    (
        "atmosphere.csv",
        """Pressure of the standard atmosphere by height, m and Pa.
fluids: ATMOSPHERE_1976, geometric height; below 32 km the same as ISO 2533.""",
        ["altitude_m", "pressure_pa"],
        atmosphere_rows,
    ),
    (
        "valve_conductance.csv",
        """Sonic conductance of a valve of Kv = 1 m3/h by terminal pressure-drop ratio; m3/(s Pa) at the reference of ISO 8778.
fluids: size_control_valve_g (IEC 60534-2-1), choked air at 20 degC.""",
        ["terminal_ratio", "conductance"],
        valve_rows,
    ),
]

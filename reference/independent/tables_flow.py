"""Flow through round lines: integrated flow curves (SciPy), friction factors and pressure drops (fluids)."""

import math
import random

from fluids.core import K_from_f, Reynolds, dP_from_K
from fluids.friction import Churchill_1977, Colebrook, friction_factor
from scipy.integrate import quad
from scipy.optimize import brentq


def flow(bore, length, drop, yield_stress, consistency, index):
    """Rabinowitsch integral over the flow curve from the yield stress to the wall; no closed form."""
    wall = drop * bore / (4 * length)
    if wall <= yield_stress:
        return 0.0
    over = wall - yield_stress
    # With s the stress above the yield stress over its value at the wall, the shear rate is (over s / K)^(1/n); the power
    # of s is given to the integrator as a weight, so that the end at s = 0 costs no digits.
    integral, _ = quad(
        lambda s: (yield_stress + over * s) ** 2, 0, 1, weight="alg", wvar=(1 / index, 0), epsabs=0, epsrel=1e-13
    )
    return math.pi * (bore / 2) ** 3 / wall**3 * integral * over * (over / consistency) ** (1 / index)


def drop(bore, length, wanted, yield_stress, consistency, index):
    """The pressure at which the integral gives the wanted flow."""
    start = 4 * yield_stress * length / bore
    low, high = start, max(2 * start, 1.0)
    while flow(bore, length, high, yield_stress, consistency, index) < wanted:
        low, high = high, 2 * high
    miss = lambda p: flow(bore, length, p, yield_stress, consistency, index) - wanted
    return brentq(miss, low, high, xtol=1e-12 * high, rtol=4e-16 * 4, maxiter=500)


def log_uniform(rng, low, high):
    return math.exp(rng.uniform(math.log(low), math.log(high)))


LAWS = {
    "newtonian": (60, lambda rng: (0.0, log_uniform(rng, 0.005, 50), 1.0)),
    "power": (60, lambda rng: (0.0, log_uniform(rng, 1, 300), rng.uniform(0.3, 1.0))),
    "bingham": (60, lambda rng: (log_uniform(rng, 5, 2500), log_uniform(rng, 0.1, 50), 1.0)),
    "herschel-bulkley": (
        140,
        lambda rng: (log_uniform(rng, 5, 2500), log_uniform(rng, 1, 400), rng.uniform(0.3, 1.0)),
    ),
}


def lines(seed):
    """Lines as they occur: the drop is chosen by the share of the radius that the plug takes."""
    rng = random.Random(seed)
    for law, (count, fluid) in LAWS.items():
        for _ in range(count):
            bore, length = log_uniform(rng, 0.002, 0.025), log_uniform(rng, 0.5, 150)
            yield_stress, consistency, index = fluid(rng)
            if yield_stress > 0:
                pressure = 4 * yield_stress * length / bore / rng.uniform(0.02, 0.995)
            else:
                pressure = log_uniform(rng, 2e4, 4e7)
            yield law, bore, length, pressure, yield_stress, consistency, index


def flow_rows():
    for line in lines(20240117):
        yield *line, flow(*line[1:])


def drop_rows():
    for law, bore, length, pressure, *fluid in lines(20240118):
        wanted = flow(bore, length, pressure, *fluid)
        yield law, bore, length, wanted, *fluid, drop(bore, length, wanted, *fluid)


def friction_rows():
    for roughness in (0.0, 1e-4, 0.002, 0.01, 0.03):
        for reynolds in (1, 10, 100, 500, 1000, 1500, 2000, 2039, 2041, 2100, 2300, 3000, 4000, 1e4, 3e4, 1e5, 1e6):
            turbulent = reynolds > 2040
            yield (
                reynolds,
                roughness,
                friction_factor(Re=reynolds, eD=roughness),
                Churchill_1977(Re=reynolds, eD=roughness),
                Colebrook(Re=reynolds, eD=roughness) if turbulent else "",
            )


def pipe_drop_rows():
    rng = random.Random(20240119)
    for _ in range(150):
        bore, length = log_uniform(rng, 0.003, 0.04), log_uniform(rng, 0.5, 100)
        density, roughness = rng.uniform(820, 930), rng.choice([0.0, 1.5e-6, 4.5e-5])
        viscosity, reynolds = log_uniform(rng, 0.003, 5), log_uniform(rng, 0.1, 5e4)
        speed = reynolds * viscosity / (density * bore)
        volume_flow = speed * math.pi / 4 * bore**2
        factor = friction_factor(Re=Reynolds(V=speed, D=bore, rho=density, mu=viscosity), eD=roughness / bore)
        lost = dP_from_K(K_from_f(fd=factor, L=length, D=bore), rho=density, V=speed)
        yield bore, length, volume_flow, density, viscosity, roughness, lost


LINE = ["bore_m", "length_m"]
FLUID = ["yield_stress_pa", "consistency", "index"]
TABLES = [
    (
        "herschel_bulkley_flow.csv",
        """Flow of Newtonian, power-law, Bingham and Herschel-Bulkley fluids through a round line under a known drop.
SciPy: integral over the flow curve (Rabinowitsch), to 1e-13; no closed form. Seed 20240117.""",
        ["law", *LINE, "drop_pa", *FLUID, "flow_m3_s"],
        flow_rows,
    ),
    (
        "herschel_bulkley_drop.csv",
        """Drop at which the integral over the flow curve gives the wanted flow.
SciPy: bracketing root of that integral. Good to about 1e-12 of the drop. Seed 20240118.""",
        ["law", *LINE, "flow_m3_s", *FLUID, "drop_pa"],
        drop_rows,
    ),
    (
        "friction_factor.csv",
        """Darcy friction factors: the library's default (64/Re to 2040, then Colebrook), Churchill 1977, Colebrook.
fluids: friction_factor, Churchill_1977, Colebrook.""",
        ["reynolds", "relative_roughness", "factor", "churchill", "colebrook"],
        friction_rows,
    ),
    (
        "pipe_drop.csv",
        """Pressure lost by an oil in a round line, laminar and turbulent.
fluids: Reynolds, friction_factor, K_from_f, dP_from_K. Seed 20240119.""",
        [*LINE, "flow_m3_s", "density", "viscosity", "roughness_m", "drop_pa"],
        pipe_drop_rows,
    ),
]

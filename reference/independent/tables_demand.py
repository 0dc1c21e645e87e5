"""Oil film of a plain bearing: Reynolds' equation by finite volumes, film rupture where the pressure would go negative."""

import math

import numpy
from scipy.sparse import csr_matrix
from scipy.sparse.linalg import spsolve


def film(length_ratio, eccentricity, turns, across):
    """Sommerfeld number, inflow and side flow over r c N l of a full bearing fed at the widest gap.

    Angles run from the widest gap; one half of the length is solved. Pressure is in units of 6 mu U r / c2.
    """
    step, rise = 2 * math.pi / turns, 1.0 / across
    gap = lambda angle: 1 + eccentricity * math.cos(angle)
    slender = (1 / length_ratio) ** 2
    # Unknowns at angles 1..turns-1 and at stations 0 (middle) .. across-1; the rim and the groove are at no pressure.
    index = lambda i, j: (i - 1) * across + j
    size = (turns - 1) * across
    rows, columns, values, right = [], [], [], numpy.zeros(size)
    for i in range(1, turns):
        east, west, here = (gap((i + k) * step) ** 3 for k in (0.5, -0.5, 0.0))
        slope = -eccentricity * math.sin(i * step)
        for j in range(across):
            width = 0.5 if j == 0 else 1.0
            me, sum_of_all = index(i, j), 0.0
            sides = [(i + 1, j, east * width / step**2), (i - 1, j, west * width / step**2)]
            sides += [(i, j + 1, here * slender / rise**2)]
            sides += [(i, j - 1, here * slender / rise**2)] if j else []
            for p, q, weight in sides:
                sum_of_all += weight
                if 1 <= p < turns and q < across:
                    rows.append(me), columns.append(index(p, q)), values.append(weight)
            rows.append(me), columns.append(me), values.append(-sum_of_all)
            right[me] = slope * width
    matrix = csr_matrix((values, (rows, columns)), shape=(size, size))
    pressure = ruptured(matrix, right).reshape(turns - 1, across)
    return results(pressure, gap, step, rise, length_ratio, turns)


def ruptured(matrix, right):
    """Reynolds' condition: no pressure below zero, and where it is zero the film would only pull. Active sets."""
    full = numpy.ones(len(right), dtype=bool)
    for _ in range(200):
        pressure = numpy.zeros(len(right))
        pressure[full] = spsolve(matrix[full][:, full], right[full])
        pulled = matrix @ pressure - right
        # Outside the film the balance must not ask for pressure.
        new = (full & (pressure > 0)) | (~full & (pulled > 1e-14))
        if (new == full).all():
            return pressure
        full = new
    raise RuntimeError("the edge of the film was not found")


def results(pressure, gap, step, rise, length_ratio, turns):
    weights = numpy.full(pressure.shape[1], rise)
    weights[0] /= 2
    angles = numpy.arange(1, turns) * step
    load_along = (pressure * numpy.cos(angles)[:, None] * weights).sum() * step
    load_across = (pressure * numpy.sin(angles)[:, None] * weights).sum() * step
    load = math.hypot(load_along, load_across)
    # Mean pressure on the projected area: half of 6 mu U r / c2 times the load, with U = 2 pi r N.
    sommerfeld = 1 / (6 * math.pi * load)
    # Inflow through the first half step after the groove; the rim has no pressure and no gradient there.
    first = gap(step / 2)
    inflow = math.pi * (first - first**3 * (pressure[0] * weights).sum() / step)
    cubes = numpy.array([gap(angle) ** 3 for angle in angles])
    # Gradient at the rim from the last two stations, to second order.
    rim = (4 * pressure[:, -1] - pressure[:, -2]) / (2 * rise)
    side = math.pi / length_ratio**2 * (cubes * rim).sum() * step
    return numpy.array([sommerfeld, inflow, side])


def film_rows():
    """Two grids, one twice as fine, carried on to no step at all; the schemes are of second order."""
    charted = [(ratio, eccentricity) for ratio in (1.0, 0.5, 0.25) for eccentricity in (0.2, 0.4, 0.6, 0.8)]
    between = [(0.75, 0.5), (0.75, 0.7), (0.6, 0.3), (0.35, 0.5), (0.3, 0.75)]
    for length_ratio, eccentricity in charted + between:
        coarse, fine = film(length_ratio, eccentricity, 144, 24), film(length_ratio, eccentricity, 288, 48)
        sommerfeld, inflow, side = fine + (fine - coarse) / 3
        yield length_ratio, eccentricity, sommerfeld, inflow, side / inflow


TABLES = [
    (
        "bearing_film.csv",
        """Full plain bearing fed at the widest gap: Sommerfeld number, inflow over r c N l, side flow over inflow.
NumPy and SciPy: Reynolds' equation by finite volumes with film rupture, carried on to no step. Good to about 3e-3.
The first twelve rows are the charted ones, the others lie between them.""",
        ["length_over_diameter", "eccentricity", "sommerfeld", "inflow", "side_share"],
        film_rows,
    ),
]

#!/usr/bin/env python3
"""Solves random one-divider metering instances with a constraint programme, as a check from outside.

The models are written down from their definition (choose a period and, for each point, outlets; pair the outlets of
each size on pistons), not from the search they check. Writes reference/metering/independent.json: instances with the
optimal objective, or null where the solver proved that there is no answer.

To run it again:

    python3 -m venv venv && venv/bin/pip install ortools==9.15.6755
    venv/bin/python reference/independent/metering_ortools.py            # writes the file
    venv/bin/python reference/independent/metering_ortools.py --compare  # fails if an objective differs from the file

The instances come from a fixed seed and the objectives are unique, so the file does not depend on the machine.
"""

import json
import pathlib
import random
import sys

import ortools
from ortools.sat.python import cp_model

SEED = 20240229
TARGET = pathlib.Path(__file__).resolve().parent.parent / "metering" / "independent.json"
# Preferred numbers (ISO 3) and plain series; nobody's product.
SERIES = [
    [25, 40, 63, 100, 160, 250, 400, 630],
    [30, 60, 90, 120, 180, 240, 360],
    [25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315],
    [50, 100, 200, 400],
    [20, 50, 80, 110, 140],
]


def volumes_of_a_divider(rng, model, points, sizes):
    """Volumes of a divider that exists: pistons drawn until their outlets serve so many points."""
    while True:
        few = rng.sample(sizes, rng.randint(1, min(len(sizes), 2 + points // 3)))
        shares = []
        while len(shares) < points:
            size = rng.choice(few)
            shares += [2 * size] if rng.random() < 0.25 else [size, size]
        rng.shuffle(shares)
        if model == "M2" and len(shares) > 2 and rng.random() < 0.5:
            shares = [shares[0] + shares[1]] + shares[2:]
        if len(shares) == points:
            return shares


def instance(rng, name, model, points, sizes, step):
    """One random instance around a divider, or around none, so that both outcomes occur."""
    sizes = sorted(rng.sample(sizes, rng.randint(max(2, len(sizes) - 3), len(sizes))))
    period = rng.randrange(900, 7200)
    if rng.random() < 0.8:
        volumes, spread = volumes_of_a_divider(rng, model, points, sizes), rng.choice([0.0, 0.03, 0.06])
    else:
        volumes, spread = [rng.choice(sizes) * rng.choice([1, 1, 1, 2]) for _ in range(points)], 0.12
    demand = [max(1, round(3600 * u / period * rng.uniform(1 - spread, 1 + spread))) for u in volumes]
    tight = rng.random() < 0.3
    data = {
        "demand": demand,
        "lo": [rng.choice([90, 95] if tight else [80, 85, 90, 90]) for _ in range(points)],
        "hi": [rng.choice([110, 115] if tight else [120, 130, 150]) for _ in range(points)],
        "sizes": sizes,
        "piston_cost": [20] * len(sizes) if rng.random() < 0.4 else [14 + 3 * i for i in range(len(sizes))],
        "T_step": step,
    }
    if rng.random() < 0.2:
        data["T_min"] = data["T_max"] = period // step * step
    else:
        data["T_min"], data["T_max"] = rng.choice([(600, 14400), (600, 9000), (period // 2, period + 40 * step)])
    fewest = (points + 1) // 2
    data["N_min"], data["N_max"] = rng.choice([(3, max(3, fewest + 2)), (1, 20), (3, 12 + points), (fewest, fewest + 1)])
    if model == "M1":
        data["join_cost"] = rng.choice([0, 3, 7])
    else:
        data["K_max"], data["tee_cost"] = rng.choice([2, 3]), rng.choice([0, 4])
    if rng.random() < 0.25:
        # Some points keep to one size.
        near = [max(s for s in range(len(sizes)) if sizes[s] <= u or s == 0) for u in volumes]
        data["kept_size"] = [near[i] if rng.random() < 0.2 else None for i in range(points)]
    return {"id": name, "model": model, "data": data}


def solve(case):
    """The optimal objective, or None if there is no answer."""
    data = case["data"]
    points, sizes = range(len(data["demand"])), range(len(data["sizes"]))
    kept = data.get("kept_size", [None] * len(points))
    model = cp_model.CpModel()
    steps = model.new_int_var(-(-data["T_min"] // data["T_step"]), data["T_max"] // data["T_step"], "steps")
    period = steps * data["T_step"]
    pistons = [model.new_int_var(0, data["N_max"], f"pistons{s}") for s in sizes]
    cost = sum(data["piston_cost"][s] * pistons[s] for s in sizes)
    model.add_linear_constraint(sum(pistons), data["N_min"], data["N_max"])
    if case["model"] == "M1":
        one = [[model.new_bool_var(f"one{i},{s}") for s in sizes] for i in points]
        two = [[model.new_bool_var(f"two{i},{s}") for s in sizes] for i in points]
        for i in points:
            model.add_exactly_one(one[i] + two[i])
        for s in sizes:
            model.add(sum(one[i][s] + 2 * two[i][s] for i in points) == 2 * pistons[s])
        outlets = [[one[i][s] + 2 * two[i][s] for s in sizes] for i in points]
        cost += data["join_cost"] * sum(two[i][s] for i in points for s in sizes)
    else:
        outlets = [[model.new_int_var(0, data["K_max"], f"outlets{i},{s}") for s in sizes] for i in points]
        for i in points:
            model.add_linear_constraint(sum(outlets[i]), 1, data["K_max"])
            cost += data["tee_cost"] * (sum(outlets[i]) - 1)
        for s in sizes:
            model.add(sum(outlets[i][s] for i in points) == 2 * pistons[s])
    for i in points:
        given = 360000 * sum(data["sizes"][s] * outlets[i][s] for s in sizes)
        model.add(data["lo"][i] * data["demand"][i] * period <= given)
        model.add(given <= data["hi"][i] * data["demand"][i] * period)
        for s in sizes:
            if kept[i] is not None and s != kept[i]:
                model.add(outlets[i][s] == 0)
    model.minimize(cost)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.max_time_in_seconds = 300
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    if status != cp_model.OPTIMAL:
        raise SystemExit(f"{case['id']}: not proven within the time: {solver.status_name(status)}")
    return round(solver.objective_value)


def instances():
    rng = random.Random(SEED)
    for number in range(1, 161):
        model = "M1" if number % 2 else "M2"
        points = rng.randint(2, 9) if number <= 100 else rng.randint(8, 18)
        yield instance(rng, f"R{number:03}", model, points, rng.choice(SERIES), rng.choice([10, 10, 30, 1]))
    # With tees such sizes take this solver minutes to hours, so the largest are split or joined only.
    for number in range(161, 173):
        yield instance(rng, f"R{number:03}", "M1", rng.randint(24, 34), SERIES[number % 3], 10)


def main():
    solved = []
    for case in instances():
        case["objective"] = solve(case)
        print(case["id"], case["model"], len(case["data"]["demand"]), case["objective"], file=sys.stderr, flush=True)
        solved.append(case)
    if "--compare" in sys.argv:
        stored = json.loads(TARGET.read_text())["instances"]
        differ = [a["id"] for a, b in zip(solved, stored, strict=True) if a != b]
        raise SystemExit(f"differ from the file: {differ}" if differ else 0)
    note = (
        "Random one-divider metering instances; units and models as in one_divider.json, kept_size names the only size "
        f"a point may use. Standing: own instances, objectives proven by an independent constraint solver (OR-Tools "
        f"CP-SAT {ortools.__version__}, seed {SEED}); null: proven to have no answer. Made by "
        "reference/independent/metering_ortools.py."
    )
    rows = ",\n".join("  " + json.dumps(case) for case in solved)
    TARGET.write_text('{\n "note": ' + json.dumps(note) + ',\n "instances": [\n' + rows + "\n ]\n}\n")


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Makes every table again in a temporary folder and compares it with the one kept here.

    python3 reference/independent/check_tables.py --compare

Ends with 1 and names the first differing cells if a number differs by more than 1e-9 of itself, a word or a column
differs, or a row is missing.
"""

import csv
import pathlib
import sys
import tempfile

import own_venv

own_venv.enter()

import make_tables  # noqa: E402

KEPT = pathlib.Path(__file__).resolve().parent
BOUND = 1e-9
SHOWN = 10


def cells(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.reader(line for line in file if not line.startswith("#")))


def same(kept, made):
    if kept == made:
        return True
    try:
        one, other = float(kept), float(made)
    except ValueError:
        return False
    return abs(one - other) <= BOUND * max(abs(one), abs(other))


def differences(name, kept, made):
    if not kept.exists():
        return [f"{name}: not kept; run make_tables.py"]
    one, other = cells(kept), cells(made)
    if len(one) != len(other):
        return [f"{name}: {len(one)} lines are kept, {len(other)} were made"]
    found = []
    for line, (left, right) in enumerate(zip(one, other)):
        if len(left) != len(right):
            found.append(f"{name}: row {line} has {len(left)} cells, made with {len(right)}")
            continue
        for column, a, b in zip(one[0], left, right):
            if not same(a, b):
                found.append(f"{name}: row {line}, {column}: kept {a}, made {b}")
    return found


def main():
    if "--compare" not in sys.argv[1:]:
        print(__doc__)
        return 2
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        make_tables.make(folder)
        found = []
        for name, *_ in make_tables.TABLES:
            found += differences(name, KEPT / name, folder / name)
    for line in found[:SHOWN]:
        print(line)
    if found:
        print(f"{len(found)} cells differ")
        return 1
    print(f"{len(make_tables.TABLES)} tables agree within {BOUND:g}")
    return 0


if __name__ == "__main__":
    sys.exit(main())

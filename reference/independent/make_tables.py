#!/usr/bin/env python3
"""Makes the tables of this folder again, from independent libraries and from routes that are not the program's.

    python3 reference/independent/make_tables.py            # writes the tables beside this file
    python3 reference/independent/make_tables.py FOLDER     # writes them elsewhere

Needs python3 (3.11 or later) and pip; the libraries go into a virtual environment of its own. Seeds are fixed.
"""

import pathlib
import sys

import own_venv

own_venv.enter()

import tables_air  # noqa: E402
import tables_demand  # noqa: E402
import tables_flow  # noqa: E402
import tables_oil  # noqa: E402
import tables_strength  # noqa: E402

TABLES = [*tables_flow.TABLES, *tables_oil.TABLES, *tables_strength.TABLES, *tables_air.TABLES,
          *tables_demand.TABLES]


def number(value):
    """Fifteen digits; words as they are."""
    return value if isinstance(value, str) else format(float(value), ".15g")


def write(folder, name, about, columns, rows):
    rows = list(rows)
    lines = [f"# {line}" for line in about.strip().splitlines()]
    lines += [f"# rows = {len(rows)}", ",".join(columns)]
    for row in rows:
        assert len(row) == len(columns), (name, row)
        lines.append(",".join(number(value) for value in row))
    (folder / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def make(folder):
    for name, about, columns, rows in TABLES:
        write(folder, name, about, columns, rows())
        print(f"{name}", file=sys.stderr)


if __name__ == "__main__":
    target = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else pathlib.Path(__file__).resolve().parent
    target.mkdir(parents=True, exist_ok=True)
    make(target)

#!/usr/bin/env python3
"""Times SciPy on the pipe law of grease, for a comparison side by side with the program.

    python3 reference/independent/scipy_pipe.py [CASES]

Prints seconds for one flow and for one pressure drop, each by integrating the flow curve.
"""

import sys
import time

import own_venv

own_venv.enter()

import tables_flow  # noqa: E402


def main():
    wanted = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    grease = [line[1:] for line in tables_flow.lines(20240118) if line[0] == "herschel-bulkley"]
    cases = [grease[i % len(grease)] for i in range(wanted)]

    start = time.perf_counter()
    flows = [tables_flow.flow(*case) for case in cases]
    one_flow = (time.perf_counter() - start) / wanted

    few = list(zip(cases, flows))[: max(1, wanted // 20)]
    start = time.perf_counter()
    for (bore, length, _, *fluid), flow in few:
        tables_flow.drop(bore, length, flow, *fluid)
    one_drop = (time.perf_counter() - start) / len(few)

    print(f"scipy flow of a Herschel-Bulkley fluid: {one_flow:.3e} s each, {wanted} cases")
    print(f"scipy drop of a Herschel-Bulkley fluid: {one_drop:.3e} s each, {len(few)} cases")


if __name__ == "__main__":
    main()

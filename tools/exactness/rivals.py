#!/usr/bin/env python3
"""Times the two general-purpose solvers on the problems that `print_problem` wrote, for `cargo xtask bench`.

Reads lines on standard input; prints, per line, JSON with each solver's seconds, whether it finished in its time, and
whether its cents are thirdwire's. Both minimise cents alone, which is easier for them than cents, openings and devices;
both run on one thread; the time to write the model down is left out.
"""

import json
import sys

import branch_and_cut
import cpsat
from order import Order
from problem import read
from reduced import worthwhile


def main():
    seconds = float(sys.argv[1])
    for line in sys.stdin:
        row = json.loads(line)
        problem, ours = read(row["problem"]), row["answer"].get("cost")
        kept = worthwhile(problem)
        told = {}
        for name, most, solve in (
            ("milp", 2**53, lambda *given: branch_and_cut.solve(*given, in_one_go=True)),
            ("cp-sat", 2**62, cpsat.solve),
        ):
            found = solve(problem, kept, Order(problem, kept, row["weights"], most, ties=False), seconds)
            finished = found.cost is not None and found.seconds < seconds
            same = finished and ours is not None and found.cost[0] == ours[0]
            told[name] = {"seconds": found.seconds, "finished": finished, "same": same}
        print(json.dumps(told), flush=True)


if __name__ == "__main__":
    main()

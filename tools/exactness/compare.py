#!/usr/bin/env python3
"""Holds thirdwire's optimum against two general-purpose solvers on generated dwellings.

Usage, in a virtual environment made from the requirements.txt beside this file:

    python3 tools/exactness/compare.py [--sizes 10d:80,15:50,...] [--random 400] [--at-least 300] [--seconds 6]

Every dwelling goes through `cargo xtask dwellings`, the `print_problem` example of `remedies`, a mixed-integer linear
program with directed cuts in HiGHS, and a constraint program in CP-SAT, each on one thread. All three must find the same
cost: cents, openings in walls, devices. Random problems of the optimizer follow, for what no dwelling holds: these may
also have no answer, and then all must say so. Each answer is costed again in whole numbers by `problem.py`, which refuses what
is not lawful. The exit code is 1 on a disagreement, or where fewer dwellings than asked for were proved by both models.
A model that proves nothing in its time is counted and told. At the end one cent is taken off a cost
behind the models' backs: a comparison that did not notice would be worth nothing.
"""

import argparse
import json
import multiprocessing
import os
import subprocess
import sys
import time
from pathlib import Path

import branch_and_cut
import cpsat
from order import Order
from problem import choice_of, cost_of, read
from reduced import worthwhile

ROOT = Path(__file__).resolve().parents[2]
# So many dwellings are altered by a cent at the end.
ALTERED = 5
SIZES = "10:110,15:90,20:90,30:30,40:20,10d:30,15d:20,60:6,80:4,100:3,150:2"
# Sums of whole numbers stay exact in each solver's numbers below these.
MOST = {"milp": 2**53, "cp-sat": 2**62}
SOLVERS = {"milp": branch_and_cut.solve, "cp-sat": cpsat.solve}


def program(package, name, is_example):
    """Builds one of the project's programs and tells where it is."""
    kind = "--example" if is_example else "--bin"
    build = ["cargo", "build", "--quiet", "--locked", "--release", "--package", package, kind, name]
    subprocess.run([*build, "--message-format", "json-render-diagnostics"], check=True, cwd=ROOT, stdout=subprocess.DEVNULL)
    target = Path(os.environ.get("CARGO_TARGET_DIR", "target")) / "release"
    return ROOT / (target / "examples" if is_example else target) / name


def printed(sizes, random, seed):
    """The problems of the dwellings and the random ones, as lines."""
    make, show = program("xtask", "xtask", False), program("remedies", "print_problem", True)
    lines = []
    for boxes, drawn, count in sizes:
        asked = {"--boxes": boxes, "--count": count, "--seed": seed, "--drawn": int(drawn)}
        words = [str(word) for pair in asked.items() for word in pair]
        made = subprocess.run([make, "dwellings", *words], check=True, capture_output=True).stdout
        shown = subprocess.run([show], input=made, check=True, capture_output=True).stdout
        lines += shown.decode().splitlines()
    dwellings = len(lines)
    made_up = subprocess.run([show, "--random", str(random), str(seed)], check=True, capture_output=True).stdout
    return lines + made_up.decode().splitlines(), dwellings


def cheaper_by_a_cent(problem, answer):
    """The problem with one cent off one option that thirdwire chose."""
    for tree, chosen in zip(problem.trees, answer["solution"]["nodes"]):
        for node, (option, _) in zip(tree.nodes, chosen):
            cents, *rest = node.options[option].cost
            node.options[option].cost = (cents - 1, *rest)
            return problem
    return problem


def held_against_models(job):
    """What each model says of one dwelling: rows of (model, verdict, seconds), and what is wrong, if anything."""
    line, seconds, perturb = job
    row = json.loads(line)
    name, problem, answer = row["name"], read(row["problem"]), row["answer"]
    wrong, told = [], []
    if not answer["proved"]:
        return name, [("thirdwire", "not proved", row["solve_us"] / 1e6)], wrong
    ours = None if answer.get("infeasible") else tuple(answer["cost"])
    if ours is not None:
        try:
            recosted = cost_of(problem, choice_of(answer))
            if recosted != ours:
                wrong.append(f"thirdwire says {ours}, its choice costs {recosted}")
        except ValueError as fault:
            wrong.append(f"thirdwire's choice is not lawful: {fault}")
    if perturb:
        problem = cheaper_by_a_cent(problem, answer)
    kept = worthwhile(problem)
    for model, solve in SOLVERS.items():
        try:
            found = solve(problem, kept, Order(problem, kept, row["weights"], MOST[model]), seconds)
        except (ValueError, OverflowError) as fault:
            wrong.append(f"{model}: {fault}")
            continue
        if not found.proved:
            verdict = "not proved"
            if found.cost is not None and ours is not None and found.cost < ours:
                wrong.append(f"{model} found {found.cost}, cheaper than {ours}")
        elif found.cost == ours or (not found.exact and None not in (found.cost, ours) and found.cost[0] == ours[0]):
            verdict = "agrees" if found.exact else "agrees in cents"
        else:
            verdict = "DISAGREES"
            wrong.append(f"{model} proves {found.cost}, thirdwire {ours}")
        told.append((model, verdict, found.seconds))
    return name, told, wrong


def sizes_of(text):
    """Triples of boxes, whether the floors are drawn, and how many dwellings."""
    pairs = [part.split(":") for part in text.split(",")]
    return [(int(boxes.removesuffix("d")), boxes.endswith("d"), int(count)) for boxes, count in pairs]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--sizes", type=sizes_of, default=SIZES, help="BOXES:COUNT,...; BOXESd with a plan of the floors, from which ways are built")
    parser.add_argument("--random", type=int, default=400, help="how many random problems besides the dwellings")
    parser.add_argument("--at-least", type=int, default=300)
    parser.add_argument("--seconds", type=float, default=6, help="for one model and one dwelling")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=os.cpu_count())
    parser.add_argument("--slow", type=float, default=5, help="tell of runs that took longer than so many seconds")
    arguments = parser.parse_args()

    begun = time.monotonic()
    lines, dwellings = printed(arguments.sizes, arguments.random, arguments.seed)
    tally = Tally(arguments.slow)
    with multiprocessing.Pool(arguments.workers) as pool:
        for told in pool.imap(held_against_models, [(line, arguments.seconds, False) for line in lines[:dwellings]]):
            tally.add(*told)
        proved = tally.proved_by_both
        for told in pool.imap(held_against_models, [(line, arguments.seconds, False) for line in lines[dwellings:]]):
            tally.add(*told)
        altered = pool.map(held_against_models, [(line, arguments.seconds, True) for line in lines[:ALTERED]])
    print(f"compare: {dwellings} dwellings, {len(lines) - dwellings} random problems, seed {arguments.seed}, "
          f"{time.monotonic() - begun:.0f} s")
    for (model, verdict), count in sorted(tally.counts.items()):
        print(f"  {model:10} {verdict:20} {count:4}")
    print(f"  the same optimum proved by thirdwire and both models: {proved} dwellings, "
          f"{tally.proved_by_both - proved} random problems; disagreements: {tally.disagreements}")
    unnoticed = [name for name, _, wrong in altered if len(wrong) < len(SOLVERS)]
    print(f"  altered by a cent: {len(altered)}, noticed by both models: {len(altered) - len(unnoticed)}")
    if proved < arguments.at_least:
        print(f"compare: fewer than {arguments.at_least} dwellings", file=sys.stderr)
    return int(tally.disagreements > 0 or proved < arguments.at_least or bool(unnoticed))


class Tally:
    """What came of the comparisons so far; what is slow or wrong is told at once."""

    def __init__(self, slow):
        self.slow, self.counts, self.proved_by_both, self.disagreements = slow, {}, 0, 0

    def add(self, name, told, wrong):
        for model, verdict, seconds in told:
            self.counts[model, verdict] = self.counts.get((model, verdict), 0) + 1
            if seconds > self.slow or verdict.startswith("not proved"):
                print(f"  {name}: {model} {verdict}, {seconds:.1f} s", flush=True)
        self.proved_by_both += len(told) == len(SOLVERS) and all(verdict.startswith("agrees") for _, verdict, _ in told)
        if wrong:
            self.disagreements += 1
            print(f"  {name}: " + "; ".join(wrong), flush=True)


if __name__ == "__main__":
    sys.exit(main())

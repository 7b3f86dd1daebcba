#!/usr/bin/env python3
"""Runs the optimizer's `solve` example over a folder of `.stp` instances and compares it with the published optima.

The folder holds `index.csv` with at least the columns `file`, `family` and `optimum`, and the instances it names
(plain or gzip). Prints, per family, how many were proved optimal within 1 s, 10 s and 60 s of
processor time (the limit itself is by the clock), and every mismatch.

    cargo build --release -p optimizer --example solve
    python3 tools/benchmarks/steiner.py FOLDER --seconds 20 [--family NAME ...] [--out results.csv] [--only unsolved.csv]
"""
import argparse
import csv
import gzip
import pathlib
import re
import resource
import subprocess
import sys
import time
from decimal import Decimal

LINE = re.compile(r"(optimal|best) cost (\S+) bound (\S+) nodes (\d+) seconds (\S+)")


def cpu():
    """What this process's children have taken of the processor, in seconds."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def run(solver, folder, row, seconds):
    path = folder / row["file"]
    data = gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()
    started, spent = time.monotonic(), cpu()
    try:
        done = subprocess.run([solver, "-", "--seconds", str(seconds)], input=data, capture_output=True, timeout=seconds * 3 + 30)
        text = done.stdout.decode() or done.stderr.decode().strip()
    except subprocess.TimeoutExpired:
        text = "killed"
    found = LINE.search(text)
    result = {"file": row["file"], "family": row["family"], "optimum": row["optimum"], "state": "failed", "cost": "", "bound": "",
              "nodes": "", "wall": "", "seconds": f"{time.monotonic() - started:.3f}", "note": ""}
    if not found:
        result["note"] = text[-200:]
        return result
    result.update(state=found[1], cost=found[2], bound=found[3], nodes=found[4], wall=found[5], seconds=f"{cpu() - spent:.3f}")
    optimum, cost, bound = (None if word in ("", "none") else Decimal(word) for word in (row["optimum"], found[2], found[3]))
    tolerance = Decimal("0.00001") if "." in row["optimum"] else Decimal(0)
    if optimum is not None and cost is not None:
        if found[1] == "optimal" and abs(cost - optimum) > tolerance:
            result["note"] = "WRONG: claimed optimal"
        elif cost < optimum - tolerance or (bound is not None and bound > optimum + tolerance):
            result["note"] = "WRONG: beyond the optimum"
    return result


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--family", action="append")
    parser.add_argument("--solver", default="target/release/examples/solve")
    parser.add_argument("--out", type=pathlib.Path)
    parser.add_argument("--only", type=pathlib.Path, help="results of a run before; what it did not solve is run again")
    args = parser.parse_args()
    with open(args.folder / "index.csv", newline="") as file:
        rows = [row for row in csv.DictReader(file) if not args.family or row["family"] in args.family]
    kept = {}
    if args.only:
        with open(args.only, newline="") as file:
            kept = {row["file"]: row for row in csv.DictReader(file) if row["state"] == "optimal"}
    results = [kept[row["file"]] for row in rows if row["file"] in kept]
    for row in rows:
        if row["file"] in kept:
            continue
        result = run(args.solver, args.folder, row, args.seconds)
        results.append(result)
        if result["state"] != "optimal" or result["note"]:
            print("  ", *(result[key] for key in ("file", "state", "cost", "bound", "optimum", "nodes", "seconds", "note")), flush=True)
    if args.out:
        with open(args.out, "w", newline="") as file:
            writer = csv.DictWriter(file, fieldnames=list(results[0]))
            writer.writeheader()
            writer.writerows(results)
    print(f"{'family':22} {'of':>4} {'1 s':>4} {'10 s':>4} {'60 s':>4}")
    for family in sorted({row["family"] for row in rows}):
        mine = [result for result in results if result["family"] == family]
        within = [sum(r["state"] == "optimal" and float(r["seconds"]) <= limit for r in mine) for limit in (1, 10, 60)]
        print(f"{family:22} {len(mine):4} {within[0]:4} {within[1]:4} {within[2]:4}")
    wrong = [result for result in results if result["note"]]
    print(f"mismatches: {len(wrong)}")
    sys.exit(bool(wrong))


if __name__ == "__main__":
    main()

"""Holds the arithmetic of estimates against an independent library that recalculates spreadsheets: every formula of the
workbooks that the program writes must give the cents that the program says, a cell that is falsified must be noticed, and the packs
to buy must follow a quantity that is changed."""

import json
import logging
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import formulas
import openpyxl

EXAMPLES = ["bungalow", "flat", "knob-and-tube"]
DRAWN_AT_RANDOM = 2
ROOT = Path(__file__).resolve().parents[2]
PROGRAM = ROOT / os.environ.get("CARGO_TARGET_DIR", "target") / "release" / "thirdwire"
# A book in which nearly every unit is rounded, with every charge. Its figures are invented.
FULL = """format = 1
hour = 97.31
helper-hour = 53.77
[material]
gfci = 24.00
three-slot = 3.17
ground-wire-14-ft = 0.235
[packs]
ground-wire-14-ft = [25, 50, 250]
plate = [3, 11]
label = [25, 100]
gfci = [1, 3]
[crew]
hours-a-day = 6
tasks-for-two = ["fish-bay", "past-fire-block", "through-floor", "fish-foot"]
[conditions]
open = 73
plaster = 127
attic = 119
crawl-space = 131
[charges]
waste-percent = 7
markup-percent = 15
tax-percent = 6.25
trip = 41.50
permit = 119.99
contingency-percent = 4.5
minimum = 900.00
round-to = 25.00
"""
# Things of that book whose packs do not go into each other.
ODD_SIZES = ["plate"]
# By how much a quantity is changed, to see packs follow it.
MORE = 137
# What a sheet of formulas has at least, so that a check of nothing is seen.
LEAST_CELLS = 60


def thirdwire(*args, given=None):
    said = subprocess.run([str(PROGRAM), *args], capture_output=True, text=True, input=given)
    if said.returncode not in (0, 3):
        sys.exit(f"thirdwire {' '.join(args)}: {said.stderr}")
    return said.stdout


def recalculated(path):
    """By sheet and cell: what every formula gives, worked out anew by the library."""
    model = formulas.ExcelModel().loads(str(path)).finish()
    solution = model.calculate()
    book = openpyxl.load_workbook(path)
    found = {}
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if isinstance(cell.value, str) and cell.value.startswith("="):
                    name = f"'[{path.name}]{sheet.title.upper()}'!{cell.coordinate}"
                    value = solution[name].value[0, 0]
                    found[sheet.title, cell.coordinate] = float(value)
    return found


def cached(path):
    """By sheet and cell: what the program wrote as the result of every formula."""
    shown, written = openpyxl.load_workbook(path, data_only=True), openpyxl.load_workbook(path)
    found = {}
    for sheet in written.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if isinstance(cell.value, str) and cell.value.startswith("="):
                    found[sheet.title, cell.coordinate] = float(shown[sheet.title][cell.coordinate].value)
    return found


def faults_of_cells(path):
    again, said = recalculated(path), cached(path)
    if len(said) < LEAST_CELLS:
        return [f"only {len(said)} formulas"], 0
    wrong = [at for at in said if abs(said[at] - again[at]) > 1e-6]
    return [f"{sheet}!{cell}: {said[sheet, cell]} said, {again[sheet, cell]} worked out" for sheet, cell in wrong], len(said)


def faults_of_sums(path, answer):
    """What the answer says against the cells of the summary."""
    cells = cached(path)
    owner, price = answer["owner"], answer["price"]
    expected = [
        ("B2", price["material_cents"]),
        ("B3", price["labour_cents"]),
        ("B4", owner["work_cents"]),
        ("B5", owner["trips_cents"]),
        ("B6", owner["contingency_cents"]),
        ("B7", owner["permit_cents"]),
        ("B8", owner["to_minimum_cents"]),
        ("B9", owner["rounding_cents"]),
        ("B10", owner["total_cents"]),
        ("B12", owner["work_cents"]),
        ("B13", owner["days"] * 100),
    ]
    return [f"Estimate!{at} is not {cents}" for at, cents in expected if round(cells["Estimate", at] * 100) != cents]


def is_noticed(path):
    """Whether a price that is falsified by a cent makes other cells wrong."""
    book = openpyxl.load_workbook(path)
    book["Material"]["G2"].value = round(book["Material"]["G2"].value + 0.01, 2)
    altered = path.with_name("altered.xlsx")
    book.save(altered)
    again, said = recalculated(altered), cached(path)
    return any(abs(said[at] - again[at]) > 1e-6 for at in said)


def best_buy(need, sizes):
    """Pieces in all packs and how many packs: what leaves the least over, then the fewest packs; by trying every sum."""
    fewest = {0: 0}
    for made in range(1, need + max(sizes) + 1):
        before = [fewest[made - size] for size in sizes if made - size in fewest]
        if before:
            fewest[made] = min(before) + 1
    made = min(made for made in fewest if made >= need)
    return made, fewest[made]


def faults_of_packs(path):
    """What is bought after the first line of each thing was changed, against the best buy of what is then needed."""
    book, changed = openpyxl.load_workbook(path), set()
    for row in book["Lines"].iter_rows(min_row=2):
        if row[4].value in ("pieces", "feet") and row[5].value not in changed:
            changed.add(row[5].value)
            row[6].value += MORE
    sizes = {}
    for row in book["Packs"].iter_rows(min_row=2):
        sizes.setdefault(row[0].value, []).append((row[1].value, row[3].coordinate, row[4].coordinate))
    altered = path.with_name("more.xlsx")
    book.save(altered)
    before, again = cached(path), recalculated(altered)
    faults = []
    for row in book["Material"].iter_rows(min_row=2):
        thing, needed = row[0].value, round(again["Material", row[4].coordinate])
        bought = round(again["Material", row[5].coordinate])
        if needed < before["Material", row[4].coordinate] + MORE:
            faults.append(f"{thing}: {needed} are needed, and {MORE} more lines change nothing")
        found, expected = (bought, None), (needed, None)
        if thing in sizes:
            found = (bought, round(sum(again["Packs", count] for _, count, _ in sizes[thing])))
            expected = best_buy(needed, [size for size, _, _ in sizes[thing]])
            # Of sizes that do not go into each other the largest are taken first: enough, if not the best.
            if thing in ODD_SIZES and bought >= needed:
                expected = found
        if found != expected:
            faults.append(f"{thing}: {found} bought for {needed}, {expected} is the best buy")
    return faults


def drawn_at_random(folder):
    flags = ["--boxes", "10", "--count", str(DRAWN_AT_RANDOM), "--seed", "7"]
    command = ["cargo", "run", "--quiet", "--locked", "--package", "xtask", "--", "dwellings", *flags]
    said = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    for number, line in enumerate(said.splitlines()):
        path = folder / f"drawn-{number}.json"
        path.write_text(line)
        yield f"drawn {number}", [str(path)]


def main():
    logging.disable(logging.WARNING)
    build = ["cargo", "build", "--quiet", "--locked", "--release", "--package", "thirdwire"]
    subprocess.run(build, cwd=ROOT, check=True)
    failed, cells, made = 0, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        full = folder / "full.toml"
        full.write_text(FULL)
        surveys = [(name, ["--example", name]) for name in EXAMPLES] + list(drawn_at_random(folder))
        for name, survey in surveys:
            demo = [("demo", [])] if name in EXAMPLES else []
            for book, prices in [*demo, ("full", ["--prices", str(full)])]:
                path = folder / "estimate.xlsx"
                answer = json.loads(thirdwire("estimate", *survey, *prices, "--json", "--xlsx", str(path)))
                found, count = faults_of_cells(path)
                found += faults_of_sums(path, answer)
                found += faults_of_packs(path)
                for fault in found:
                    print(f"{name}, {book} book: {fault}", file=sys.stderr)
                failed, cells, made = failed + len(found), cells + count, made + 1
        if not is_noticed(path):
            print("a price that was falsified by a cent was not noticed", file=sys.stderr)
            failed += 1
    print(f"{made} estimates recalculated, {cells} cells, {failed} faults")
    sys.exit(1 if failed else 0)


main()

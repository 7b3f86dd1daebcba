"""Holds the papers against the plan by two independent readers of PDF: qpdf for their form, pdftotext for what they say."""

import json
import os
import re
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

from layout import faults_of_layout, pages_of, unnoticed

EXAMPLES = ["bungalow", "flat", "knob-and-tube"]
# Published: ISO 216, A4 is 210 mm by 297 mm; ANSI/ASME Y14.1, size A is 8.5 in by 11 in. In points of 1/72 in.
SIZES = {"letter": (612.0, 792.0), "a4": (210 / 25.4 * 72, 297 / 25.4 * 72)}
ROOT = Path(__file__).resolve().parents[2]
PROGRAM = ROOT / os.environ.get("CARGO_TARGET_DIR", "target") / "release" / "thirdwire"
MARKINGS = ["GFCI Protected", "No Equipment Ground"]


def thirdwire(*args, codes=(0, 3)):
    said = subprocess.run([str(PROGRAM), *args], capture_output=True, text=True)
    if said.returncode not in codes:
        sys.exit(f"thirdwire {' '.join(args)}: {said.stderr}")
    return json.loads(said.stdout)


def text_of(path, *flags):
    said = subprocess.run(["pdftotext", *flags, str(path), "-"], capture_output=True, text=True, check=True)
    return " ".join(said.stdout.split())


def facts_of(path):
    said = subprocess.run(["pdfinfo", str(path)], capture_output=True, text=True, check=True)
    return dict(line.split(":", 1) for line in said.stdout.splitlines() if ":" in line)


def faults_of_form(path, size, pages, job):
    found = []
    checked = subprocess.run(["qpdf", "--check", str(path)], capture_output=True, text=True)
    if checked.returncode != 0:
        found.append(f"qpdf: {checked.stdout}{checked.stderr}")
    facts = {key: value.strip() for key, value in facts_of(path).items()}
    width, height = (float(part) for part in facts["Page size"].split("pts")[0].split(" x "))
    if abs(width - SIZES[size][0]) > 0.1 or abs(height - SIZES[size][1]) > 0.1:
        found.append(f"the page is {facts['Page size']}")
    if facts["Tagged"] != "yes" or int(facts["Pages"]) != pages or job not in facts["Title"]:
        found.append(f"title, tags or pages: {facts}")
    fonts = subprocess.run(["pdffonts", str(path)], capture_output=True, text=True, check=True).stdout
    for line in fonts.splitlines()[2:]:
        embedded, subset, unicode = line.split()[-5:-2]
        if (embedded, subset, unicode) != ("yes", "yes", "yes"):
            found.append(f"a font is not embedded: {line}")
    for page in range(1, pages + 1):
        said = text_of(path, "-f", str(page), "-l", str(page))
        for words in [job, "2026-11-25", f"Page {page} of {pages}"]:
            if words not in said:
                found.append(f"page {page} does not say `{words}`")
    return found


def faults_of_words(folder, plan, readings, estimate):
    found = []
    order = text_of(folder / "work-order.pdf")
    planned = Counter()
    for opening in plan["openings"]:
        planned.update(opening["markings"])
        if opening["price"]["total_cents"] > 0 and f"{opening['box']} " not in order:
            found.append(f"the work order does not name {opening['box']}")
        for condition in opening["conditions"] if opening["step"] != "leave" else []:
            if condition not in order:
                found.append(f"the work order does not say `{condition}`")
    for caution in plan["cautions"]:
        if caution[1:] not in order:
            found.append(f"the work order does not say `{caution}`")
    directory = text_of(folder / "circuit-directory.pdf")
    record = text_of(folder / "test-record.pdf")
    packet = text_of(folder / "inspection-packet.pdf")
    proposal = text_of(folder / "proposal.pdf")
    for opening in plan["openings"]:
        for name, said in [("circuit directory", directory), ("inspection packet", packet)]:
            if opening["box"] not in said:
                found.append(f"the {name} does not name {opening['box']}")
    for reading in readings:
        expected = [part["words"] for part in (reading["no_load"] or {}).values() if part]
        for words in [reading["box"], *expected]:
            if words not in record:
                found.append(f"the test record does not say `{words}`")
    for offer in plan["offers"]["offers"]:
        for words in [offer["name"], f"${offer['owner_cents'] / 100:,.2f}"]:
            if words not in proposal:
                found.append(f"the proposal does not say `{words}`")
    shopping = text_of(folder / "material-list.pdf")
    for thing in estimate["material"]:
        unit = " ft" if thing["of"] == "feet" else ""
        words = thing["says"].rstrip(".").removeprefix("A foot of ")
        if f"{thing['needed']}{unit} {words}" not in shopping:
            found.append(f"the material list does not say `{thing['needed']}{unit} {words}`")
    labels = folder / "labels.pdf"
    printed = text_of(labels) if labels.exists() else ""
    for words in MARKINGS:
        if printed.count(words) != planned[words]:
            found.append(f"`{words}`: {printed.count(words)} on the labels, {planned[words]} in the plan")
    return found


def faults_of_certificates(size):
    """The certificate of the cottage that is done, and none of the one that is not."""
    found = []
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "certificate.pdf"
        args = ["--certificate", str(path), "--paper", size, "--date", "2026-11-25", "--json"]
        half = thirdwire("prove", "--example", "cottage-half-done", *args, codes=(4,))
        if path.exists() or not half["left"]:
            found.append("a certificate of work that is not proved")
        proof = thirdwire("prove", "--example", "cottage-done", *args, codes=(0,))
        found.extend(faults_of_form(path, size, int(facts_of(path)["Pages"]), proof["job"]))
        said = text_of(path)
        needed = [opening["box"] for opening in proof["openings"]]
        needed += ["certifies the readings that were written down", "Licensed electrician", "open ground"]
        found.extend(f"the certificate does not say `{words}`" for words in needed if words not in said)
        unread = thirdwire("prove", "--example", "bungalow", "--json", codes=(3,))
        if unread["counts"]["proved"] or unread["counts"]["contradicts"]:
            found.append("something is proved that nobody read")
    return found


def main():
    build = ["cargo", "build", "--quiet", "--locked", "--release", "--package", "thirdwire"]
    subprocess.run(build, cwd=ROOT, check=True)
    failed = 0
    for name in EXAMPLES:
        plan = thirdwire("plan", "--example", name, "--offers", "--json")
        estimate = thirdwire("estimate", "--example", name, "--json")
        readings = thirdwire("checks", "--example", name, "--json")["expected_readings"]
        for size in SIZES:
            with tempfile.TemporaryDirectory() as folder:
                folder = Path(folder)
                args = ["--example", name, "-o", str(folder), "--paper", size, "--date", "2026-11-25", "--json"]
                told = thirdwire("papers", *args)
                found = faults_of_words(folder, plan, readings, estimate)
                if sorted(file["file"] for file in told["files"]) != sorted(path.name for path in folder.iterdir()):
                    found.append("the files that are told are not those that were written")
                said = " ".join(text_of(path) for path in folder.iterdir())
                for title in set(re.findall("(?<!this )paper “([^”]+)”", said)) - {file["title"] for file in told["files"]}:
                    found.append(f"a paper names the paper `{title}`, which is not in the set")
                for file in told["files"]:
                    faults = faults_of_form(folder / file["file"], size, file["pages"], plan["job"]["name"])
                    faults += faults_of_layout(folder / file["file"], labels=file["file"] == "labels.pdf")
                    found.extend(f"{file['file']}: {fault}" for fault in faults)
                missed = unnoticed(pages_of(folder / "work-order.pdf"))
                found.extend(f"the checks do not see {fault}" for fault in missed)
                for fault in found:
                    print(f"{name} {size}: {fault}", file=sys.stderr)
                failed += len(found)
                print(f"{name} {size}: {len(told['files'])} papers read, {len(found)} faults")
    for size in SIZES:
        found = faults_of_certificates(size)
        for fault in found:
            print(f"certificate {size}: {fault}", file=sys.stderr)
        failed += len(found)
        print(f"certificate {size}: read, {len(found)} faults")
    sys.exit(1 if failed else 0)


main()

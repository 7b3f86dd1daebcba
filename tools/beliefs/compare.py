#!/usr/bin/env python3
"""Holds inference over circuit trees against a general-purpose library of Bayesian networks.

Usage, in a virtual environment made from the requirements.txt beside this file:

    python3 tools/beliefs/compare.py [--trees 100] [--seed 1]

The example `print_trees` of `simulation` prints trees with the odds of their runs, devices, readings and sightings, and what
inference makes of them. Here each becomes a network of nodes with tables, written from what the odds mean and not from how
inference goes about it: what each group of bonded boxes is joined to is found bottom-up and told top-down, and what cannot be
is ruled out by evidence. The library's exact inference must give every probability within 1e-9. At the end one odd is changed
behind the library's back: a comparison that did not notice would be worth nothing. The exit code is 1 on a disagreement.
"""

import argparse
import itertools
import json
import os
import subprocess
import sys
from pathlib import Path

import numpy
import pyagrum

ROOT = Path(__file__).resolve().parents[2]
WITHIN = 1e-9
# The ground of a run: sound, weak, loose here, cut off here, loose before, absent.
SOUND, WEAK, _, _, LOOSE_BEFORE, ABSENT = range(6)
# How a box's ground stands to the panel.
PANEL, POOR, BROKEN, NONE = range(4)
# What a group is joined to; the last cannot be.
NOTHING, NEUTRAL, HOT, CLASH = range(4)
NEUTRAL_JUMPER, REVERSED_JUMPER = 4, 5


def printed(trees, seed):
    """The trees, as the example prints them."""
    build = ["cargo", "build", "--quiet", "--locked", "--release", "--package", "simulation", "--example", "print_trees"]
    subprocess.run(build, check=True, cwd=ROOT)
    program = ROOT / os.environ.get("CARGO_TARGET_DIR", "target") / "release" / "examples" / "print_trees"
    shown = subprocess.run([program, str(trees), str(seed)], check=True, capture_output=True).stdout
    return [json.loads(line) for line in shown.decode().splitlines()]


class Net:
    """A Bayesian network under construction."""

    def __init__(self):
        self.net = pyagrum.BayesNet()
        self.evidence = {}

    def root(self, name, odds):
        """A node without parents."""
        self.net.add(pyagrum.LabelizedVariable(name, name, len(odds)))
        total = sum(odds)
        self.net.cpt(name)[:] = [one / total for one in odds]

    def follows(self, name, size, parents, rule):
        """A node that follows from its parents."""
        self.table(name, size, parents, lambda *states: [float(rule(*states) == state) for state in range(size)])

    def likely(self, name, parents, odds, greatest):
        """Evidence, as likely as its parents' states make it."""
        self.table(name, 2, parents, lambda *states: [1 - odds(*states) / greatest, odds(*states) / greatest])
        self.evidence[name] = 1

    def table(self, name, size, parents, row):
        """A node with the row of its table for each state of its parents."""
        self.net.add(pyagrum.LabelizedVariable(name, name, size))
        for parent in parents:
            self.net.addArc(parent, name)
        sizes = [self.net.variable(parent).domainSize() for parent in parents]
        rows = [row(*states) for states in itertools.product(*map(range, sizes))]
        axes = [name, *parents]
        table = numpy.array(rows).reshape(*sizes, size)
        # The table's axes stand in the reverse of the order of its names.
        order = [axes.index(axis) for axis in reversed(self.net.cpt(name).names)]
        table = table.transpose([len(parents) if place == 0 else place - 1 for place in order])
        self.net.cpt(name)[:] = numpy.ascontiguousarray(table)


def reach(before, ground):
    """How the ground stands beyond a run."""
    if ground == SOUND:
        return before
    if ground == WEAK:
        return POOR if before == PANEL else before
    return NONE if ground == ABSENT or before == NONE else BROKEN


def own_join(wiring, reached):
    """What a device joins its group to."""
    if wiring == REVERSED_JUMPER:
        return CLASH if reached <= POOR else HOT
    return NEUTRAL if wiring == NEUTRAL_JUMPER and reached > POOR else NOTHING


def both(one, other, ground):
    """Two findings of one group; of another group if the run between does not conduct."""
    if ground > WEAK:
        return CLASH if other == CLASH else one
    if NOTHING in (one, other) or one == other:
        return max(one, other)
    return CLASH


def arrival(reached, joined):
    """The number of what arrives in a box, as the odds of devices have it."""
    if reached <= POOR:
        return reached
    return (2 if reached == BROKEN else 5) + min(joined, HOT)


def path(before, state, ground):
    """How a conductor's path stands beyond a run; open is 3 where the bonded group begins behind the break."""
    worse = max(before, state)
    return 3 if worse == 2 and ground > WEAK else worse


def network(factors):
    """The network of a tree."""
    net = Net()
    has = factors["panel_has_ground"]
    net.root("panel", [has, 0.0, 0.0, 1 - has])
    boxes = factors["boxes"]
    fed = {number: [at for at, box in enumerate(boxes) if box["fed_by"] == number] for number in range(len(boxes))}
    for number, box in enumerate(boxes):
        parent = box["fed_by"]
        net.root(f"ground{number}", box["ground"])
        for wire in ("hot", "neutral"):
            net.root(f"{wire}{number}", box[wire])
            own = [f"{wire}{number}", f"ground{number}"]
            if parent is None:
                net.follows(f"{wire}_path{number}", 4, own, lambda state, ground: path(0, state, ground))
            else:
                parents = [f"{wire}_path{parent}", *own]
                net.follows(f"{wire}_path{number}", 4, parents, path)
        net.root(f"wiring{number}", [1.0] * 6)
        before = "panel" if parent is None else f"reach{parent}"
        net.follows(f"reach{number}", 4, [before, f"ground{number}"], reach)
    for number in reversed(range(len(boxes))):
        found = f"own{number}"
        net.follows(found, 4, [f"wiring{number}", f"reach{number}"], own_join)
        for child in fed[number]:
            more = f"with{child}"
            net.follows(more, 4, [found, f"found{child}", f"ground{child}"], both)
            found = more
        net.follows(f"found{number}", 4, [found], lambda state: state)
        net.likely(f"possible{number}", [f"found{number}"], lambda state: float(state != CLASH), 1.0)
    for number, box in enumerate(boxes):
        parent = box["fed_by"]
        if parent is None:
            net.follows(f"joined{number}", 4, [f"found{number}"], lambda found: found)
        else:
            parents = [f"found{number}", f"ground{number}", f"joined{parent}"]
            net.follows(f"joined{number}", 4, parents, lambda own, ground, group: group if ground <= WEAK else own)
        net.follows(f"arrival{number}", 8, [f"reach{number}", f"joined{number}"], arrival)
        device = numpy.array(box["device"])
        parents = [f"wiring{number}", f"arrival{number}", f"hot_path{number}", f"neutral_path{number}"]
        net.likely(f"read{number}", parents, lambda w, a, h, n, device=device: device[w, a, h * 4 + n], device.max())
        if box["sight"] is not None:
            look(net, number, numpy.array(box["sight"]), fed[number])
    return net


def look(net, number, sight, children):
    """The sighting in a box, which depends on whether any run beyond is loose there."""
    loose = f"loose{number}_none"
    net.root(loose, [1.0, 0.0])
    for child in children:
        more = f"loose{number}_{child}"
        net.follows(more, 2, [loose, f"ground{child}"], lambda so_far, ground: int(so_far or ground == LOOSE_BEFORE))
        loose = more
    parents = [loose, f"ground{number}", f"wiring{number}"]
    net.likely(f"seen{number}", parents, lambda loose, run, wiring: sight[loose, run, wiring], sight.max())


def worst_difference(tree):
    """The greatest difference of any probability; endless where one finds that nothing can be and the other does not."""
    net = network(tree["factors"])
    inference = pyagrum.LazyPropagation(net.net)
    inference.setEvidence(net.evidence)
    boxes = range(len(tree["factors"]["boxes"]))
    devices = [[f"{kind}{number}" for kind in ("wiring", "arrival", "hot_path", "neutral_path")] for number in boxes]
    for names in devices:
        inference.addJointTarget(set(names))
    try:
        inference.makeInference()
        possible = inference.evidenceProbability() > 0
    except pyagrum.IncompatibleEvidence:
        possible = False
    if not possible or tree["marginals"] is None:
        return float("inf") if possible or tree["marginals"] is not None else 0.0
    worst = 0.0
    for number, ours in zip(boxes, tree["marginals"]):
        for kind in ("hot", "neutral", "ground"):
            theirs = inference.posterior(f"{kind}{number}").toarray()
            worst = max(worst, numpy.abs(theirs - ours[kind]).max())
        joint = inference.jointPosterior(set(devices[number]))
        # The array's axes stand in the reverse of the order of names.
        axes = list(reversed(joint.names))
        theirs = joint.toarray().transpose([axes.index(name) for name in devices[number]])
        worst = max(worst, numpy.abs(theirs.reshape(6, 8, 16) - numpy.array(ours["device"])).max())
    return worst


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--trees", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    trees = printed(asked.trees, asked.seed)
    worst, impossible, wrong = 0.0, 0, 0
    for number, tree in enumerate(trees):
        difference = worst_difference(tree)
        impossible += tree["marginals"] is None
        if not difference <= WITHIN:
            wrong += 1
            print(f"tree {number} of {len(tree['factors']['boxes'])} boxes: off by {difference}")
        worst = max(worst, difference)
    altered = next(tree for tree in trees if tree["marginals"] is not None)
    # The state of the first device that is least sure: there an altered odd shows most.
    unsure = numpy.array(altered["marginals"][0]["device"])
    wiring, arrives, way = numpy.unravel_index((unsure * (1 - unsure)).argmax(), unsure.shape)
    altered["factors"]["boxes"][0]["device"][wiring][arrives][way] *= 1.001
    noticed = worst_difference(altered) > WITHIN
    sizes = sum(len(tree["factors"]["boxes"]) for tree in trees)
    print(f"{len(trees)} trees of {sizes} boxes, {impossible} of them impossible: worst difference {worst:.1e}, {wrong} wrong")
    if not noticed:
        print("an altered odd was not noticed")
    if wrong or not noticed or len(trees) < asked.trees:
        sys.exit(1)


if __name__ == "__main__":
    main()

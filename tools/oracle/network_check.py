#!/usr/bin/env python3
"""Holds the network solver of the `electrical` crate against scipy on random circuits.

Usage, with numpy and scipy at hand, as in a virtual environment made from the requirements.txt beside this file:

    python3 tools/oracle/network_check.py [--circuits 200] [--seed 1] [--tolerance 1e-9] [--solver COMMAND]

The circuits are written as plain text to `cargo run -p electrical --example solve_network`, or to the command given,
and solved here by another formulation: the sparse tableau, in which every branch keeps an equation of its own and no
admittance is ever summed, by scipy's sparse LU with one step of refinement. The worst differences are printed; the exit
code is 1 if one is above the tolerance.
"""

import argparse
import shlex
import subprocess
import sys
from pathlib import Path

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import splu

FREQUENCY = 60.0
ROOT = Path(__file__).resolve().parents[2]


def capacitor(farads):
    return complex(0.0, -1.0 / (2.0 * np.pi * FREQUENCY * farads))


class Circuit:
    """Nodes from 1 (earth is 0), branches (a, b, impedance, rise) and currents (a, b, amperes)."""

    def __init__(self):
        self.nodes = 0
        self.branches = []
        self.currents = []

    def node(self):
        self.nodes += 1
        return self.nodes

    def branch(self, a, b, impedance, rise=0.0):
        self.branches.append((a, b, complex(impedance), complex(rise)))

    def text(self):
        lines = [f"network {self.nodes}"]
        for a, b, z, e in self.branches:
            lines.append(f"branch {a} {b} {z.real!r} {z.imag!r} {e.real!r} {e.imag!r}")
        for a, b, i in self.currents:
            lines.append(f"current {a} {b} {i.real!r} {i.imag!r}")
        return "\n".join(lines + ["end", ""])

    def voltages(self):
        """Solves the tableau: V_a - V_b - Z I = -E for every branch, and the sum of I for every node."""
        count, branches = self.nodes, len(self.branches)
        rows, columns, values = [], [], []
        right = np.zeros(count + branches, dtype=complex)

        def put(row, column, value):
            rows.append(row)
            columns.append(column)
            values.append(value)

        for number, (a, b, z, e) in enumerate(self.branches):
            row = count + number
            # The unknown current is scaled, so that all entries of the equation are near one.
            scale = max(abs(z), 1e-300)
            if a:
                put(row, a - 1, 1.0)
                put(a - 1, count + number, -1.0 / scale)
            if b:
                put(row, b - 1, -1.0)
                put(b - 1, count + number, 1.0 / scale)
            put(row, count + number, -z / scale)
            right[row] = -e
        for a, b, current in self.currents:
            if a:
                right[a - 1] += current
            if b:
                right[b - 1] -= current
        matrix = coo_matrix((values, (rows, columns)), shape=(count + branches,) * 2, dtype=complex).tocsc()
        factors = splu(matrix)
        solution = factors.solve(right)
        solution += factors.solve(right - matrix @ solution)
        return solution[:count]


def dwelling_circuit(random):
    """A branch circuit as a tree of runs: source, service, splices, loads, strays, perhaps broken or bonded."""
    circuit = Circuit()
    source = circuit.node()
    legs = [circuit.node(), circuit.node()]
    neutral, ground = circuit.node(), circuit.node()
    circuit.branch(source, legs[0], random.uniform(0.005, 0.1) + 1j * random.uniform(0, 0.02), 120.0)
    circuit.branch(source, legs[1], random.uniform(0.005, 0.1) + 1j * random.uniform(0, 0.02), -120.0)
    circuit.branch(source, neutral, random.uniform(0.005, 0.05))
    circuit.branch(neutral, ground, 10.0 ** random.uniform(-4, -2))
    circuit.branch(ground, 0, random.uniform(5, 100))
    circuit.branch(source, 0, random.uniform(1, 25))
    openings = [[*legs, neutral, ground]]
    broken = random.integers(0, 3)
    for _ in range(random.integers(2, 45)):
        near = openings[random.integers(0, len(openings))]
        feet = random.uniform(2, 80)
        far = [circuit.node() for _ in range(4)]
        for a, b in zip(near, far):
            kind = random.uniform()
            if broken and kind < 0.05:
                broken -= 1
                if random.uniform() < 0.5:
                    circuit.branch(a, b, random.uniform(0.2, 500.0))
            else:
                circuit.branch(a, b, feet * random.uniform(1.0e-3, 3.2e-3))
        for first in range(4):
            circuit.branch(far[first], 0, capacitor(5e-12))
            for second in range(first + 1, 4):
                circuit.branch(far[first], far[second], capacitor(feet * 0.3048 * random.uniform(50e-12, 150e-12)))
        if random.uniform() < 0.5:
            angle = random.uniform(0, 0.8)
            circuit.branch(far[random.integers(0, 2)], far[2], random.uniform(6, 2000) * np.exp(1j * angle))
        if random.uniform() < 0.1:
            circuit.branch(far[2], far[3], 10.0 ** random.uniform(-3, 0))
        if random.uniform() < 0.1:
            a, b = random.choice(4, 2, replace=False)
            circuit.branch(far[a], far[b], 10e6)
        openings.append(far)
    return circuit


def random_mesh(random):
    """A connected mesh of resistors, coils and capacitors over nine decades, with sources of both kinds."""
    circuit = Circuit()

    def impedance():
        angle = random.uniform(-1.2, 0.3) if random.uniform() < 0.3 else random.uniform(0, 0.8)
        return 10.0 ** random.uniform(-3, 6) * np.exp(1j * angle)

    for _ in range(random.integers(3, 120)):
        before = int(random.integers(0, circuit.nodes + 1))
        rise = 120.0 * np.exp(1j * random.uniform(0, 6.28)) if random.uniform() < 0.1 else 0.0
        circuit.branch(before, circuit.node(), impedance(), rise)
    for _ in range(random.integers(0, circuit.nodes)):
        a, b = (int(node) for node in random.choice(circuit.nodes + 1, 2, replace=False))
        circuit.branch(a, b, impedance())
    circuit.branch(0, 1, 0.05, 120.0)
    a, b = (int(node) for node in random.choice(circuit.nodes + 1, 2, replace=False))
    circuit.currents.append((a, b, complex(random.uniform(-5, 5), random.uniform(-5, 5))))
    return circuit


def answers(text):
    """The node voltages of each network that the solver wrote."""
    found = []
    for line in text.splitlines():
        if line == "network":
            found.append([])
        else:
            re, im = line.split()
            found[-1].append(complex(float(re), float(im)))
    return [np.array(voltages) for voltages in found]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--circuits", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--tolerance", type=float, default=1e-9)
    parser.add_argument("--solver", default="cargo run --quiet --locked --release --package electrical --example solve_network")
    arguments = parser.parse_args()

    random = np.random.default_rng(arguments.seed)
    makers = [dwelling_circuit, random_mesh]
    circuits = [makers[number % 2](random) for number in range(arguments.circuits)]
    text = "".join(circuit.text() for circuit in circuits)
    run = subprocess.run(shlex.split(arguments.solver), input=text, capture_output=True, text=True, check=False, cwd=ROOT)
    if run.returncode != 0:
        print(run.stderr, file=sys.stderr)
        return 2
    ours = answers(run.stdout)
    if [len(voltages) for voltages in ours] != [circuit.nodes for circuit in circuits]:
        print("network_check: the solver gave other networks than it was given", file=sys.stderr)
        return 2

    worst_of_network, worst_of_node = 0.0, 0.0
    for circuit, found in zip(circuits, ours):
        expected = circuit.voltages()
        misses = np.abs(found - expected)
        largest = np.max(np.abs(expected))
        worst_of_network = max(worst_of_network, np.max(misses) / largest)
        # A node within a millionth of nothing has no digits of its own to compare.
        standing = np.abs(expected) > 1e-6 * largest
        worst_of_node = max(worst_of_node, np.max(misses[standing] / np.abs(expected)[standing]))
    nodes = [circuit.nodes for circuit in circuits]
    print(f"network_check: {len(circuits)} circuits of {min(nodes)} to {max(nodes)} nodes, seed {arguments.seed}")
    print(f"  worst difference: {worst_of_network:.2e} of the largest voltage, {worst_of_node:.2e} of the node's own")
    if not max(worst_of_network, worst_of_node) <= arguments.tolerance:
        print(f"network_check: above {arguments.tolerance:.0e}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())

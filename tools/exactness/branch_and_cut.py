"""Solves the mixed-integer linear program with HiGHS, adding directed cuts as its answers violate them.

Cuts are found by maximum flows: in the linear relaxation until none is violated, then in every whole answer of the
search, which is searched again with what it violated. HiGHS reckons in floating point with tolerances, so nothing it says
of costs is taken as it stands: its answer is rounded and costed in whole numbers, and counts as proved only where its
bound, rounded up to a whole number, is that cost. Where the weights are too far apart for that, the same program is
solved in steps - shortfalls, then cents, then openings and devices - each held at its least in the next.
"""

import time
from math import ceil, inf

import highspy
import numpy

from answer import Answer
from milp import Model
from problem import cost_of, costs_of

VIOLATED = 1e-4
MOST_CUTS = 8
# What a bound may lie above a whole number and still be meant as that number.
ROUNDING = 1e-3


class OutOfTime(Exception):
    """The time is over."""


class Unsettled(Exception):
    """The solver gave up in the tolerances of its numbers."""


class Infeasible(Exception):
    """There is no answer."""


class Search:
    """One program in the solver, with the cuts found so far."""

    def __init__(self, model, seconds):
        self.model, self.cuts = model, 0
        self.highs = highs = highspy.Highs()
        highs.silent()
        highs.setOptionValue("threads", 1)
        highs.setOptionValue("mip_rel_gap", 0.0)
        highs.setOptionValue("mip_abs_gap", 0.5)
        highs.setOptionValue("mip_feasibility_tolerance", 1e-9)
        lp = _written(model.program)
        self.begun = time.perf_counter()
        self.deadline = self.begun + seconds
        highs.passModel(lp)
        self.has_cut = False

    def took(self):
        return time.perf_counter() - self.begun

    def least(self, weights):
        """The least choice by these weights of the digits, its sum of them, and whether the bound proves it."""
        program = self.model.program
        costs = [sum(digit * weight for digit, weight in zip(digits, weights)) for digits in program.digits]
        base = 0
        for place in program.places:
            least = min(costs[column] for column in place)
            base += least
            for column in place:
                costs[column] -= least
        count = len(costs)
        self.highs.changeColsCost(count, numpy.arange(count), numpy.array(costs, dtype=numpy.double))
        if not self.has_cut:
            self._cut_relaxation()
            whole = [column for column, is_whole in enumerate(program.whole) if is_whole]
            self.highs.changeColsIntegrality(len(whole), numpy.array(whole), [highspy.HighsVarType.kInteger] * len(whole))
            self.has_cut = True
        choice = self.model.choice(self._whole_answer())
        costs = costs_of(self.model.problem, choice)
        digits = self.model.order.sum_of_digits(costs)
        found = sum(digit * weight for digit, weight in zip(digits, weights))
        bound = self.highs.getInfo().mip_dual_bound
        return choice, found, ceil(bound - ROUNDING) >= found - base

    def hold(self, weights, at_most):
        """Asks of everything later that this sum of the digits is no more."""
        costs = [sum(digit * weight for digit, weight in zip(digits, weights)) for digits in self.model.program.digits]
        self._add([(-inf, float(at_most), {column: float(cost) for column, cost in enumerate(costs) if cost})])

    def _cut_relaxation(self):
        while self.model.arcs:
            try:
                self._run()
            except Unsettled:
                return
            violated = self._violated(list(self.highs.getSolution().col_value))
            if not violated:
                return
            self._add(violated)

    def _whole_answer(self):
        while True:
            self._run()
            values = list(self.highs.getSolution().col_value)
            violated = self._violated(values) + self._rings(values)
            if not violated:
                return values
            self._add(violated)

    def _run(self):
        left = self.deadline - time.perf_counter()
        if left <= 0:
            raise OutOfTime
        self.highs.setOptionValue("time_limit", self.highs.getRunTime() + left)
        self.highs.run()
        status = self.highs.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            raise Infeasible
        if status == highspy.HighsModelStatus.kTimeLimit:
            raise OutOfTime
        if status != highspy.HighsModelStatus.kOptimal:
            raise Unsettled

    def _add(self, rows):
        self.cuts += len(rows)
        for lower, upper, terms in rows:
            factors = numpy.array(list(terms.values()), dtype=numpy.double)
            self.highs.addRow(lower, upper, len(terms), numpy.array(list(terms), dtype=numpy.int32), factors)

    def _violated(self, values):
        """Directed cuts that these values violate: some for each group that the sources do not reach well enough."""
        model, capacity = self.model, {}
        for arc in model.arcs:
            value = sum(values[column] for column in arc[4].values())
            if value > 1e-9:
                capacity[arc[0], arc[1]] = capacity.get((arc[0], arc[1]), 0.0) + value
        found, seen = [], set()
        for group, supplied in model.supplied.items():
            wanted = values[supplied]
            if wanted <= VIOLATED or not model.into[group]:
                continue
            for far in model.network.cuts(capacity, group, wanted, MOST_CUTS):
                across = [arc for arc in model.arcs if arc[1] in far and arc[0] not in far]
                columns = [column for arc in across for column in arc[4].values()]
                if (group, far) in seen or sum(values[column] for column in columns) > wanted - VIOLATED:
                    continue
                seen.add((group, far))
                found.append((0.0, inf, {supplied: -1.0, **{column: 1.0 for column in columns}}))
        return found

    def _rings(self, values):
        """Rows against links that together hang a node below itself."""
        model, found = self.model, []
        chosen = [index for index, columns in enumerate(model.of_link) if any(values[column] > 0.5 for column in columns)]
        moved = {model.problem.links[index].to_at: index for index in chosen if model.problem.links[index].reparents}
        for start in moved:
            at, ring = start, []
            for _ in range(len(model.problem.trees[start[0]].nodes) + 1):
                if at in moved:
                    ring.append(moved[at])
                    above = model.problem.links[moved[at]].from_at
                else:
                    parent = model.problem.trees[at[0]].nodes[at[1]].parent
                    above = None if parent is None else (at[0], parent)
                if above is None or above == start:
                    break
                at = above
            if above == start:
                terms = {column: 1.0 for index in ring for column in model.of_link[index]}
                found.append((-inf, len(ring) - 1.0, terms))
        return found


def _written(program):
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(program.upper), len(program.rows)
    lp.col_cost_ = numpy.zeros(len(program.upper))
    lp.col_lower_ = numpy.zeros(len(program.upper))
    lp.col_upper_ = numpy.array(program.upper, dtype=numpy.double)
    lp.row_lower_ = numpy.array([row[0] for row in program.rows], dtype=numpy.double)
    lp.row_upper_ = numpy.array([row[1] for row in program.rows], dtype=numpy.double)
    starts, indices, factors = [0], [], []
    for _, _, terms in program.rows:
        indices.extend(terms.keys())
        factors.extend(terms.values())
        starts.append(len(indices))
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = numpy.array(starts)
    lp.a_matrix_.index_ = numpy.array(indices)
    lp.a_matrix_.value_ = numpy.array(factors, dtype=numpy.double)
    return lp


def solve(problem, kept, order, seconds, in_one_go=False):
    """Solves in one go; in steps where the bound does not prove that, or openings and devices did not fit. Times leave
    out writing the program down."""
    model = Model(problem, kept, order)
    search = Search(model, seconds)
    try:
        choice, is_proved, exact = None, False, order.exact
        if order.exact or in_one_go:
            try:
                choice, _, is_proved = search.least(order.weights)
            except Unsettled:
                is_proved = False
        if not is_proved and not in_one_go:
            is_proved, exact = True, True
            # Another way through the solver: its reductions have told bounds that its own answers miss.
            search.highs.setOptionValue("presolve", "off")
            for weights in order.steps:
                choice, found, step_is_proved = search.least(weights)
                is_proved &= step_is_proved
                search.hold(weights, found)
        if choice is None:
            raise Unsettled
        return Answer(is_proved, exact, cost_of(problem, choice), choice, search.took(), search.cuts)
    except Infeasible:
        return Answer(True, True, None, None, search.took(), search.cuts)
    except (OutOfTime, Unsettled):
        return Answer(False, False, None, None, search.took(), search.cuts)

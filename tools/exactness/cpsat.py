"""The problem as a constraint program for CP-SAT: literals, implications, levels and sums that hold under conditions.

Nothing is shared with the linear program but the reading of the problem, the order of costs and the options worth
looking at. Supply comes from a source because every chosen link leads to a higher level than it comes from; what is
moved hangs lower than what it hangs on, for the same reason; counts and burdens are whole numbers that sum up the tree.
"""

import time

from ortools.sat.python import cp_model

from answer import Answer
from problem import Choice, cost_of

MARKS = 4


class Model:
    """A problem written down for the solver."""

    def __init__(self, problem, kept, order):
        self.problem, self.kept, self.order = problem, kept, order
        self.model = cp_model.CpModel()
        self.objective, self.base = [], 0
        self.never = self.model.new_constant(0)
        self._links()
        self._supply()
        self._grades()
        self.roots = [self._one_of(tree.root_options) for tree in problem.trees]
        self.options = [[self._one_of(options) for options in nodes] for nodes in self.kept]
        self.behind = {}
        for number in range(len(problem.trees)):
            self._tree(number)
        self._landings()
        self.model.minimize(sum(factor * literal for literal, factor in self.objective))

    def _one_of(self, choices):
        """A literal for each choice, exactly one of them true; their costs go into the objective."""
        weights = [self.order.weight(choice.cost) for choice in choices]
        least = min(weights, default=0)
        self.base += least
        literals = [self.model.new_bool_var("") for _ in choices]
        self.objective += [(literal, weight - least) for literal, weight in zip(literals, weights) if weight > least]
        self.model.add_exactly_one(literals)
        return literals

    # --- links and supply

    def _links(self):
        self.arcs, self.chosen = [], []
        for link in self.problem.links:
            arcs = []
            other_tree = link.reparents and link.from_at is not None and link.from_at[0] != link.to_at[0]
            on_itself = link.reparents and link.from_at == link.to_at
            if not other_tree and not on_itself:
                for forward in [True, False][: 1 + link.both_ways]:
                    tail, head = (link.from_group, link.to_group) if forward else (link.to_group, link.from_group)
                    if tail != head and not self.problem.groups[head].source:
                        arcs.append((tail, head, len(self.chosen), forward, self.model.new_bool_var("")))
            self.arcs += arcs
            self.chosen.append(self._either([arc[4] for arc in arcs]))

    def _either(self, literals):
        """A literal that is true where one of these is; no two of them are."""
        if not literals:
            return self.never
        if len(literals) == 1:
            return literals[0]
        either = self.model.new_bool_var("")
        self.model.add_exactly_one([*literals, ~either])
        return either

    def _supply(self):
        model, groups = self.model, self.problem.groups
        levels = [model.new_constant(0) if group.source else model.new_int_var(1, len(groups), "") for group in groups]
        self.supplied = []
        for at, group in enumerate(groups):
            if group.source:
                self.supplied.append(None)
                continue
            self.supplied.append(self._either([arc[4] for arc in self.arcs if arc[1] == at]))
        for tail, head, _, _, literal in self.arcs:
            model.add(levels[head] >= levels[tail] + 1).only_enforce_if(literal)
            if self.supplied[tail] is not None:
                model.add_implication(literal, self.supplied[tail])

    def _grades(self):
        """What each group needs once supplied: its own grade, or the highest of what is led on from it."""
        model, groups = self.model, self.problem.groups
        top = max([group.grade for group in groups], default=0)
        needs = [model.new_int_var(0 if group.source else group.grade, top, "") for group in groups]
        leading = [[] for _ in groups]
        self.grade_is = [{} for _ in self.problem.links]
        for tail, head, index, _, literal in self.arcs:
            led = model.new_int_var(0, top, "")
            model.add(led == needs[head]).only_enforce_if(literal)
            model.add(led == 0).only_enforce_if(~literal)
            model.add(needs[head] <= groups[tail].carries).only_enforce_if(literal)
            leading[tail].append(led)
            for grade in range(top + 1):
                if grade not in self.grade_is[index]:
                    self.grade_is[index][grade] = model.new_bool_var("")
                model.add(needs[head] == grade).only_enforce_if(literal, self.grade_is[index][grade])
        for at, group in enumerate(groups):
            if not group.source:
                model.add_max_equality(needs[at], [group.grade, *leading[at]])
        for index, link in enumerate(self.problem.links):
            model.add(sum(self.grade_is[index].values()) == self.chosen[index])
            for grade, literal in self.grade_is[index].items():
                if grade < len(link.cost_by_grade):
                    self.objective.append((literal, self.order.weight(link.cost_by_grade[grade])))
                else:
                    model.add(literal == 0)

    # --- trees

    def _tree(self, number):
        model, tree, kept = self.model, self.problem.trees[number], self.kept[number]
        roots, options = self.roots[number], self.options[number]
        burden = sum(node.burden for node in tree.nodes)
        for literal, option in zip(roots, tree.root_options):
            if option.gives and option.burden_limit is not None and burden > option.burden_limit:
                model.add(literal == 0)
        # By node: (condition, the node it then hangs on).
        hangs = []
        moving = [[] for _ in tree.nodes]
        for index, link in enumerate(self.problem.links):
            if link.reparents and link.to_at[0] == number and self.chosen[index] is not self.never:
                moving[link.to_at[1]].append((self.chosen[index], None if link.from_at is None else link.from_at[1]))
        for at, node in enumerate(tree.nodes):
            stays = model.new_bool_var("")
            model.add_exactly_one([stays, *(literal for literal, _ in moving[at])])
            hangs.append([(stays, node.parent, True), *((literal, parent, False) for literal, parent in moving[at])])
            if node.behind_load and node.parent is not None:
                self.behind[number, at] = behind = model.new_bool_var("")
                model.add_implication(behind, stays)
        if any(moving):
            depths = [model.new_int_var(1, len(tree.nodes), "") for _ in tree.nodes]
            for at, places in enumerate(hangs):
                for literal, parent, _ in places:
                    if parent is not None:
                        model.add(depths[at] >= depths[parent] + 1).only_enforce_if(literal)
        self._marks(number, hangs)
        for at, node in enumerate(tree.nodes):
            supplied = self.supplied[node.group]
            for literal, option in zip(options[at], kept[at]):
                if option.supply == "supplied" and supplied is not None:
                    model.add_implication(literal, supplied)
                if option.supply == "unsupplied":
                    model.add(literal == 0) if supplied is None else model.add_implication(literal, ~supplied)
        self._sums(number, hangs, [node.count for node in tree.nodes], lambda option: option.count_limit, 0)
        self._sums(number, hangs, [node.burden for node in tree.nodes], lambda option: option.burden_bound, 1)

    def _marks(self, number, hangs):
        model, tree, kept, options = self.model, self.problem.trees[number], self.kept[number], self.options[number]
        for bit in range(MARKS):
            mark = 1 << bit
            if not any(option.asks & mark for of in kept for option in of):
                continue
            from_root = [
                literal for literal, option in zip(self.roots[number], tree.root_options) if option.gives & mark
            ]
            sees = [model.new_bool_var("") for _ in tree.nodes]
            for at in range(len(tree.nodes)):
                for literal, parent, is_old in hangs[at]:
                    if parent is None:
                        model.add_bool_or([*from_root, ~sees[at], ~literal])
                        continue
                    bringing = [sees[parent], ~sees[at], ~literal]
                    behind = self.behind.get((number, at))
                    giving = [one for one, option in zip(options[parent], kept[parent]) if option.gives & mark]
                    if is_old and behind is not None and giving:
                        given = model.new_bool_var("")
                        model.add_implication(given, behind)
                        model.add_bool_or([*giving, ~given])
                        bringing.append(given)
                    model.add_bool_or(bringing)
                for literal, option in zip(options[at], kept[at]):
                    if option.asks & mark:
                        model.add_implication(literal, sees[at])

    def _sums(self, number, hangs, adds, limit, with_own):
        model, kept, options = self.model, self.kept[number], self.options[number]
        if all(limit(option) is None for of in kept for option in of):
            return
        whole = sum(adds)
        fixed = all(len(places) == 1 for places in hangs)
        if fixed:
            totals = list(adds)
            for at in reversed(range(len(adds))):
                if hangs[at][0][1] is not None:
                    totals[hangs[at][0][1]] += totals[at]
        else:
            totals = [model.new_int_var(add, max(whole, add), "") for add in adds]
            parts = [[add] for add in adds]
            for at, places in enumerate(hangs):
                for literal, parent, _ in places:
                    if parent is not None:
                        part = model.new_int_var(0, whole, "")
                        model.add(part == totals[at]).only_enforce_if(literal)
                        model.add(part == 0).only_enforce_if(~literal)
                        parts[parent].append(part)
            for total, part in zip(totals, parts):
                model.add(total == sum(part))
        for at, of in enumerate(kept):
            if all(limit(option) is None for option in of):
                continue
            loads = []
            for child, places in enumerate(hangs):
                behind = self.behind.get((number, child))
                if behind is None or places[0][1] != at:
                    continue
                if fixed:
                    loads.append(totals[child] * behind)
                else:
                    load = model.new_int_var(0, whole, "")
                    model.add(load == totals[child]).only_enforce_if(behind)
                    loads.append(load)
            own = adds[at] if with_own else 0
            for literal, option in zip(options[at], of):
                bound = limit(option)
                if bound is not None:
                    if own > bound:
                        model.add(literal == 0)
                    elif loads:
                        model.add(sum(loads) <= bound - own).only_enforce_if(literal)

    def _landings(self):
        model, links = self.model, self.problem.links
        at_node = {}
        for index, link in enumerate(links):
            for at in link.ends():
                at_node.setdefault(at, []).append(index)
        for (number, at), landing in at_node.items():
            top = max(max(self.grade_is[index], default=0) for index in landing)
            highest = model.new_int_var(-1, top, "")
            grades = [-1]
            for index in set(landing):
                for grade, literal in self.grade_is[index].items():
                    one = model.new_int_var(-1, grade, "")
                    model.add(one == grade).only_enforce_if(literal)
                    model.add(one == -1).only_enforce_if(~literal)
                    grades.append(one)
            model.add_max_equality(highest, grades)
            is_highest = []
            for grade in range(top + 1):
                literal = model.new_bool_var("")
                model.add(highest == grade).only_enforce_if(literal)
                model.add(highest != grade).only_enforce_if(~literal)
                is_highest.append(literal)
            count = sum(self.chosen[index] for index in landing)
            for literal, option in zip(self.options[number][at], self.kept[number][at]):
                for grade, reached in enumerate(is_highest):
                    most = option.most_landings[grade] if grade < len(option.most_landings) else 0
                    if most == 0:
                        model.add_implication(literal, ~reached)
                    elif most < len(landing):
                        model.add(count <= most).only_enforce_if(literal, reached)

    def choice(self, true):
        """What the literals stand for, once it is known which are true."""
        roots = [next(place for place, literal in enumerate(of) if true(literal)) for of in self.roots]
        chosen = []
        for nodes, kept in zip(self.options, self.kept):
            chosen.append([
                next(option.index for literal, option in zip(literals, options) if true(literal))
                for literals, options in zip(nodes, kept)
            ])
        behind = {at for at, literal in self.behind.items() if true(literal)}
        links = {arc[2]: arc[3] for arc in self.arcs if true(arc[4])}
        return Choice(roots, chosen, behind, links)



def solve(problem, kept, order, seconds):
    """Solves to the end or until the time is over. Times leave out writing the model down."""
    model = Model(problem, kept, order)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = seconds
    begun = time.perf_counter()
    status = solver.solve(model.model)
    took = time.perf_counter() - begun
    if status == cp_model.INFEASIBLE:
        return Answer(True, True, None, None, took)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Answer(False, False, None, None, took)
    choice = model.choice(solver.boolean_value)
    return Answer(status == cp_model.OPTIMAL, order.exact, cost_of(problem, choice), choice, took)

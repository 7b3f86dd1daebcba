"""The problem as a mixed-integer linear program: its columns and rows. `branch_and_cut.py` solves it with HiGHS.

Every choice is a binary. Marks are bounded from above by what brings them. An arc per link, direction and grade carries
supply; that it comes from a source is asked by cuts: of every set of groups without a source that holds a supplied
group, some arc leads into it. The counts and burdens behind a load side are constants where nothing can
be moved, and else a flow of burden down the tree that the chosen links leave.
"""

from math import inf

from flow import Network
from problem import Choice
from reduced import landings

MARKS = 4
FREE = (0,) * 6


class Program:
    """Rows and columns as they are gathered."""

    def __init__(self):
        self.digits, self.upper, self.whole = [], [], []
        self.rows = []
        self.places = []

    def column(self, digits=FREE, upper=1.0, whole=True):
        """A column from zero up; its cost is told in the digits of `order.py`."""
        self.digits.append(digits)
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.upper) - 1

    def row(self, lower, upper, terms):
        """A row over pairs of column and factor; a column may come up more than once."""
        summed = {}
        for column, factor in terms:
            summed[column] = summed.get(column, 0) + factor
        self.rows.append((lower, upper, summed))


class Model:
    """A problem written down for the solver."""

    def __init__(self, problem, kept, order):
        self.problem, self.kept, self.order = problem, kept, order
        self.program = Program()
        self._links()
        self.roots, self.options, self.behind, self.sees = [], [], {}, {}
        for number in range(len(problem.trees)):
            self._tree(number)
        self._supply_of_options()
        self._landings()

    # --- links and supply

    def _links(self):
        problem, program = self.problem, self.program
        self.arcs = []  # (tail, head, link, forward, {grade: column})
        self.of_link = [[] for _ in problem.links]
        for index, link in enumerate(problem.links):
            if link.reparents and not self._may_move(link):
                continue
            for forward in (True, False) if link.both_ways else (True,):
                ends = (link.from_group, link.to_group)
                tail, head = ends if forward else ends[::-1]
                if tail == head or problem.groups[head].source:
                    continue
                most = min(len(link.cost_by_grade) - 1, problem.groups[tail].carries)
                least = problem.groups[head].grade
                columns = {
                    grade: program.column(self.order.digits(link.cost_by_grade[grade])) for grade in range(least, most + 1)
                }
                if columns:
                    self.arcs.append((tail, head, index, forward, columns))
                    self.of_link[index].extend(columns.values())
        for columns in self.of_link:
            if len(columns) > 1:
                program.row(-inf, 1, [(column, 1) for column in columns])
        self.into = [[] for _ in problem.groups]
        self.out_of = [[] for _ in problem.groups]
        for arc in self.arcs:
            self.out_of[arc[0]].append(arc)
            self.into[arc[1]].append(arc)
        sources = [group for group, one in enumerate(problem.groups) if one.source]
        self.network = Network(sources, [arc[:2] for arc in self.arcs])
        self.supplied = {}
        for group, arcs in enumerate(self.into):
            if not problem.groups[group].source:
                self._group(group, arcs)

    @staticmethod
    def _may_move(link):
        return link.from_at is None or (link.from_at[0] == link.to_at[0] and link.from_at != link.to_at)

    def _group(self, group, arcs):
        """One arc leads in at most; what leads on asks for one that leads in, and the grades fit."""
        program = self.program
        self.supplied[group] = supplied = program.column(whole=False)
        entering = [(column, 1) for arc in arcs for column in arc[4].values()]
        program.row(0, 0, entering + [(supplied, -1)])
        own = self.problem.groups[group].grade
        highest = max((max(arc[4]) for arc in arcs), default=-1)
        for arc in self.out_of[group]:
            # The same link the other way brings nothing that could be led on along it.
            for grade in arc[4]:
                leaving = [(column, 1) for of, column in arc[4].items() if of >= grade]
                bringing = [
                    (column, -1) for other in arcs if other[2] != arc[2] for of, column in other[4].items() if of >= grade
                ]
                program.row(-inf, 0, leaving + bringing)
        for grade in range(own + 1, highest + 1):
            # A grade above the group's own is carried in only where it is led on.
            bringing = [(arc[4][grade], 1) for arc in arcs if grade in arc[4]]
            leading = [(arc[4][grade], -1) for arc in self.out_of[group] if grade in arc[4]]
            if bringing:
                program.row(-inf, 0, bringing + leading)

    def _supply_of_options(self):
        for number, tree in enumerate(self.problem.trees):
            for at, node in enumerate(tree.nodes):
                columns = self.options[number][at]
                kept = self.kept[number][at]
                asking = [(columns[place], 1) for place, option in enumerate(kept) if option.supply == "supplied"]
                shunning = [(columns[place], 1) for place, option in enumerate(kept) if option.supply == "unsupplied"]
                supplied = self.supplied.get(node.group)
                if supplied is not None:
                    if asking:
                        self.program.row(-inf, 0, asking + [(supplied, -1)])
                    if shunning:
                        self.program.row(-inf, 1, shunning + [(supplied, 1)])
                elif shunning:
                    self.program.row(-inf, 0, shunning)

    def _landings(self):
        problem, program = self.problem, self.program
        landing = {}
        for index, link in enumerate(problem.links):
            if self.of_link[index]:
                for at in link.ends():
                    landing.setdefault(at, []).append(index)
        grades = max((len(link.cost_by_grade) for link in problem.links), default=0)
        for (number, at), links in landing.items():
            columns, kept, most = self.options[number][at], self.kept[number][at], len(links)
            allowed = [[landings(option, grade, most) for grade in range(grades)] for option in kept]
            by_grade = [[] for _ in range(grades)]
            for arc in self.arcs:
                # Once for each end that lands here.
                for _ in range(links.count(arc[2])):
                    for grade, column in arc[4].items():
                        by_grade[grade].append(column)
            everything = [(column, 1) for of in by_grade for column in of]
            for grade in range(grades):
                higher = [(column, 1) for of in by_grade[grade:] for column in of]
                best = [max(of[grade:]) for of in allowed]
                if higher and min(best) < most:
                    program.row(-inf, 0, higher + [(column, -cap) for column, cap in zip(columns, best)])
            if all(min(of) == max(of) for of in allowed):
                continue
            reached = []
            for grade in range(grades):
                column = program.column()
                higher = [other for of in by_grade[grade:] for other in of]
                for other in higher:
                    program.row(-inf, 0, [(other, 1), (column, -1)])
                program.row(-inf, 0, [(column, 1)] + [(other, -1) for other in higher])
                reached.append(column)
            for grade in range(grades):
                # Where this grade is the highest: no more than the option takes of it.
                terms = everything + [(column, -of[grade]) for column, of in zip(columns, allowed)]
                terms.append((reached[grade], most))
                if grade + 1 < grades:
                    terms.append((reached[grade + 1], -most))
                program.row(-inf, most, terms)

    # --- trees

    def _tree(self, number):
        problem, program = self.problem, self.program
        tree, kept = problem.trees[number], self.kept[number]
        burden = sum(node.burden for node in tree.nodes)
        limited = [option.burden_limit if option.gives else None for option in tree.root_options]
        self.roots.append(self._one_of(tree.root_options, [limit is None or burden <= limit for limit in limited]))
        columns = []
        for node, options in zip(tree.nodes, kept):
            bears = [option.burden_bound is None or node.burden <= option.burden_bound for option in options]
            columns.append(self._one_of(options, bears))
        self.options.append(columns)
        movers = {}
        for index, link in enumerate(problem.links):
            if link.reparents and self.of_link[index] and link.to_at[0] == number:
                movers.setdefault(link.to_at[1], []).append((index, None if link.from_at is None else link.from_at[1]))
        for links in movers.values():
            if len(links) > 1:
                program.row(-inf, 1, [(column, 1) for index, _ in links for column in self.of_link[index]])
        for at, node in enumerate(tree.nodes):
            gives = [option.gives for option in kept[node.parent]] if node.parent is not None else []
            if node.behind_load and any(gives):
                self.behind[number, at] = column = program.column()
                giving = [(other, -1) for other, given in zip(columns[node.parent], gives) if given]
                program.row(-inf, 0, [(column, 1), *giving])
        self._marks(number, movers)
        self._loads(number, movers)

    def _one_of(self, choices, possible):
        """A column for each choice of one place; exactly one is taken."""
        columns = [
            self.program.column(self.order.digits(choice.cost), 1.0 if can else 0.0) for choice, can in zip(choices, possible)
        ]
        self.program.row(1, 1, [(column, 1) for column in columns])
        self.program.places.append(columns)
        return columns

    def _marks(self, number, movers):
        problem, program = self.problem, self.program
        tree, kept, columns = problem.trees[number], self.kept[number], self.options[number]
        asked = 0
        for options in kept:
            for option in options:
                asked |= option.asks
        for mark in (1 << bit for bit in range(MARKS) if asked >> bit & 1):
            root = [(column, -1) for column, option in zip(self.roots[number], tree.root_options) if option.gives & mark]
            sees = [program.column(whole=False) for _ in tree.nodes]
            for at, node in enumerate(tree.nodes):
                moving = [(column, -1) for index, _ in movers.get(at, []) for column in self.of_link[index]]
                if node.parent is None:
                    old = root
                else:
                    old = [(sees[node.parent], -1)]
                    behind = self.behind.get((number, at))
                    if behind is not None:
                        giving = [
                            (column, -1) for column, option in zip(columns[node.parent], kept[node.parent]) if option.gives & mark
                        ]
                        if giving:
                            given = program.column(whole=False)
                            program.row(-inf, 0, [(given, 1), (behind, -1)])
                            program.row(-inf, 0, [(given, 1), *giving])
                            old.append((given, -1))
                program.row(-inf, 0, [(sees[at], 1), *old, *moving])
                for index, parent in movers.get(at, []):
                    new = root if parent is None else [(sees[parent], -1)]
                    moved = [(column, 1) for column in self.of_link[index]]
                    program.row(-inf, 1, [(sees[at], 1), *new, *moved])
                asking = [(column, 1) for column, option in zip(columns[at], kept[at]) if option.asks & mark]
                if asking:
                    program.row(-inf, 0, asking + [(sees[at], -1)])

    def _loads(self, number, movers):
        """Counts and burdens behind load sides; and nobody is behind one after being moved."""
        problem, program = self.problem, self.program
        tree, kept, columns = problem.trees[number], self.kept[number], self.options[number]
        for at, links in movers.items():
            behind = self.behind.get((number, at))
            if behind is not None:
                moved = [(column, 1) for index, _ in links for column in self.of_link[index]]
                program.row(-inf, 1, [(behind, 1), *moved])
        changing = self._changing(tree, movers)
        kinds = [
            ([node.count for node in tree.nodes], lambda option: option.count_limit, False),
            ([node.burden for node in tree.nodes], lambda option: option.burden_bound, True),
        ]
        for adds, limit, with_own in kinds:
            if all(limit(option) is None for options in kept for option in options):
                continue
            below = list(adds)
            for at in reversed(range(len(tree.nodes))):
                if tree.nodes[at].parent is not None:
                    below[tree.nodes[at].parent] += below[at]
            whole = sum(adds)
            loads = self._flows(number, movers, adds, whole) if movers else {}
            for at, options in enumerate(kept):
                if all(limit(option) is None for option in options):
                    continue
                terms = []
                for child, node in enumerate(tree.nodes):
                    behind = self.behind.get((number, child))
                    if node.parent == at and behind is not None:
                        terms.append((loads[child], 1) if child in changing else (behind, below[child]))
                if not terms:
                    continue
                own = adds[at] if with_own else 0
                caps = []
                for option in options:
                    bound = limit(option)
                    caps.append(whole if bound is None else min(whole, max(bound - own, 0)))
                program.row(-inf, 0, terms + [(column, -cap) for column, cap in zip(columns[at], caps)])

    def _changing(self, tree, movers):
        """The nodes whose subtrees can grow or shrink."""
        changing = set()
        for at, links in movers.items():
            for start in [tree.nodes[at].parent, *(parent for _, parent in links)]:
                while start is not None and start not in changing:
                    changing.add(start)
                    start = tree.nodes[start].parent
            # What moves takes along whatever hangs above its new place.
        grown = True
        while grown:
            grown = False
            for at, links in movers.items():
                if at in changing:
                    for start in [tree.nodes[at].parent, *(parent for _, parent in links)]:
                        while start is not None and start not in changing:
                            changing.add(start)
                            start, grown = tree.nodes[start].parent, True
        return changing

    def _flows(self, number, movers, adds, whole):
        """By node: what flows into it from behind its parent's load side. What flows in is what it and all below add."""
        program, tree = self.program, self.problem.trees[number]
        behind_flow, entering = {}, [[] for _ in tree.nodes]
        leaving = [[] for _ in tree.nodes]
        for at, node in enumerate(tree.nodes):
            moved = [(column, whole) for index, _ in movers.get(at, []) for column in self.of_link[index]]
            behind = self.behind.get((number, at))
            plain = program.column(FREE, float(whole), False)
            entering[at].append(plain)
            if behind is not None:
                behind_flow[at] = load = program.column(FREE, float(whole), False)
                program.row(-inf, 0, [(load, 1), (behind, -whole)])
                program.row(-inf, whole, [(plain, 1), (behind, whole), *moved])
                entering[at].append(load)
            elif moved:
                program.row(-inf, whole, [(plain, 1), *moved])
            if node.parent is not None:
                leaving[node.parent].extend(entering[at])
            for index, parent in movers.get(at, []):
                carried = program.column(FREE, float(whole), False)
                program.row(-inf, 0, [(carried, 1), *((column, -whole) for column in self.of_link[index])])
                entering[at].append(carried)
                if parent is not None:
                    leaving[parent].append(carried)
        for at in range(len(tree.nodes)):
            program.row(adds[at], adds[at], [(column, 1) for column in entering[at]] + [(column, -1) for column in leaving[at]])
        return behind_flow

    def choice(self, values):
        """What these values of the columns stand for."""
        roots = [max(range(len(columns)), key=lambda place: values[columns[place]]) for columns in self.roots]
        options = []
        for columns, kept in zip(self.options, self.kept):
            options.append([
                options[max(range(len(of)), key=lambda place: values[of[place]])].index for of, options in zip(columns, kept)
            ])
        behind = {at for at, column in self.behind.items() if values[column] > 0.5}
        links = {arc[2]: arc[3] for arc in self.arcs if any(values[column] > 0.5 for column in arc[4].values())}
        return Choice(roots, options, behind, links)

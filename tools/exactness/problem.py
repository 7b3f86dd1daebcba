"""The optimizer's problem as its documentation tells it (crates/optimizer/src/problem.rs): reading, checking, costing.

Written from the documentation alone. `cost_of` says whether a choice of everything is lawful, and what it costs, in
whole numbers; the two models and thirdwire's own answers are all held against it.
"""

from dataclasses import dataclass, field


@dataclass
class RootOption:
    cost: tuple
    gives: int
    burden_limit: int | None


@dataclass
class Option:
    cost: tuple
    needs: int
    own: int
    gives: int
    supply: str
    most_landings: list
    count_limit: int | None
    burden_limit: int | None
    index: int = 0

    @property
    def burden_bound(self):
        """The burden limit where it binds: only of an option that has or gives marks."""
        return self.burden_limit if self.own or self.gives else None

    @property
    def asks(self):
        """The marks that must come from above."""
        return self.needs & ~self.own


@dataclass
class Node:
    parent: int | None
    behind_load: bool
    group: int
    burden: int
    count: int
    options: list


@dataclass
class Tree:
    root_options: list
    nodes: list


@dataclass
class Group:
    source: bool
    grade: int
    carries: int


@dataclass
class Link:
    from_group: int
    from_at: tuple | None
    to_group: int
    to_at: tuple | None
    both_ways: bool
    cost_by_grade: list
    reparents: bool

    def ends(self):
        """The nodes at which it lands; one comes up twice where both ends land there, and counts twice."""
        return [at for at in (self.from_at, self.to_at) if at is not None]


@dataclass
class Problem:
    trees: list
    groups: list
    links: list


@dataclass
class Choice:
    """One choice of everything: root options, node options, who is behind a load side, and links with their flow."""

    roots: list
    options: list
    behind: set = field(default_factory=set)
    links: dict = field(default_factory=dict)


def read(row):
    """The problem of one line that `print_problem` wrote."""
    trees = []
    for tree in row["trees"]:
        roots = [RootOption(tuple(one["cost"]), one["gives"], one["burden_limit"]) for one in tree["root_options"]]
        nodes = []
        for node in tree["nodes"]:
            options = []
            for index, one in enumerate(node["options"]):
                options.append(Option(tuple(one["cost"]), one["needs"], one["own"], one["gives"], one["supply"],
                                      one["most_landings"], one["count_limit"], one["burden_limit"], index))
            nodes.append(Node(node["parent"], node["behind_load"], node["group"], node["burden"], node["count"], options))
        trees.append(Tree(roots, nodes))
    groups = [Group(one["source"], one["grade"], one["carries"]) for one in row["groups"]]
    links = []
    for one in row["links"]:
        ends = [tuple(end["lands_at"]) if end["lands_at"] is not None else None for end in (one["from"], one["to"])]
        links.append(Link(one["from"]["group"], ends[0], one["to"]["group"], ends[1], one["both_ways"],
                          [tuple(cost) for cost in one["cost_by_grade"]], one["reparents"]))
    return Problem(trees, groups, links)


def parents_after(problem, chosen):
    """By tree and node: what it hangs on once these links are chosen, and whether it was moved; or why that cannot be."""
    parents = [[node.parent for node in tree.nodes] for tree in problem.trees]
    moved = set()
    for index in chosen:
        link = problem.links[index]
        if not link.reparents:
            continue
        tree, node = link.to_at
        if link.to_at in moved:
            raise ValueError(f"two links move node {node} of tree {tree}")
        if link.from_at is not None and link.from_at[0] != tree:
            raise ValueError(f"link {index} would move a node to another tree")
        moved.add(link.to_at)
        parents[tree][node] = None if link.from_at is None else link.from_at[1]
    for tree, of in enumerate(parents):
        for start in range(len(of)):
            at, steps = start, 0
            while at is not None:
                at, steps = of[at], steps + 1
                if steps > len(of):
                    raise ValueError(f"node {start} of tree {tree} hangs below itself")
    return parents, moved


def flow_of(problem, links):
    """By group: whether it is supplied; by link: the grade it carries."""
    into, out_of = {}, {}
    for index, forward in links.items():
        link = problem.links[index]
        if not forward and not link.both_ways:
            raise ValueError(f"link {index} flows one way only")
        tail, head = (link.from_group, link.to_group) if forward else (link.to_group, link.from_group)
        if problem.groups[head].source or head in into or head == tail:
            raise ValueError(f"link {index} brings nothing new to group {head}")
        into[head] = index
        out_of.setdefault(tail, []).append((index, head))
    order = [group for group, one in enumerate(problem.groups) if one.source]
    for group in order:
        order.extend(head for _, head in out_of.get(group, []))
    if len(order) != len(into) + sum(group.source for group in problem.groups):
        raise ValueError("chosen links do not hang on a source")
    grade = {}
    needed = {}
    for group in reversed(order):
        leaving = [grade[index] for index, _ in out_of.get(group, [])]
        if any(one > problem.groups[group].carries for one in leaving):
            raise ValueError(f"group {group} is left by a link of a higher grade than it carries")
        needed[group] = max([problem.groups[group].grade, *leaving])
        if group in into:
            grade[into[group]] = needed[group]
    for index, one in grade.items():
        if one >= len(problem.links[index].cost_by_grade):
            raise ValueError(f"link {index} cannot carry grade {one}")
    return [group.source or at in into for at, group in enumerate(problem.groups)], grade


def cost_of(problem, choice):
    """What a choice costs: cents, openings, devices. Raises ValueError with the reason where it is not lawful."""
    costs = costs_of(problem, choice)
    return tuple(sum(part) for part in zip(*costs)) if costs else (0, 0, 0)


def costs_of(problem, choice):
    """What each part of a choice costs, link by link, root by root and node by node."""
    parents, moved = parents_after(problem, choice.links)
    supplied, grade = flow_of(problem, choice.links)
    landing = {}
    for index in choice.links:
        for at in problem.links[index].ends():
            landing.setdefault(at, []).append(grade[index])
    costs = [problem.links[index].cost_by_grade[one] for index, one in grade.items()]
    for number, tree in enumerate(problem.trees):
        costs += _costs_of_tree(tree, number, parents[number], moved, supplied, landing, choice)
    return costs


def _costs_of_tree(tree, number, parents, moved, supplied, landing, choice):
    root = tree.root_options[choice.roots[number]]
    if root.gives and root.burden_limit is not None and sum(node.burden for node in tree.nodes) > root.burden_limit:
        raise ValueError(f"the root of tree {number} bears too much")
    children = {}
    for at, parent in enumerate(parents):
        children.setdefault(parent, []).append(at)
    order = list(children.get(None, []))
    for at in order:
        order.extend(children.get(at, []))
    chosen = [node.options[option] for node, option in zip(tree.nodes, choice.options[number])]
    sees = {}
    for at in order:
        parent = parents[at]
        if parent is None:
            if (number, at) in choice.behind:
                raise ValueError(f"node {at} of tree {number} hangs on the root, behind no load side")
            sees[at] = root.gives
        else:
            sees[at] = sees[parent]
            if (number, at) in choice.behind:
                if not tree.nodes[at].behind_load or (number, at) in moved:
                    raise ValueError(f"node {at} of tree {number} cannot be behind a load side")
                sees[at] |= chosen[parent].gives
    burden, count = {}, {}
    costs = [root.cost]
    for at in reversed(order):
        node, option, where = tree.nodes[at], chosen[at], f"node {at} of tree {number}"
        below = children.get(at, [])
        burden[at] = node.burden + sum(burden[child] for child in below)
        count[at] = node.count + sum(count[child] for child in below)
        behind = [child for child in below if (number, child) in choice.behind]
        if option.asks & ~sees[at]:
            raise ValueError(f"{where} lacks a mark")
        if option.supply == "supplied" and not supplied[node.group]:
            raise ValueError(f"{where} lacks supply")
        if option.supply == "unsupplied" and supplied[node.group]:
            raise ValueError(f"{where} must not be supplied")
        if option.count_limit is not None and sum(count[child] for child in behind) > option.count_limit:
            raise ValueError(f"{where} has too many outlets behind it")
        bound = option.burden_bound
        if bound is not None and node.burden + sum(burden[child] for child in behind) > bound:
            raise ValueError(f"{where} has too much burden behind it")
        grades = landing.get((number, at), [])
        if grades and (max(grades) >= len(option.most_landings) or len(grades) > option.most_landings[max(grades)]):
            raise ValueError(f"too many links land at {where}")
        costs.append(option.cost)
    return costs


def choice_of(answer):
    """The choice that thirdwire's answer holds."""
    solution = answer["solution"]
    behind = {(tree, child) for tree, nodes in enumerate(solution["nodes"]) for _, children in nodes for child in children}
    options = [[option for option, _ in nodes] for nodes in solution["nodes"]]
    return Choice(solution["roots"], options, behind, {link: forward for link, forward, _ in solution["links"]})

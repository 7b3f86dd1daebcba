"""Options that can be left out: another of the same node costs no more, asks no more and gives no less."""


def worthwhile(problem):
    """By tree and node: the options worth looking at."""
    landing = {}
    for link in problem.links:
        for at in link.ends():
            landing[at] = landing.get(at, 0) + 1
    grades = max((len(link.cost_by_grade) for link in problem.links), default=0)
    kept = []
    for number, tree in enumerate(problem.trees):
        nodes = []
        for at, node in enumerate(tree.nodes):
            most = landing.get((number, at), 0)
            left = []
            for one in sorted(node.options, key=lambda option: (option.cost, option.index)):
                if not any(_is_as_good(other, one, most, grades) for other in left):
                    left.append(one)
            nodes.append(left)
        kept.append(nodes)
    return kept


def landings(option, grade, most):
    """How many links may land at the option where the highest grade of them is this."""
    return min(most, option.most_landings[grade]) if grade < len(option.most_landings) else 0


def _is_as_good(other, one, most, grades):
    limits = ((other.count_limit, one.count_limit), (other.burden_bound, one.burden_bound))
    return (
        other.asks & ~one.asks == 0
        and one.gives & ~other.gives == 0
        and other.supply in ("any", one.supply)
        and all(its is None or (of is not None and its >= of) for its, of in limits)
        and all(landings(other, grade, most) >= landings(one, grade, most) for grade in range(grades))
    )

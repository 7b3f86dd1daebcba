"""One whole number for a cost: smaller where the cost is smaller, and as small as can be, so that solvers can add it.

thirdwire's cents hold weights far above any money (docs/decisions/0007-what-never-pays-off.md): a solver of floating
point would lose the cents below them. A cost is taken apart into its digits - unlawful openings, missing grounds, unmet
wishes, cents, openings in walls, devices - and put together again with the least weights that keep the order: each above
all that the digits below it can add up to in this very problem. `Order` proves for the problem at hand that the order of
the sums is the one of thirdwire's costs; where it cannot, it leaves the cents as they are.
"""

DIGITS = 6


class Order:
    """The weight of each cost of a problem. `exact` says whether openings and devices are in it.

    `steps` are weights for a search one step after the other, each with small numbers: shortfalls, cents, the rest.
    """

    def __init__(self, problem, kept, weights, most, ties=True):
        """`kept` are the options to choose from, by tree and node; `most` is what the solver's sums stay below; openings
        and devices are left out where they would not fit, or are not asked for."""
        self.big = list(weights)
        places = [[option.cost for option in tree.root_options] for tree in problem.trees]
        places += [[option.cost for option in options] for nodes in kept for options in nodes]
        places += [[(0, 0, 0), *link.cost_by_grade] for link in problem.links]
        if not self._is_told_apart(places):
            self.big = []
        spans = self._spans(places)
        self.weights, self.exact = least_weights(spans, 0, DIGITS), ties
        if not ties or total(spans, self.weights) >= most:
            self.weights, self.exact = least_weights(spans, 0, 4), False
        if total(spans, self.weights) >= most:
            raise OverflowError("the costs of this problem do not fit the solver's numbers")
        self.steps = [least_weights(spans, 0, 3), least_weights(spans, 3, 4), least_weights(spans, 4, 6)]

    def digits(self, cost):
        cents, openings, devices = cost
        found = []
        for weight in self.big:
            # The nearest multiple, so that money below zero would not borrow from the weight.
            times = (cents + weight // 2) // weight
            found.append(times)
            cents -= times * weight
        return [0] * (3 - len(found)) + found + [cents, openings, devices]

    def weight(self, cost):
        return sum(digit * weight for digit, weight in zip(self.digits(cost), self.weights))

    def sum_of_digits(self, costs):
        return [sum(column) for column in zip(*map(self.digits, costs))]

    def _spans(self, places):
        """By digit: how far apart two choices of everything can be in it."""
        spans = [0] * DIGITS
        for place in places:
            columns = list(zip(*map(self.digits, place)))
            for digit, column in enumerate(columns):
                spans[digit] += max(column) - min(column)
        return spans

    def _is_told_apart(self, places):
        """Whether what stands below each big weight never adds up to it: then sums are ordered as their digits are."""
        spans = self._spans(places)
        below = spans[3]
        for weight, span in zip(reversed(self.big), reversed(spans[:3])):
            if below >= weight:
                return False
            below += span * weight
        return True


def least_weights(spans, first, end):
    """The least weights of these digits under which none is made up for by those behind it; nothing for the others."""
    weights, below = [0] * DIGITS, 0
    for digit in reversed(range(first, end)):
        weights[digit] = below + 1
        below += spans[digit] * weights[digit]
    return weights


def total(spans, weights):
    return sum(span * weight for span, weight in zip(spans, weights))

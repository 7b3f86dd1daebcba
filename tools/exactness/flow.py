"""Cuts between sources and one group, over arcs with capacities: the greatest flow by shortest augmenting paths."""

from collections import deque

EPSILON = 1e-9
# Every arc carries this much more: of cuts that are as tight, the one of the fewest arcs is found.
CREEP = 1e-6


class Network:
    """Arcs between groups, by (tail, head)."""

    def __init__(self, sources, arcs):
        self.sources = list(sources)
        self.arcs = sorted(set(arcs))
        self.near = {}
        for tail, head in self.arcs:
            self.near.setdefault(tail, []).append(head)
            self.near.setdefault(head, []).append(tail)
        self.near = {at: sorted(set(of)) for at, of in self.near.items()}

    def cuts(self, capacity, target, enough, most):
        """Groups on the far side of cuts that let less than `enough` through to the target: up to so many cuts, for each
        flow the cut nearest the sources and the one nearest the target. The next flow runs with the arcs of these open."""
        left = {arc: capacity.get(arc, 0.0) + CREEP for arc in self.arcs}
        found = []
        value = 0.0
        while len(found) < most:
            value += self._augment(left, target, enough - value)
            if value >= enough - 2 * EPSILON:
                break
            fresh = []
            for far in (self._far_from_sources(left), self._reaching(left, target)):
                # What holds a source is no cut: the flow stopped because it was enough.
                if far not in found and far not in fresh and far.isdisjoint(self.sources):
                    fresh.append(far)
            if not fresh:
                break
            found.extend(fresh)
            for far in fresh:
                for arc in self.arcs:
                    if arc[1] in far and arc[0] not in far:
                        left[arc] = max(left[arc], 1.0)
            value = 0.0
        return found

    def _augment(self, left, target, wanted):
        value = 0.0
        while value < wanted - EPSILON:
            reached = self._reached(left, target)
            if target not in reached:
                break
            path, at = [], target
            while reached[at] is not None:
                path.append((reached[at], at))
                at = reached[at]
            step = min(min(left[arc] for arc in path), wanted - value)
            for tail, head in path:
                left[tail, head] -= step
                left[head, tail] = left.get((head, tail), 0.0) + step
            value += step
        return value

    def _reached(self, left, target=None):
        reached = {source: None for source in self.sources}
        queue = deque(self.sources)
        while queue and target not in reached:
            at = queue.popleft()
            for head in self.near.get(at, ()):
                if head not in reached and left.get((at, head), 0.0) > EPSILON:
                    reached[head] = at
                    queue.append(head)
        return reached

    def _far_from_sources(self, left):
        reached = self._reached(left)
        return frozenset(at for at in self.near if at not in reached)

    def _reaching(self, left, target):
        reaching, queue = {target}, deque([target])
        while queue:
            at = queue.popleft()
            for tail in self.near.get(at, ()):
                if tail not in reaching and left.get((tail, at), 0.0) > EPSILON:
                    reaching.add(tail)
                    queue.append(tail)
        return frozenset(reaching)

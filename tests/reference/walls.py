"""The wall between two holes by brute force."""

import numpy as np


def strip(hole):
    """Mouth, axis, wide direction, half the run of the drill, its radius, depth: the hole is all within that radius of the strip."""
    wide, narrow = hole["section"].get("oval", (hole["section"].get("round"),) * 2)
    vectors = [np.array(hole[key]) for key in ("mouth", "axis", "wide")]
    return (*vectors, (wide - narrow) / 2, narrow / 2, hole["depth"])


def of_strips(one, other, rounds=60, points=7):
    """Least distance of two axes from surface to bottom, each widened by the drill's run, less both radii.

    A grid over both strips, shrunk around its best point again and again. The distance is convex, so no other valley is missed; the
    grid shrinks slowly enough (by 4/5) not to shut the best point out.
    """
    strips = [strip(hole) for hole in (one, other)]
    low = np.array([bound for s in strips for bound in (0.0, -s[3])])
    high = np.array([bound for s in strips for bound in (s[5], s[3])])
    middle, half = (low + high) / 2, (high - low) / 2
    steps = np.stack(np.meshgrid(*[np.linspace(-1, 1, points)] * 4, indexing="ij"), -1).reshape(-1, 4)
    best = np.inf
    for _ in range(rounds):
        tried = np.clip(middle + steps * half, low, high)
        ends = [
            s[0] + tried[:, [2 * k]] * s[1] + tried[:, [2 * k + 1]] * s[2] for k, s in enumerate(strips)
        ]
        apart = np.linalg.norm(ends[0] - ends[1], axis=1)
        middle = tried[apart.argmin()]
        best = min(best, apart.min())
        half *= 0.8
    return best - strips[0][4] - strips[1][4]


def shell(radius, hole, window, size):
    """Points of the hole's true wall, from the sphere to the flat bottom, on a grid over a window of (share of the depth, turn)."""
    mouth, axis, wide, run, r, depth = strip(hole)
    aside = np.cross(-axis, wide)
    share, turn = np.meshgrid(*[np.linspace(*bounds, size) for bounds in window], indexing="ij")
    # Around the outline by angle: the straight sides of an oval are walked while the cosine is small.
    across = r * np.cos(turn) + run * np.clip(4 * np.cos(turn), -1, 1)
    base = mouth + across[..., None] * wide + (r * np.sin(turn))[..., None] * aside
    # Where this line of the wall leaves the sphere: |base + top * axis| = R, the outer of the two.
    along = base @ axis
    top = -along - np.sqrt(np.maximum(along**2 - (base * base).sum(-1) + radius**2, 0))
    points = base + (top + share * (depth - top))[..., None] * axis
    return points.reshape(-1, 3), share.ravel(), turn.ravel()


def of_shells(radius, one, other):
    """Least distance between the two true walls: a grid on both, then finer ones around the nearest pair. Never less than the truth."""
    windows = [((0.0, 1.0), (0.0, 2 * np.pi))] * 2
    best, size = np.inf, 61
    for _ in range(24):
        grids = [shell(radius, hole, window, size) for hole, window in zip((one, other), windows)]
        a, b = grids[0][0], grids[1][0]
        squares = (a * a).sum(1)[:, None] + (b * b).sum(1) - 2 * a @ b.T
        nearest = np.unravel_index(squares.argmin(), squares.shape)
        best = min(best, np.linalg.norm(a[nearest[0]] - b[nearest[1]]))
        narrowed = []
        for (_, shares, turns), k, ((low, high), (left, right)) in zip(grids, nearest, windows):
            share, turn = 0.3 * (high - low), 0.3 * (right - left)
            bounds = max(0.0, shares[k] - share), min(1.0, shares[k] + share)
            narrowed.append((bounds, (turns[k] - turn, turns[k] + turn)))
        windows, size = narrowed, 21
    return best


def edge_gap(radius, one, other):
    """The arc between the near edges of two holes along the great circle through their mouths.

    Walk the great circle in a hundred thousand steps; a step belongs to a hole while its distance from the drill's strip is below the
    drill's radius. Between steps the edge is found by halving.
    """
    a, b = (np.array(h["mouth"]) / radius for h in (one, other))
    whole = np.arccos(np.clip(a @ b, -1, 1))

    def inside(hole, at):
        mouth, axis, wide, run, r, _ = strip(hole)
        point = radius * (np.sin(whole - at)[..., None] * a + np.sin(at)[..., None] * b) / np.sin(whole)
        away = point - mouth
        away = away - (away @ axis)[..., None] * axis
        over = np.clip(away @ wide, -run, run)
        return np.linalg.norm(away - over[..., None] * wide, axis=-1) - r

    at = np.linspace(0, whole, 100_001)
    edges = []
    for hole, order in ((one, 1), (other, -1)):
        signs = inside(hole, at)[::order] < 0
        step = np.argmax(~signs)
        low, high = at[::order][step - 1], at[::order][step]
        for _ in range(60):
            middle = (low + high) / 2
            if inside(hole, np.array(middle)) < 0:
                low = middle
            else:
                high = middle
        edges.append(low)
    return radius * (edges[1] - edges[0])

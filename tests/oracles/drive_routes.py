#!/usr/bin/env python3
"""Random belt drives and their effective lengths, by two ways that share nothing with the core.

Convex drives (ribbed pulleys only): perimeter of the convex hull of the pulleys' discs, by the
polygon library shapely, discs drawn with 4 * QUADRANT corners.

Drives with back-side pulleys: the shortest closed line round the pulleys, by scipy's L-BFGS-B. The
line's corners sit on fixed rays from each pulley's centre and may move outwards only. Its length is
then a sum of norms of affine functions under simple bounds, a convex problem with one optimum, and
no tangent enters. Solved at two ray spacings and extrapolated.

Usage: drive_routes.py > drive_routes.csv        (seed and versions stand in the output)
"""

import math
import random
import sys

import numpy as np
import scipy
import shapely
from scipy.optimize import minimize
from shapely.geometry import LinearRing, LineString, Point
from shapely.ops import unary_union

SEED = 20260107
CONVEX, BACKED = 130, 130
QUADRANT = 8192
BACK = 2.3  # mm, back face to effective line


def discs_apart(pulleys, gap):
    """Whether all bodies stand apart by a gap."""
    return all(
        math.dist(one[2:4], other[2:4]) > (one[4] + other[4]) / 2 + gap
        for index, one in enumerate(pulleys)
        for other in pulleys[:index]
    )


def effective_radius(pulley):
    return pulley[4] / 2 + (BACK if pulley[1] == "back" else 0.0)


def ring(rng, count):
    """Ribbed pulleys round a ring, in order."""
    turn = rng.uniform(0, math.tau)
    wide, high = rng.uniform(150, 320), rng.uniform(120, 300)
    pulleys = []
    for index in range(count):
        angle = turn + math.tau * (index + rng.uniform(-0.2, 0.2)) / count
        x, y = wide * math.cos(angle), high * math.sin(angle)
        pulleys.append((f"p{index}", "rib", round(x, 3), round(y, 3), round(rng.uniform(46, 160), 3)))
    return pulleys


def hull_length(pulleys):
    """Perimeter of the hull, and whether every disc is on it by a clear stretch."""
    discs = [Point(p[2], p[3]).buffer(p[4] / 2, quad_segs=QUADRANT) for p in pulleys]
    hull = unary_union(discs).convex_hull
    touched = []
    for pulley in pulleys:
        rim = Point(pulley[2], pulley[3]).buffer(pulley[4] / 2 + 1e-3, quad_segs=64)
        touched.append(hull.exterior.intersection(rim).length > 3.0)
    return hull.length, all(touched)


def convex(rng):
    """A valid convex drive with its length."""
    while True:
        pulleys = ring(rng, rng.randint(2, 8))
        if not discs_apart(pulleys, 3.0):
            continue
        length, valid = hull_length(pulleys)
        if valid:
            return rng.choice([pulleys, pulleys[:1] + pulleys[:0:-1]]), length


def backed(rng):
    """A valid drive with back-side pulleys pressed into its spans, with its length."""
    while True:
        pulleys = ring(rng, rng.randint(3, 6))
        if not discs_apart(pulleys, 3.0) or not hull_length(pulleys)[1]:
            continue
        gaps = rng.sample(range(len(pulleys)), rng.randint(1, min(3, len(pulleys))))
        route = []
        for index, pulley in enumerate(pulleys):
            route.append(pulley)
            if index in gaps:
                route.append(pressed(rng, pulley, pulleys[(index + 1) % len(pulleys)], index))
        if not discs_apart(route, 8.0):
            continue
        length = shortest(route)
        if length is not None:
            return rng.choice([route, route[:1] + route[:0:-1]]), length


def pressed(rng, first, second, number):
    """A flat pulley that pushes the span between two pulleys (anticlockwise order) inwards."""
    along = np.subtract(second[2:4], first[2:4])
    outward = np.array([along[1], -along[0]]) / np.hypot(*along)
    share = rng.uniform(0.35, 0.65)
    diameter = rng.uniform(50, 90)
    rim = (1 - share) * first[4] / 2 + share * second[4] / 2
    centre = np.array(first[2:4]) + share * along + outward * (rim + diameter / 2 - rng.uniform(8, 55))
    return (f"b{number}", "back", round(centre[0], 3), round(centre[1], 3), round(diameter, 3))


def middles(route):
    """For each pulley the direction of its rim that surely carries belt: away from both neighbours,
    or towards them where the belt, in the pulley's own sense, could not pass there."""
    count = len(route)
    found = []
    for index, pulley in enumerate(route):
        before, after = (np.subtract(route[(index + by) % count][2:4], pulley[2:4]) for by in (-1, 1))
        pull = before / np.hypot(*before) + after / np.hypot(*after)
        middle = math.atan2(-pull[1], -pull[0])
        sense = 1.0 if pulley[1] == "rib" else -1.0
        forward = sense * np.array([-math.sin(middle), math.cos(middle)])
        found.append((middle if np.dot(forward, after - before) > 0 else middle + math.pi, sense))
    return found


def minimised(route, step):
    """The shortest closed line with corners every `step` on the rims, each rim's window of rays
    widened or narrowed until two corners at either end stand free; None if that never happens."""
    windows = [[-2, 2] for _ in route]
    for _ in range(60):
        length, corners, lifts = shortest_line(route, step, windows)
        if any((lift < 1e-4).sum() == 0 for lift in lifts):
            return None
        settled = True
        for window, lift in zip(windows, lifts):
            free = [len(lift) if not (run < 1e-4).any() else int((run < 1e-4).argmax()) for run in (lift, lift[::-1])]
            change = [2 - count if count else 6 for count in free]
            window[0] -= change[0]
            window[1] += change[1]
            settled &= change == [0, 0]
            if window[1] - window[0] > math.tau / step:
                return None
        if settled:
            return length, corners
    return None


def shortest_line(route, step, windows):
    """Length, corners by pulley and lift off the rim by pulley, of the shortest closed line with
    corners on the rays of the windows."""
    base, unit, least, cuts = [], [], [], []
    for pulley, (middle, sense), (first, last) in zip(route, middles(route), windows):
        angles = middle + sense * step * np.arange(first, last + 1)
        base += [pulley[2:4]] * len(angles)
        unit += list(zip(np.cos(angles), np.sin(angles)))
        # A chord between two such corners is as long as the arc it stands for.
        least += [effective_radius(pulley) * (step / 2) / math.sin(step / 2)] * len(angles)
        cuts.append(len(least))
    base, unit, least = np.array(base), np.array(unit), np.array(least)

    def length(reach):
        corners = base + reach[:, None] * unit
        edges = np.roll(corners, -1, axis=0) - corners
        sizes = np.maximum(np.hypot(edges[:, 0], edges[:, 1]), 1e-12)
        pull = edges / sizes[:, None]
        return sizes.sum(), np.einsum("ij,ij->i", np.roll(pull, 1, axis=0) - pull, unit)

    limits = [(low, None) for low in least]
    options = {"maxiter": 50000, "maxfun": 100000, "ftol": 1e-15, "gtol": 1e-9, "maxcor": 30}
    result = minimize(length, least * 1.001, jac=True, method="L-BFGS-B", bounds=limits, options=options)
    corners = base + result.x[:, None] * unit
    return result.fun, np.split(corners, cuts[:-1]), np.split(result.x - least, cuts[:-1])


def shortest(route):
    """The extrapolated length of a drive the belt can take, or None."""
    coarse, fine = (minimised(route, math.radians(step)) for step in (3, 1.5))
    if not coarse or not fine or not takes(route, fine[1]) or abs(fine[0] - coarse[0]) > 0.02:
        return None
    return fine[0] + (fine[0] - coarse[0]) / 7


def takes(route, corners):
    """Whether the line is one a belt can take: simple and clear of all strangers."""
    if not LinearRing(np.concatenate(corners)).is_simple:
        return False
    count = len(route)
    for index, pulley in enumerate(route):
        # From the end of this pulley's corners round to their beginning: all the rest of the belt.
        rest = [corners[(index + by) % count] for by in range(1, count)]
        line = LineString(np.concatenate([corners[index][-1:], *rest, corners[index][:1]]))
        if Point(pulley[2], pulley[3]).distance(line) < effective_radius(pulley) - 1e-3:
            return False
    return True


def main():
    rng = random.Random(SEED)
    print(f"# drive_routes.py, seed {SEED}; python {sys.version.split()[0]}, numpy {np.__version__}, "
          f"scipy {scipy.__version__}, shapely {shapely.__version__}")
    print(f"# effective lengths, mm; back face to effective line {BACK} mm")
    print("kind,length,pulleys")
    for kind, count, make in (("convex", CONVEX, convex), ("backed", BACKED, backed)):
        for done in range(count):
            route, length = make(rng)
            text = ";".join(f"{n}:{s}:{x},{y}:{d}" for n, s, x, y, d in route)
            print(f'{kind},{length:.6f},"{text}"', flush=True)
            print(f"{kind} {done + 1}/{count}", file=sys.stderr)


if __name__ == "__main__":
    main()

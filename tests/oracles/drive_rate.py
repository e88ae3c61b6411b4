#!/usr/bin/env python3
"""Belt lengths per second by shapely (ribbed pulleys only) and by scipy (with flat pulleys), on the
drives that the native benchmark prints, and the core's rate in ratio to them.

The hull's discs have 64 corners to a quarter turn and the minimiser's rays stand 3° apart: coarse,
so that the comparison favours the other side. Lengths must agree within that coarseness.

Usage: cargo bench -p shopmath --bench routes -- --json | drive_rate.py
"""

import json
import math
import sys
import time

import drive_routes
from shapely.geometry import Point
from shapely.ops import unary_union

# A rim of 256 corners is short by 1.0e-4 of itself; rays 3° apart by some hundredths of a millimetre.
AGREEMENT = 2e-4
SECONDS = 2.0


def pulleys(text):
    for entry in text.split(";"):
        name, side, centre, diameter = entry.split(":")
        x, y = centre.split(",")
        yield name, side, float(x), float(y), float(diameter)


def hull(route):
    discs = [Point(p[2], p[3]).buffer(p[4] / 2, quad_segs=64) for p in route]
    return unary_union(discs).convex_hull.length


def shortest(route):
    return drive_routes.minimised(route, math.radians(3))[0]


def rate(job, route):
    start, rounds = time.perf_counter(), 0
    while rounds == 0 or time.perf_counter() - start < SECONDS:
        job(route)
        rounds += 1
    return rounds / (time.perf_counter() - start)


def main():
    for line in sys.stdin:
        if not line.startswith("{"):
            continue
        row = json.loads(line)
        route = list(pulleys(row["pulleys"]))
        name, job = ("shapely", hull) if row["kind"] == "convex" else ("scipy", shortest)
        length = job(route)
        if abs(length - row["check"]) > AGREEMENT * row["check"]:
            sys.exit(f"{name} and the core disagree: {length} and {row['check']} for {row['pulleys']}")
        per_second = rate(job, route)
        print(json.dumps({
            "bench": "routes", "kind": row["kind"], "count": row["count"], "against": name,
            "per_second": per_second, "core_per_second": row["per_second"],
            "ratio": row["per_second"] / per_second, "check": length,
        }), flush=True)


if __name__ == "__main__":
    main()

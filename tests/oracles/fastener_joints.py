#!/usr/bin/env python3
"""Random bolted joints, recomputed by integration and root finding instead of closed formulas.

Resilience of bolt and parts: the integral of dz / (E(z)*A(z)) along the axis, by scipy's adaptive
quadrature, where A(z) of the parts follows the growing cone and stops at the outside. Only the
slope of the cone is taken over from the guideline, as there is no other source for it.

Shear areas of the threads: flanks as lines in sympy, cut by the cylinder that shears; the cut is
the width of the ridge. Length of engagement: roots of "shear area = twice the stress area" and of
"hole's thread as strong as the bolt's", by Brent's method.

Share of yield: stresses from integrals over the section, then von Mises.

Usage: fastener_joints.py > fastener_joints.csv        (seed and versions stand in the output)
"""

import math
import random
import sys

import numpy as np
import scipy
import sympy
from scipy.integrate import quad
from scipy.optimize import brentq

SEED = 20260311
JOINTS = 160

P, at, width = sympy.symbols("P at width", positive=True)


def ridge_width():
    """Width of a thread's ridge on the cylinder `width` across, pitch diameter `at`, as a function.

    A flank passes the pitch cylinder a quarter pitch from the ridge's middle, 30 degrees from the
    normal to the axis; the ridge narrows outwards.
    """
    steep = sympy.tan(sympy.pi / 3)
    here = sympy.Point(P / 4, at / 2)
    flank = sympy.Line(here, slope=-steep)
    cylinder = sympy.Line(sympy.Point(0, width / 2), slope=0)
    (cut,) = flank.intersection(cylinder)
    return sympy.lambdify((P, at, width), 2 * cut.x)


RIDGE = ridge_width()


def joint(rng):
    """A joint with dimensions in mm, moduli and strengths in MPa."""
    d = rng.uniform(4, 20)
    p = rng.uniform(0.06, 0.17) * d
    es = rng.uniform(0.0, 0.04) * p
    major_min = d - es - rng.uniform(0.03, 0.16) * p
    d2 = d - 0.75 * math.sqrt(3) / 2 * p
    d2_min = d2 - es - rng.uniform(0.02, 0.09) * p
    hole_pitch_max = d2 + rng.uniform(0.03, 0.12) * p
    bore_max = d - 1.25 * math.sqrt(3) / 2 * p + rng.uniform(0.05, 0.25) * p
    grip = rng.uniform(0.5, 8) * d
    bearing = d * rng.uniform(1.4, 2.2)
    return {
        "d": d,
        "p": p,
        "major_min": major_min,
        "d2_min": d2_min,
        "hole_pitch_max": hole_pitch_max,
        "bore_max": bore_max,
        "head": rng.choice([0.4, 0.5]),
        "grip": grip,
        "shank": rng.uniform(0, 1) * grip * rng.choice([0, 1]),
        "bearing": bearing,
        "hole": d * rng.uniform(1.03, 1.15),
        "outer": bearing * rng.choice([rng.uniform(1.0, 1.6), rng.uniform(1.6, 5)]),
        "tapped": rng.choice([0, 1]),
        "e_bolt": rng.uniform(190e3, 210e3),
        "e_block": rng.uniform(45e3, 205e3),
        "e_parts": rng.uniform(45e3, 205e3),
        "engaged": rng.uniform(0.5, 3) * d,
        "rm_bolt": rng.uniform(400, 1250),
        "rm_hole": rng.uniform(200, 450),
        "friction": rng.uniform(0.06, 0.3),
        "clamp": rng.uniform(1e3, 1e5),
        "rp": rng.uniform(300, 1150),
    }


def along(pieces):
    """Integral of dz/(E*A) over pieces of (length, E, diameter of the full section)."""
    total = 0.0
    for length, modulus, diameter in pieces:
        area = quad(lambda radius: 2 * math.pi * radius, 0, diameter / 2)[0]
        total += quad(lambda _: 1 / (modulus * area), 0, length)[0]
    return total


def bolt_resilience(j):
    root = j["d"] - 17 / 12 * math.sqrt(3) / 2 * j["p"]
    held = (0.33 * j["d"], j["e_block"]) if j["tapped"] else (0.4 * j["d"], j["e_bolt"])
    return along(
        [
            (j["head"] * j["d"], j["e_bolt"], j["d"]),
            (j["shank"], j["e_bolt"], j["d"]),
            (j["grip"] - j["shank"], j["e_bolt"], root),
            (0.5 * j["d"], j["e_bolt"], root),
            (*held, j["d"]),
        ]
    )


def parts_resilience(j):
    slender, wide = j["grip"] / j["bearing"], j["outer"] / j["bearing"]
    if j["tapped"]:
        slope = 0.348 + 0.013 * math.log(slender) + 0.193 * math.log(wide)
        cones, height = 1, j["grip"]
    else:
        slope = 0.362 + 0.032 * math.log(slender / 2) + 0.153 * math.log(wide)
        cones, height = 2, j["grip"] / 2

    def softness(depth):
        across = min(j["bearing"] + 2 * depth * slope, j["outer"])
        return 1 / (j["e_parts"] * math.pi / 4 * (across**2 - j["hole"] ** 2))

    meets = (j["outer"] - j["bearing"]) / (2 * slope)
    breaks = [meets] if 0 < meets < height else None
    return cones * quad(softness, 0, height, points=breaks, epsabs=0, epsrel=1e-12, limit=200)[0]


def stress_area(j):
    height = math.sqrt(3) / 2 * j["p"]
    mean = (2 * j["d"] - 0.75 * height - 17 / 12 * height) / 2
    return quad(lambda radius: 2 * math.pi * radius, 0, mean / 2)[0], mean


def shear_areas(j, length):
    """External ridge cut at the bore, internal ridge cut at the bolt's outside."""
    turns = length / j["p"]
    outer_ridge = RIDGE(j["p"], j["d2_min"], j["bore_max"])
    # The hole's ridge narrows inwards: its width at r is the pitch less the groove's.
    inner_ridge = j["p"] - RIDGE(j["p"], j["hole_pitch_max"], j["major_min"])
    return (
        turns * math.pi * j["bore_max"] * outer_ridge,
        turns * math.pi * j["major_min"] * inner_ridge,
    )


def required(j):
    area, _ = stress_area(j)
    basic = brentq(lambda length: shear_areas(j, length)[0] - 2 * area, 1e-6, 1e4, xtol=1e-13, rtol=1e-14)
    strong = shear_areas(j, basic)[0] * j["rm_bolt"]
    even = brentq(lambda length: shear_areas(j, length)[1] * j["rm_hole"] - strong, 1e-6, 1e5, xtol=1e-13, rtol=1e-14)
    return max(basic, even)


def yield_share(j):
    area, mean = stress_area(j)
    d2 = j["d"] - 0.75 * math.sqrt(3) / 2 * j["p"]
    twist = j["clamp"] * d2 / 2 * (j["p"] / (math.pi * d2) + j["friction"] / math.cos(math.pi / 6))
    plastic = quad(lambda radius: 2 * math.pi * radius**2, 0, mean / 2)[0]
    return math.hypot(j["clamp"] / area, math.sqrt(3) * twist / plastic) / j["rp"]


def main():
    rng = random.Random(SEED)
    print(
        f"# fastener_joints.py, seed {SEED}; python {sys.version.split()[0]}, "
        f"numpy {np.__version__}, scipy {scipy.__version__}, sympy {sympy.__version__}"
    )
    print("# mm, MPa, N; resiliences mm/N, areas mm2")
    results = ["bolt_resilience", "parts_resilience", "external", "internal", "required", "share"]
    for index in range(JOINTS):
        j = joint(rng)
        if index == 0:
            print(",".join([*j, *results]))
        external, internal = shear_areas(j, j["engaged"])
        values = [bolt_resilience(j), parts_resilience(j), external, internal, required(j), yield_share(j)]
        print(",".join(repr(float(value)) for value in [*j.values(), *values]))


if __name__ == "__main__":
    main()

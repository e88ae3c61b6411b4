"""The same conversions with pint, a general units library for Python.

pint reads neither `ft-lb` nor `1 5/8`, so the text is split by a regular
expression first, as one would do who uses it. Measured beside the core; used by
nothing else.

Usage: python pint_rate.py workload.json
"""

import json
import math
import re
import sys
import time

import pint

NAMES = {
    "N·m": "N*m", "lbf·ft": "lbf*ft", "lbf·in": "lbf*inch", "ozf·in": "ounce_force_inch",
    "kgf·m": "kgf*m", "kgf·cm": "kgf*cm", "in": "inch", "kgf/cm²": "kgf/cm**2",
    "inHg": "inch_Hg_32F", "US·gal": "gallon", "US·qt": "quart", "US·fl·oz": "fluid_ounce",
    "imp·gal": "imperial_gallon", "hp": "horsepower", "PS": "metric_horsepower",
    "°C": "degC", "°F": "degF", "K": "kelvin", "km/h": "km/hour", "mph": "mile/hour",
    "rpm": "rpm", "rad/s": "rad/s", "ft-lb": "lbf*ft", "in-lb": "lbf*inch", "qt": "quart",
}
SPEC = re.compile(r"(?:(\d+)\s+)?(\d+)/(\d+)\s*(.+)|(\d+(?:[.,]\d+)?)\s*(.+)")

ureg = pint.UnitRegistry()
ureg.define("ounce_force_inch = lbf * inch / 16")
UNITS = {}


def unit(name):
    """Units parsed once, as a program would keep them."""
    if name not in UNITS:
        UNITS[name] = ureg.Unit(NAMES.get(name, name))
    return UNITS[name]


def read(text):
    found = SPEC.fullmatch(text)
    if not found:
        raise ValueError(f"cannot read {text}")
    whole, over, under, fraction_unit, decimal, decimal_unit = found.groups()
    if over:
        value = int(whole or 0) + int(over) / int(under)
    else:
        value = float(decimal.replace(",", "."))
    return ureg.Quantity(value, unit(fraction_unit or decimal_unit))


def one_round(work):
    total, count = 0.0, 0
    for spec in work["specs"]:
        quantity = read(spec["text"])
        for target in work["kinds"][spec["kind"]]:
            total += quantity.m_as(unit(target))
            count += 1
    return count


def check(work):
    """A number that agrees between converters only if every conversion does."""
    return sum(
        math.log1p(abs(read(spec["text"]).m_as(unit(target))))
        for spec in work["specs"]
        for target in work["kinds"][spec["kind"]]
    )


def main():
    with open(sys.argv[1], encoding="utf8") as file:
        work = json.load(file)
    count = one_round(work)
    rounds = 0
    start = time.perf_counter()
    while time.perf_counter() - start < 3:
        for _ in range(10):
            one_round(work)
        rounds += 10
    elapsed = time.perf_counter() - start
    rate = rounds * count / elapsed
    result = {"per_second": rate, "check": check(work), "version": pint.__version__}
    print(json.dumps(result))


main()

"""Every unit of Convert against pint, a general-purpose units library from PyPI.

Writes units_pint.csv beside this file: what one of each unit is in the coherent SI unit (for a
temperature scale: its 0 and its 100 in kelvin). Run with `python3 units_pint.py` where pint is
installed; the version that made the committed file stands in its first line.
"""

import csv
import pathlib
import platform

import pint

# The symbol the page prints, pint's name for it, and the coherent unit.
UNITS = [
    ("N·m", "newton * meter", "newton * meter"),
    ("lbf·ft", "force_pound * foot", "newton * meter"),
    ("lbf·in", "force_pound * inch", "newton * meter"),
    ("ozf·in", "force_ounce * inch", "newton * meter"),
    ("kgf·m", "kilogram_force * meter", "newton * meter"),
    ("kgf·cm", "kilogram_force * centimeter", "newton * meter"),
    ("mm", "millimeter", "meter"),
    ("cm", "centimeter", "meter"),
    ("m", "meter", "meter"),
    ("in", "inch", "meter"),
    ("ft", "foot", "meter"),
    ("mi", "mile", "meter"),
    ("km", "kilometer", "meter"),
    ("kPa", "kilopascal", "pascal"),
    ("MPa", "megapascal", "pascal"),
    ("bar", "bar", "pascal"),
    ("psi", "force_pound / inch ** 2", "pascal"),
    ("kgf/cm²", "kilogram_force / centimeter ** 2", "pascal"),
    ("inHg", "inch_Hg", "pascal"),
    ("L", "liter", "meter ** 3"),
    ("mL", "milliliter", "meter ** 3"),
    ("US·gal", "gallon", "meter ** 3"),
    ("US·qt", "quart", "meter ** 3"),
    ("US·fl·oz", "fluid_ounce", "meter ** 3"),
    ("imp·gal", "imperial_gallon", "meter ** 3"),
    ("kg", "kilogram", "kilogram"),
    ("lb", "pound", "kilogram"),
    ("N", "newton", "newton"),
    ("kN", "kilonewton", "newton"),
    ("lbf", "force_pound", "newton"),
    ("kgf", "kilogram_force", "newton"),
    ("kW", "kilowatt", "watt"),
    ("hp", "horsepower", "watt"),
    ("PS", "metric_horsepower", "watt"),
    ("km/h", "kilometer / hour", "meter / second"),
    ("mph", "mile / hour", "meter / second"),
    ("rpm", "revolution / minute", "radian / second"),
    ("rad/s", "radian / second", "radian / second"),
    ("ΔK", "kelvin", "kelvin"),
    ("Δ°F", "delta_degree_Fahrenheit", "kelvin"),
]
SCALES = [("°C", "degC"), ("°F", "degF"), ("K", "kelvin")]


def main():
    registry = pint.UnitRegistry(non_int_type=float)
    rows = [(symbol, repr(registry.Quantity(1.0, name).to(coherent).magnitude)) for symbol, name, coherent in UNITS]
    for symbol, name in SCALES:
        for mark in (0.0, 100.0):
            rows.append((f"{mark:g} {symbol}", repr(registry.Quantity(mark, name).to("kelvin").magnitude)))
    path = pathlib.Path(__file__).with_name("units_pint.csv")
    with path.open("w", newline="") as out:
        out.write(f"# pint {pint.__version__}, Python {platform.python_version()}\n")
        csv.writer(out, lineterminator="\n").writerows(rows)


main()

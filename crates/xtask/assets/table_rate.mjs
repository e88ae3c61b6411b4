// What a page without a units library would do: a table of factors and one
// regular expression. Measured beside the core; used by nothing else.
//
// Usage: node table_rate.mjs workload.json

import { readFileSync } from "node:fs";

const INCH = 0.0254;
const POUND = 0.45359237;
const G = 9.80665;
const GALLON = 231 * INCH ** 3;
const LBF = POUND * G;

// Factor to the coherent SI unit; a pair adds what comes first.
const UNITS = {
  "N·m": 1, "lbf·ft": LBF * 12 * INCH, "lbf·in": LBF * INCH, "ozf·in": (LBF / 16) * INCH,
  "kgf·m": G, "kgf·cm": G / 100,
  mm: 1e-3, cm: 1e-2, m: 1, in: INCH, ft: 12 * INCH, mi: 63360 * INCH, km: 1e3,
  kPa: 1e3, MPa: 1e6, bar: 1e5, psi: LBF / INCH ** 2, "kgf/cm²": G * 1e4, inHg: 13595.1 * G * INCH,
  L: 1e-3, mL: 1e-6, "US·gal": GALLON, "US·qt": GALLON / 4, "US·fl·oz": GALLON / 128,
  "imp·gal": 4.54609e-3,
  kg: 1, lb: POUND,
  N: 1, kN: 1e3, lbf: LBF, kgf: G,
  kW: 1e3, hp: 550 * LBF * 12 * INCH, PS: 75 * G,
  "°C": [273.15, 1], "°F": [459.67, 5 / 9], K: 1,
  "km/h": 1 / 3.6, mph: (63360 * INCH) / 3600,
  rpm: Math.PI / 30, "rad/s": 1,
};
const ALIASES = { "ft-lb": "lbf·ft", "in-lb": "lbf·in", qt: "US·qt" };
const SPEC = /^(?:(\d+)\s+)?(\d+)\/(\d+)\s*(.+)$|^(\d+(?:[.,]\d+)?)\s*(.+)$/;

function toSi(value, unit) {
  return Array.isArray(unit) ? (value + unit[0]) * unit[1] : value * unit;
}

function fromSi(value, unit) {
  return Array.isArray(unit) ? value / unit[1] - unit[0] : value / unit;
}

function read(text) {
  const found = SPEC.exec(text);
  if (!found) throw new Error(`cannot read ${text}`);
  const [, whole, over, under, fractionUnit, decimal, decimalUnit] = found;
  const value = over ? Number(whole ?? 0) + over / under : Number(decimal.replace(",", "."));
  const name = fractionUnit ?? decimalUnit;
  const unit = UNITS[ALIASES[name] ?? name];
  if (unit === undefined) throw new Error(`no unit ${name}`);
  return toSi(value, unit);
}

const { kinds, specs } = JSON.parse(readFileSync(process.argv[2], "utf8"));

// The sum is used, so that no conversion can be left out as dead code.
function round() {
  let total = 0;
  let count = 0;
  for (const { text, kind } of specs) {
    const value = read(text);
    for (const target of kinds[kind]) {
      total += fromSi(value, UNITS[target]);
      count += 1;
    }
  }
  return { total, count };
}

// A number that agrees between converters only if every conversion does.
function check() {
  const logs = specs.flatMap(({ text, kind }) =>
    kinds[kind].map((target) => Math.log1p(Math.abs(fromSi(read(text), UNITS[target])))));
  return logs.reduce((sum, log) => sum + log, 0);
}

function rate(seconds) {
  const start = performance.now();
  let count = 0;
  while (performance.now() - start < seconds * 1000) {
    for (let i = 0; i < 100; i += 1) count += round().count;
  }
  return (count * 1000) / (performance.now() - start);
}

// The first second lets the compiler settle.
rate(1);
console.log(JSON.stringify({ per_second: rate(2), check: check(), version: process.version }));

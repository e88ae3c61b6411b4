//! The rows of the threads: nominal size and limits of size, with what each rests on.
//!
//! Metric limits 6g and 6H, millimetre. 6H of M10×1.5 to M14×1.5, but for M10×1 and M12×1, and 6g of M5×0.8
//! are printed in ASME B1.13M; the other rows up to M14 are recalled, and those marked as calculated follow from
//! the ISO 965-1 rules: es, Td, Td2, TD1 and TD2 from its tables, TD2(6) five steps up the R40
//! series from Td2(6). They are not rounded from the formulas (1.32·Td2 gives 170 µm where the
//! standard has 180).
//!
//! Unified limits 2A and 2B, inch, by the ASME B1.1 formulas with Le = D, each tolerance rounded
//! to four places before it is applied, and the bore of a 2B hole given to three, as that standard
//! prints it (1/4-20: 0.196 to 0.207). Recalled from the standard and marked as calculated.

use super::si::metres;
use super::thread::{External, Internal, Series, Standard, Thread, limit};
use crate::source::Mark;
use Mark::{Calculated, Memory, Published};
use Series::{Coarse, Fine};

/// One millimetre, metre.
const MILLIMETRE: f64 = 1e-3;
/// One inch, metre (exact).
const INCH: f64 = 0.0254;

/// A row as printed: the diameters of the bolt are major max, min, pitch max, min, root min; those
/// of the hole are minor min, max, pitch min, max.
struct Row {
    name: &'static str,
    size: &'static str,
    standard: Standard,
    series: Series,
    unit: f64,
    diameter: f64,
    pitch: f64,
    bolt: [f64; 5],
    bolt_mark: Mark,
    hole: [f64; 4],
    hole_mark: Mark,
}

#[rustfmt::skip] // one row, one line
static ROWS: &[Row] = &[
    metric("M4×0.7", "M4", Coarse, 4.0, 0.7, [3.978, 3.838, 3.523, 3.433, 3.002], Calculated, [3.242, 3.422, 3.545, 3.663], Calculated),
    metric("M5×0.8", "M5", Coarse, 5.0, 0.8, [4.976, 4.826, 4.456, 4.361, 3.868], Published, [4.134, 4.334, 4.480, 4.605], Memory),
    metric("M6×1", "M6", Coarse, 6.0, 1.0, [5.974, 5.794, 5.324, 5.212, 4.596], Memory, [4.917, 5.153, 5.350, 5.500], Memory),
    metric("M7×1", "M7", Coarse, 7.0, 1.0, [6.974, 6.794, 6.324, 6.212, 5.596], Calculated, [5.917, 6.153, 6.350, 6.500], Calculated),
    metric("M8×1.25", "M8", Coarse, 8.0, 1.25, [7.972, 7.760, 7.160, 7.042, 6.272], Memory, [6.647, 6.912, 7.188, 7.348], Memory),
    metric("M8×1", "M8", Fine, 8.0, 1.0, [7.974, 7.794, 7.324, 7.212, 6.596], Memory, [6.917, 7.153, 7.350, 7.500], Memory),
    metric("M10×1.5", "M10", Coarse, 10.0, 1.5, [9.968, 9.732, 8.994, 8.862, 7.938], Memory, [8.376, 8.676, 9.026, 9.206], Published),
    metric("M10×1.25", "M10", Fine, 10.0, 1.25, [9.972, 9.760, 9.160, 9.042, 8.272], Memory, [8.647, 8.912, 9.188, 9.348], Published),
    metric("M10×1", "M10", Fine, 10.0, 1.0, [9.974, 9.794, 9.324, 9.212, 8.596], Calculated, [8.917, 9.153, 9.350, 9.500], Calculated),
    metric("M12×1.75", "M12", Coarse, 12.0, 1.75, [11.966, 11.701, 10.829, 10.679, 9.601], Memory, [10.106, 10.441, 10.863, 11.063], Published),
    metric("M12×1.5", "M12", Fine, 12.0, 1.5, [11.968, 11.732, 10.994, 10.854, 9.930], Memory, [10.376, 10.676, 11.026, 11.216], Published),
    metric("M12×1.25", "M12", Fine, 12.0, 1.25, [11.972, 11.760, 11.160, 11.028, 10.258], Memory, [10.647, 10.912, 11.188, 11.368], Published),
    metric("M12×1", "M12", Fine, 12.0, 1.0, [11.974, 11.794, 11.324, 11.206, 10.590], Calculated, [10.917, 11.153, 11.350, 11.510], Calculated),
    metric("M14×2", "M14", Coarse, 14.0, 2.0, [13.962, 13.682, 12.663, 12.503, 11.271], Memory, [11.835, 12.210, 12.701, 12.913], Published),
    metric("M14×1.5", "M14", Fine, 14.0, 1.5, [13.968, 13.732, 12.994, 12.854, 11.930], Memory, [12.376, 12.676, 13.026, 13.216], Published),
    metric("M14×1.25", "M14", Fine, 14.0, 1.25, [13.972, 13.760, 13.160, 13.028, 12.258], Calculated, [12.647, 12.912, 13.188, 13.368], Calculated),
    metric("M16×2", "M16", Coarse, 16.0, 2.0, [15.962, 15.682, 14.663, 14.503, 13.271], Calculated, [13.835, 14.210, 14.701, 14.913], Calculated),
    metric("M16×1.5", "M16", Fine, 16.0, 1.5, [15.968, 15.732, 14.994, 14.854, 13.930], Calculated, [14.376, 14.676, 15.026, 15.216], Calculated),
    metric("M18×2.5", "M18", Coarse, 18.0, 2.5, [17.958, 17.623, 16.334, 16.164, 14.624], Calculated, [15.294, 15.744, 16.376, 16.600], Calculated),
    metric("M18×2", "M18", Fine, 18.0, 2.0, [17.962, 17.682, 16.663, 16.503, 15.271], Calculated, [15.835, 16.210, 16.701, 16.913], Calculated),
    metric("M18×1.5", "M18", Fine, 18.0, 1.5, [17.968, 17.732, 16.994, 16.854, 15.930], Calculated, [16.376, 16.676, 17.026, 17.216], Calculated),
    metric("M20×2.5", "M20", Coarse, 20.0, 2.5, [19.958, 19.623, 18.334, 18.164, 16.624], Calculated, [17.294, 17.744, 18.376, 18.600], Calculated),
    metric("M20×2", "M20", Fine, 20.0, 2.0, [19.962, 19.682, 18.663, 18.503, 17.271], Calculated, [17.835, 18.210, 18.701, 18.913], Calculated),
    metric("M20×1.5", "M20", Fine, 20.0, 1.5, [19.968, 19.732, 18.994, 18.854, 17.930], Calculated, [18.376, 18.676, 19.026, 19.216], Calculated),
    metric("M22×2.5", "M22", Coarse, 22.0, 2.5, [21.958, 21.623, 20.334, 20.164, 18.624], Calculated, [19.294, 19.744, 20.376, 20.600], Calculated),
    metric("M22×2", "M22", Fine, 22.0, 2.0, [21.962, 21.682, 20.663, 20.503, 19.271], Calculated, [19.835, 20.210, 20.701, 20.913], Calculated),
    metric("M22×1.5", "M22", Fine, 22.0, 1.5, [21.968, 21.732, 20.994, 20.854, 19.930], Calculated, [20.376, 20.676, 21.026, 21.216], Calculated),
    unified("#10-24 UNC", "#10", Coarse, 0.19, 24.0, [0.1890, 0.1818, 0.1619, 0.1586, 0.1329], [0.145, 0.156, 0.1629, 0.1672]),
    unified("#10-32 UNF", "#10", Fine, 0.19, 32.0, [0.1891, 0.1831, 0.1688, 0.1658, 0.1465], [0.156, 0.164, 0.1697, 0.1736]),
    unified("1/4-20 UNC", "1/4", Coarse, 0.25, 20.0, [0.2489, 0.2408, 0.2164, 0.2127, 0.1819], [0.196, 0.207, 0.2175, 0.2223]),
    unified("1/4-28 UNF", "1/4", Fine, 0.25, 28.0, [0.2490, 0.2425, 0.2258, 0.2225, 0.2005], [0.211, 0.220, 0.2268, 0.2311]),
    unified("5/16-18 UNC", "5/16", Coarse, 0.3125, 18.0, [0.3113, 0.3026, 0.2752, 0.2712, 0.2370], [0.252, 0.265, 0.2764, 0.2817]),
    unified("5/16-24 UNF", "5/16", Fine, 0.3125, 24.0, [0.3114, 0.3042, 0.2843, 0.2806, 0.2549], [0.267, 0.277, 0.2854, 0.2902]),
    unified("3/8-16 UNC", "3/8", Coarse, 0.375, 16.0, [0.3737, 0.3643, 0.3331, 0.3287, 0.2902], [0.307, 0.321, 0.3344, 0.3401]),
    unified("3/8-24 UNF", "3/8", Fine, 0.375, 24.0, [0.3739, 0.3667, 0.3468, 0.3430, 0.3173], [0.330, 0.340, 0.3479, 0.3528]),
    unified("7/16-14 UNC", "7/16", Coarse, 0.4375, 14.0, [0.4361, 0.4258, 0.3897, 0.3850, 0.3410], [0.360, 0.376, 0.3911, 0.3972]),
    unified("7/16-20 UNF", "7/16", Fine, 0.4375, 20.0, [0.4362, 0.4281, 0.4037, 0.3995, 0.3687], [0.383, 0.395, 0.4050, 0.4104]),
    unified("1/2-13 UNC", "1/2", Coarse, 0.5, 13.0, [0.4985, 0.4876, 0.4485, 0.4435, 0.3961], [0.417, 0.434, 0.4500, 0.4565]),
    unified("1/2-20 UNF", "1/2", Fine, 0.5, 20.0, [0.4987, 0.4906, 0.4662, 0.4619, 0.4311], [0.446, 0.457, 0.4675, 0.4731]),
    unified("9/16-12 UNC", "9/16", Coarse, 0.5625, 12.0, [0.5609, 0.5495, 0.5068, 0.5016, 0.4503], [0.472, 0.490, 0.5084, 0.5152]),
    unified("9/16-18 UNF", "9/16", Fine, 0.5625, 18.0, [0.5611, 0.5524, 0.5250, 0.5205, 0.4863], [0.502, 0.515, 0.5264, 0.5323]),
    unified("5/8-11 UNC", "5/8", Coarse, 0.625, 11.0, [0.6233, 0.6112, 0.5643, 0.5588, 0.5028], [0.527, 0.546, 0.5660, 0.5732]),
    unified("5/8-18 UNF", "5/8", Fine, 0.625, 18.0, [0.6236, 0.6149, 0.5875, 0.5828, 0.5486], [0.565, 0.578, 0.5889, 0.5949]),
    unified("3/4-10 UNC", "3/4", Coarse, 0.75, 10.0, [0.7482, 0.7353, 0.6832, 0.6773, 0.6157], [0.642, 0.663, 0.6850, 0.6927]),
    unified("3/4-16 UNF", "3/4", Fine, 0.75, 16.0, [0.7485, 0.7391, 0.7079, 0.7029, 0.6644], [0.682, 0.696, 0.7094, 0.7159]),
];

#[allow(clippy::too_many_arguments)] // a row of the table has this many columns
const fn metric(
    name: &'static str,
    size: &'static str,
    series: Series,
    diameter: f64,
    pitch: f64,
    bolt: [f64; 5],
    bolt_mark: Mark,
    hole: [f64; 4],
    hole_mark: Mark,
) -> Row {
    Row {
        name,
        size,
        standard: Standard::Metric,
        series,
        unit: MILLIMETRE,
        diameter,
        pitch,
        bolt,
        bolt_mark,
        hole,
        hole_mark,
    }
}

const fn unified(
    name: &'static str,
    size: &'static str,
    series: Series,
    diameter: f64,
    threads_per_inch: f64,
    bolt: [f64; 5],
    hole: [f64; 4],
) -> Row {
    Row {
        name,
        size,
        standard: Standard::Unified,
        series,
        unit: INCH,
        diameter,
        pitch: 1.0 / threads_per_inch,
        bolt,
        bolt_mark: Calculated,
        hole,
        hole_mark: Calculated,
    }
}

/// Every thread of the table, metric first, by rising diameter and falling pitch: M4 to M22, #10 to 3/4 in.
///
/// ```
/// use shopmath::fastener::thread_table::threads;
/// use shopmath::quantity::exact::length::Millimetre;
/// let m10 = threads().filter(|thread| thread.size == "M10").map(|thread| thread.name);
/// assert_eq!(m10.collect::<Vec<_>>(), ["M10×1.5", "M10×1.25", "M10×1"]);
/// let bore = threads().find(|thread| thread.name == "M10×1.5").unwrap().internal.minor;
/// assert!((bore.max.get::<Millimetre>() - 8.676).abs() < 1e-9);
/// ```
pub fn threads() -> impl Iterator<Item = Thread> {
    ROWS.iter().map(Row::thread)
}

impl Row {
    fn thread(&self) -> Thread {
        let [major_max, major_min, pitch_max, pitch_min, root_min] = self.bolt.map(|size| size * self.unit);
        let [minor_min, minor_max, hole_min, hole_max] = self.hole.map(|size| size * self.unit);
        Thread {
            name: self.name,
            size: self.size,
            standard: self.standard,
            series: self.series,
            diameter: metres(self.diameter * self.unit),
            pitch: metres(self.pitch * self.unit),
            external: External {
                major: limit(major_max, major_min),
                pitch: limit(pitch_max, pitch_min),
                root_min: metres(root_min),
                mark: self.bolt_mark,
            },
            internal: Internal {
                minor: limit(minor_max, minor_min),
                pitch: limit(hole_max, hole_min),
                mark: self.hole_mark,
            },
        }
    }
}

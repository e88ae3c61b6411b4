//! The sources of the calculators for fasteners.

use super::{Mark, Source};

const fn source(publication: &'static str, part: &'static str, mark: Mark) -> Source {
    Source {
        publication,
        part,
        mark,
    }
}

/// Thread geometry and stress area, metric.
pub const METRIC_THREAD: Source = source(
    "ISO 68-1, ISO 724, ISO 898-1",
    "d2 = d − 3H/4, d3 = d − 17H/12, As = π/4·((d2 + d3)/2)²",
    Mark::Published,
);
/// Stress area, unified.
pub const UNIFIED_THREAD: Source = source("ASME B1.1", "At = π/4·(D − 0.974279/n)²", Mark::Published);
/// Strengths of the metric classes.
pub const CLASS: Source = source(
    "ISO 898-1",
    "Rm, Rp0.2 and proof stress by class and diameter",
    Mark::Published,
);
/// Metric classes whose yield strength is recalled.
pub const CLASS_YIELD_RECALLED: Source = source(
    "ISO 898-1",
    "Rm and proof stress by class and diameter; Rp0.2 from memory",
    Mark::Memory,
);
/// Metric classes recalled as a whole.
pub const CLASS_RECALLED: Source = source("ISO 898-1", "Rm, Rp0.2 and proof stress by class", Mark::Memory);
/// SAE grades.
pub const SAE_GRADE: Source = source(
    "SAE J429",
    "proof, yield and tensile strength by grade",
    Mark::Published,
);
/// Stainless classes.
pub const STAINLESS_CLASS: Source = source("ISO 3506-1", "Rp0.2 and Rm by class", Mark::Memory);
/// Stiffness and expansion of bolt steel.
pub const STEEL: Source = source(
    "VDI 2230-1; Callister, table B.6",
    "E 205 GPa from memory, expansion 11.7e-6/K",
    Mark::Memory,
);
/// Stiffness and expansion of austenitic stainless steel.
pub const STAINLESS_METAL: Source = source(
    "Callister, table B.6",
    "E 193 GPa from memory, expansion 17.2e-6/K of type 304",
    Mark::Memory,
);
/// Stiffness of the materials of the parts.
pub const MODULUS: Source = source("", "Young's modulus, handbook values", Mark::Memory);
/// Mild steel parts: a cautious choice, for the part's steel is rarely known.
pub const MILD_STEEL: Source = source(
    "Callister, table B.6",
    "expansion 11.7e-6/K; Rm 400 MPa taken for unknown steel, τ = 0.6 Rm",
    Mark::CommonPractice,
);
/// Grey iron.
pub const GREY_IRON: Source = source(
    "Callister, table B.6",
    "expansion 11.4e-6/K; Rm 250 and τ 225 MPa from memory, the low side of the published range",
    Mark::Memory,
);
/// A380.
pub const A380: Source = source(
    "NADCA, table A-3-2",
    "Rm 324 MPa, τ 190 MPa, 21.8e-6/K",
    Mark::Published,
);
/// AlSi9Cu3(Fe).
pub const ALSI9CU3: Source = source("EN 1706", "Rm 240 MPa at least, τ = 0.6 Rm, 21e-6/K", Mark::Memory);
/// A356-T6.
pub const A356: Source = source(
    "Aluminum Association data",
    "Rm 234 MPa at least, τ 143 MPa, 21.4e-6/K, sand cast",
    Mark::Published,
);
/// 6061-T6.
pub const WROUGHT_6061: Source = source(
    "handbook values",
    "expansion 23.6e-6/K as published; Rm 310 MPa, τ 207 MPa from memory",
    Mark::Memory,
);
/// AZ91D.
pub const AZ91D: Source = source(
    "handbook values",
    "expansion 26.0e-6/K as published; Rm 230 MPa, τ 140 MPa from memory",
    Mark::Memory,
);
/// Hexagon heads, metric.
pub const HEX_HEAD: Source = source(
    "ISO 4017, ISO 273, ISO 272",
    "dW min, medium hole, across flats",
    Mark::Memory,
);
/// Flange heads.
pub const FLANGE_HEAD: Source = source("EN 1665, ISO 273", "dW min, medium hole, across flats", Mark::Memory);
/// Socket heads, metric.
pub const SOCKET_HEAD: Source = source("ISO 4762, ISO 273", "dW min, medium hole, key", Mark::Memory);
/// Inch heads.
pub const INCH_HEAD: Source = source(
    "ASME B18.2.1, B18.3, B18.2.8",
    "across flats, normal hole; bearing circle taken as 0.95 of the width",
    Mark::Memory,
);
/// Diameters measured on the part.
pub const MEASURED: Source = source("", "diameters as measured on the part", Mark::Exact);
/// Friction by the state of the surfaces.
pub const FRICTION_CLASS: Source = source("VDI 2230-1", "friction classes A to D", Mark::Memory);
/// Friction of steel into aluminium.
pub const FRICTION_PRACTICE: Source = source("", "dry steel into aluminium, as dry steel", Mark::CommonPractice);
/// Torque and clamp load.
pub const TIGHTENING: Source = source(
    "VDI 2230-1",
    "M = F·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]",
    Mark::Published,
);
/// Share of yield under tension and twist.
pub const YIELD_SHARE: Source = source(
    "VDI 2230-1:2003 and later",
    "tension with twist over the plastic section modulus",
    Mark::Published,
);
/// Proof load.
pub const PROOF: Source = source("ISO 898-1, SAE J429", "proof load = As·Sp", Mark::Published);
/// Nut factor.
pub const NUT_FACTOR: Source = source(
    "Shigley, 9th ed., table 8-15",
    "K: plain 0.30, zinc 0.20, lubricated 0.18, anti-seize 0.12",
    Mark::Published,
);
/// Adapter on a torque wrench.
pub const ADAPTER: Source = source(
    "TM 1-1500-204-23-9; NAVEDTRA 14315",
    "setting = T·L/(L + E·cos α)",
    Mark::Published,
);
/// Reading against target.
pub const READING: Source = source(
    "ISO 6789-1:2003",
    "deviation = reading/target − 1, ±4 % or ±6 %",
    Mark::Published,
);
/// Lowest useful reading.
pub const LOWEST_READING: Source = source(
    "US Army technical manual",
    "no promise below 20 % of full scale",
    Mark::Published,
);
/// Torque plus angle.
pub const ANGLE: Source = source("VDI 2230-1", "θ = 2π·F·(δS + δP)/P", Mark::Memory);
/// Stretch past yield.
pub const PLASTIC: Source = source(
    "",
    "clamp load held at yield, the rest of the turn taken as stretch for good; hardening left out",
    Mark::Calculated,
);
/// Resilience of bolt and parts.
pub const RESILIENCE: Source = source(
    "VDI 2230-1",
    "δS by parts of the bolt, δP by deformation cone, or cone and sleeve",
    Mark::Memory,
);
/// The frusta, as a second opinion.
pub const FRUSTA: Source = source("Shigley, 9th ed., section 8-5", "30° frusta", Mark::Published);
/// Thread engagement.
pub const ENGAGEMENT: Source = source(
    "FED-STD-H28/2 and handbook practice",
    "shear areas A_Ss and A_Sn, Le, J; τ of the bolt 0.6 Rm; thin boss C1 by VDI 2230-1, on both threads as in ISO/TR 16224",
    Mark::Memory,
);
/// Chamfer and countersink.
pub const CHAMFER: Source = source("VDI 2230-1", "0.8 P beyond the full threads", Mark::Memory);
/// Rules of thumb for engagement.
pub const RULE_OF_THUMB: Source = source(
    "",
    "1 d in steel, 1.5 d in cast iron, 2 d in light alloy",
    Mark::CommonPractice,
);
/// Wire thread insert.
pub const INSERT: Source = source(
    "",
    "hole tapped one and a half thread heights larger on diameter, same pitch and tolerances",
    Mark::Calculated,
);
/// Twist to yield.
pub const TWIST_YIELD: Source = source(
    "",
    "full circle of d3, shear yield Rp/√3, elastic limit",
    Mark::Calculated,
);
/// Twist to break.
pub const TWIST_BREAK: Source = source(
    "ISO 898-7",
    "least breaking torque, M1 to M10, 8.8 to 12.9",
    Mark::Memory,
);
/// Where to stop turning.
pub const STOP: Source = source("", "80 % of the twist-yield torque", Mark::CommonPractice);
/// Force on a lever.
pub const LEVER: Source = source("", "F = M/l", Mark::Exact);
/// Heat and clamp load.
pub const HEAT: Source = source(
    "VDI 2230-1; Callister, table B.6",
    "clamp change from the difference of expansion",
    Mark::Calculated,
);
/// Measured lengths.
pub const LENGTHS: Source = source("", "lengths as measured", Mark::Exact);

/// Every source above, for the page that lists them: what the calculators for fasteners rest on.
pub const ALL: &[Source] = &[
    METRIC_THREAD,
    UNIFIED_THREAD,
    CLASS,
    CLASS_YIELD_RECALLED,
    CLASS_RECALLED,
    SAE_GRADE,
    STAINLESS_CLASS,
    STEEL,
    STAINLESS_METAL,
    MODULUS,
    MILD_STEEL,
    GREY_IRON,
    A380,
    ALSI9CU3,
    A356,
    WROUGHT_6061,
    AZ91D,
    HEX_HEAD,
    FLANGE_HEAD,
    SOCKET_HEAD,
    INCH_HEAD,
    MEASURED,
    FRICTION_CLASS,
    FRICTION_PRACTICE,
    TIGHTENING,
    YIELD_SHARE,
    PROOF,
    NUT_FACTOR,
    ADAPTER,
    READING,
    LOWEST_READING,
    ANGLE,
    PLASTIC,
    RESILIENCE,
    FRUSTA,
    ENGAGEMENT,
    CHAMFER,
    RULE_OF_THUMB,
    INSERT,
    TWIST_YIELD,
    TWIST_BREAK,
    STOP,
    LEVER,
    HEAT,
    LENGTHS,
];

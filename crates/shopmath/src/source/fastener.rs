//! The sources of the calculators for fasteners.

use super::{Mark, Source};

sources! {
    /// What the calculators for fasteners rest on, for the page that lists it.
    pub ALL

    /// Thread geometry and stress area, metric.
    METRIC_THREAD = "ISO 68-1, ISO 724, ISO 898-1",
        "d2 = d − 3H/4, d3 = d − 17H/12, As = π/4·((d2 + d3)/2)²", Published;

    /// Stress area, unified.
    UNIFIED_THREAD = "ASME B1.1", "At = π/4·(D − 0.974279/n)²", Published;

    /// Strengths of the metric classes.
    CLASS = "ISO 898-1", "Rm, Rp0.2 and proof stress by class and diameter", Published;

    /// Metric classes whose yield strength is recalled.
    CLASS_YIELD_RECALLED = "ISO 898-1", "Rm and proof stress by class and diameter; Rp0.2 from memory", Memory;

    /// Metric classes recalled as a whole.
    CLASS_RECALLED = "ISO 898-1", "Rm, Rp0.2 and proof stress by class", Memory;

    /// SAE grades.
    SAE_GRADE = "SAE J429", "proof, yield and tensile strength by grade", Published;

    /// Stainless classes.
    STAINLESS_CLASS = "ISO 3506-1", "Rp0.2 and Rm by class", Memory;

    /// Stiffness and expansion of bolt steel.
    STEEL = "VDI 2230-1; Callister, table B.6", "E 205 GPa from memory, expansion 11.7e-6/K", Memory;

    /// Stiffness and expansion of austenitic stainless steel.
    STAINLESS_METAL = "Callister, table B.6", "E 193 GPa from memory, expansion 17.2e-6/K of type 304", Memory;

    /// Stiffness of the materials of the parts.
    MODULUS = "", "Young's modulus, handbook values", Memory;

    /// Mild steel parts: a cautious choice, for the part's steel is rarely known.
    MILD_STEEL = "Callister, table B.6",
        "expansion 11.7e-6/K; Rm 400 MPa taken for unknown steel, τ = 0.6 Rm", CommonPractice;

    /// Grey iron.
    GREY_IRON = "Callister, table B.6",
        "expansion 11.4e-6/K; Rm 250 and τ 225 MPa from memory, the low side of the published range", Memory;

    /// A380.
    A380 = "NADCA, table A-3-2", "Rm 324 MPa, τ 190 MPa, 21.8e-6/K", Published;

    /// AlSi9Cu3(Fe).
    ALSI9CU3 = "EN 1706", "Rm 240 MPa at least, τ = 0.6 Rm, 21e-6/K", Memory;

    /// A356-T6.
    A356 = "Aluminum Association data", "Rm 234 MPa at least, τ 143 MPa, 21.4e-6/K, sand cast", Published;

    /// 6061-T6.
    WROUGHT_6061 = "handbook values", "expansion 23.6e-6/K as published; Rm 310 MPa, τ 207 MPa from memory", Memory;

    /// AZ91D.
    AZ91D = "handbook values", "expansion 26.0e-6/K as published; Rm 230 MPa, τ 140 MPa from memory", Memory;

    /// Hexagon heads, metric.
    HEX_HEAD = "ISO 4017, ISO 273, ISO 272", "dW min, medium hole, across flats", Memory;

    /// Flange heads.
    FLANGE_HEAD = "EN 1665, ISO 273", "dW min, medium hole, across flats", Memory;

    /// Socket heads, metric.
    SOCKET_HEAD = "ISO 4762, ISO 273", "dW min, medium hole, key", Memory;

    /// Inch heads.
    INCH_HEAD = "ASME B18.2.1, B18.3, B18.2.8",
        "across flats, normal hole; bearing circle taken as 0.95 of the width", Memory;

    /// Diameters measured on the part.
    MEASURED = "", "diameters as measured on the part", Exact;

    /// Friction by the state of the surfaces.
    FRICTION_CLASS = "VDI 2230-1", "friction classes A to D", Memory;

    /// Friction of steel into aluminium.
    FRICTION_PRACTICE = "", "dry steel into aluminium, as dry steel", CommonPractice;

    /// Torque and clamp load.
    TIGHTENING = "VDI 2230-1", "M = F·[P/(2π) + d2·μG/(2·cos 30°) + (DKm/2)·μK]", Published;

    /// Share of yield under tension and twist.
    YIELD_SHARE = "VDI 2230-1:2003 and later", "tension with twist over the plastic section modulus", Published;

    /// Proof load.
    PROOF = "ISO 898-1, SAE J429", "proof load = As·Sp", Published;

    /// Nut factor.
    NUT_FACTOR = "Shigley, 9th ed., table 8-15",
        "K: plain 0.30, zinc 0.20, lubricated 0.18, anti-seize 0.12", Published;

    /// Adapter on a torque wrench.
    ADAPTER = "TM 1-1500-204-23-9; NAVEDTRA 14315", "setting = T·L/(L + E·cos α)", Published;

    /// Reading against target.
    READING = "ISO 6789-1:2003", "deviation = reading/target − 1, ±4 % or ±6 %", Published;

    /// Lowest useful reading.
    LOWEST_READING = "US Army technical manual", "no promise below 20 % of full scale", Published;

    /// Torque plus angle.
    ANGLE = "VDI 2230-1", "θ = 2π·F·(δS + δP)/P", Memory;

    /// Stretch past yield.
    PLASTIC = "",
        "clamp load held at yield, the rest of the turn taken as stretch for good; hardening left out", Calculated;

    /// Resilience of bolt and parts.
    RESILIENCE = "VDI 2230-1", "δS by parts of the bolt, δP by deformation cone, or cone and sleeve", Memory;

    /// The frusta, as a second opinion.
    FRUSTA = "Shigley, 9th ed., section 8-5", "30° frusta", Published;

    /// Thread engagement.
    ENGAGEMENT = "FED-STD-H28/2 and handbook practice",
        "shear areas A_Ss and A_Sn, Le, J; τ of the bolt 0.6 Rm; thin boss C1 by VDI 2230-1, on both threads as in ISO/TR 16224", Memory;

    /// Chamfer and countersink.
    CHAMFER = "VDI 2230-1", "0.8 P beyond the full threads", Memory;

    /// Rules of thumb for engagement.
    RULE_OF_THUMB = "", "1 d in steel, 1.5 d in cast iron, 2 d in light alloy", CommonPractice;

    /// Wire thread insert.
    INSERT = "", "hole tapped one and a half thread heights larger on diameter, same pitch and tolerances", Calculated;

    /// Twist to yield.
    TWIST_YIELD = "", "full circle of d3, shear yield Rp/√3, elastic limit", Calculated;

    /// Twist to break.
    TWIST_BREAK = "ISO 898-7", "least breaking torque, M1 to M10, 8.8 to 12.9", Memory;

    /// Where to stop turning.
    STOP = "", "80 % of the twist-yield torque", CommonPractice;

    /// Force on a lever.
    LEVER = "", "F = M/l", Exact;

    /// Heat and clamp load.
    HEAT = "VDI 2230-1; Callister, table B.6", "clamp change from the difference of expansion", Calculated;

    /// Measured lengths.
    LENGTHS = "", "lengths as measured", Exact;
}

//! The one table of units: for each kind its `uom` type, and for each unit the exact factor, the
//! symbol, the readings and whether it is a row of Convert.
//!
//! `uom`'s own US units carry rounded factors (its lbf·ft is off by 8.6e-8), so no value is ever
//! read through them: every unit used here is declared here, as a product of exact factors.
//! Basis: NIST SP 811:2008, Appendix B, and the definitions it rests on. Exact unless a unit's
//! doc says otherwise. Reading and printing of text live in [`super::read`] and [`super::print`].

use super::compliance::{Compliance, InUnits as _};
use uom::si::f64::{
    Angle, AngularVelocity, Area, ElectricCurrent, ElectricPotential, Force, Frequency, Length, LinearMassDensity,
    Mass, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Torque, Velocity, Volume,
};

/// International inch, metre (exact, 1959).
const INCH: f64 = 0.0254;
/// International foot, metre (exact).
const FOOT: f64 = 0.3048;
/// International avoirdupois pound, kilogram (exact).
const POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall, m/s² (exact, CGPM 1901).
const GRAVITY: f64 = 9.806_65;
/// Pound-force, newton (exact: the pound times standard gravity).
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// US liquid gallon, cubic metre (exact: 231 in³).
const US_GALLON: f64 = 3.785_411_784e-3;
/// Imperial gallon, cubic metre (exact, UK Weights and Measures Act 1985).
const IMPERIAL_GALLON: f64 = 4.546_09e-3;
/// Conventional millimetre of mercury times 25.4, pascal (SP 811 prints 3.386 389 E+03; this is
/// 13 595.1 kg/m³ × standard gravity × 0.0254 m, exact by convention).
const INCH_OF_MERCURY: f64 = 13_595.1 * GRAVITY * INCH;

/// Which tools a unit belongs to; decides the order of rows by the "my tools read in" setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum System {
    /// SI and metric gravitational units.
    Metric,
    /// US customary and imperial units.
    Inch,
}

/// Whether a unit is offered as a row of Convert, or only understood when typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Use {
    /// A row of Convert, in table order.
    Row,
    /// Read from text, or shown by a calculator; no row.
    Read,
}

/// One line of the table.
struct Entry {
    unit: Unit,
    kind: Kind,
    system: System,
    usage: Use,
    symbol: &'static str,
    name: &'static str,
    factor: f64,
    /// Folded spellings, each followed by a space: one text weighs less than a list of them.
    spellings: &'static str,
}

macro_rules! units {
    ($(
        $(#[$kind_doc:meta])*
        $kind:ident: $type:ty, $name:literal, $module:path as $alias:ident {
            $(
                $(#[$unit_doc:meta])*
                $usage:ident $system:ident $unit:ident = $factor:expr $(, $offset:expr)?;
                $symbol:literal, $full:literal, [$($spelling:literal),* $(,)?];
            )+
        }
    )+) => {
        /// What a quantity measures.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Kind { $($(#[$kind_doc])* $kind),+ }

        /// Every unit the suite reads or shows.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Unit { $($($(#[$unit_doc])* #[doc = concat!("\n\nSymbol `", $symbol, "`.")] $unit),+),+ }

        /// A quantity whose kind is known only when the program runs: what a text field yields.
        /// The typed `uom` quantity is inside; calculators take that one.
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub enum Quantity { $($(#[$kind_doc])* $kind($type)),+ }

        /// The exact units as `uom` unit types, one module per kind: use these with
        /// `Torque::new::<exact::torque::PoundForceFoot>(44.0)`.
        pub mod exact {
            $(
                #[doc = concat!("Units of ", $name, ".")]
                pub mod $alias {
                    #![allow(missing_docs, unreachable_pub, unused_imports)]
                    unit! {
                        system: uom::si;
                        quantity: $module;
                        $(@$unit: crate::quantity::table::factors::$unit $(, $offset)?; $symbol, $full, $full;)+
                    }
                }
            )+
        }

        /// The factors as constants: `uom` evaluates its coefficients inside modules of its own.
        #[allow(non_upper_case_globals)]
        mod factors {
            use super::{FOOT, GRAVITY, IMPERIAL_GALLON, INCH, INCH_OF_MERCURY, POUND, POUND_FORCE, US_GALLON};
            $($(pub(super) const $unit: f64 = $factor;)+)+
        }

        static TABLE: &[Entry] = &[
            $($(Entry {
                unit: Unit::$unit,
                kind: Kind::$kind,
                system: System::$system,
                usage: Use::$usage,
                symbol: $symbol,
                name: $full,
                factor: factors::$unit,
                spellings: concat!($($spelling, " "),*),
            }),+),+
        ];

        impl Kind {
            /// Every kind, in table order.
            pub const ALL: &'static [Kind] = &[$(Kind::$kind),+];

            /// The kind's name in lower case, such as "torque".
            ///
            /// ```
            /// assert_eq!(shopmath::quantity::Kind::Rotation.name(), "rotational speed");
            /// ```
            #[must_use]
            pub fn name(self) -> &'static str {
                match self { $(Kind::$kind => $name),+ }
            }
        }

        impl Unit {
            /// The quantity of `value` of this unit, by the exact factor of the table (NIST SP 811, Appendix B).
            ///
            /// ```
            /// use shopmath::quantity::{Quantity, Unit, exact::torque::NewtonMetre};
            /// let Quantity::Torque(torque) = Unit::PoundForceFoot.of(100.0) else { panic!("no torque") };
            /// assert!((torque.get::<NewtonMetre>() - 135.581_794_833_14).abs() < 1e-9);
            /// ```
            #[must_use]
            pub fn of(self, value: f64) -> Quantity {
                match self { $($(Unit::$unit => Quantity::$kind(<$type>::new::<exact::$alias::$unit>(value))),+),+ }
            }
        }

        impl Quantity {
            /// What the quantity measures.
            ///
            /// ```
            /// use shopmath::quantity::{Kind, Unit};
            /// assert_eq!(Unit::PoundForcePerSquareInch.of(30.0).kind(), Kind::Pressure);
            /// ```
            #[must_use]
            pub fn kind(self) -> Kind {
                match self { $(Quantity::$kind(_) => Kind::$kind),+ }
            }

            /// The value in the kind's coherent SI unit, that of [`Kind::coherent`].
            ///
            /// ```
            /// use shopmath::quantity::Unit;
            /// assert!((Unit::InchOfMercury.of(1.0).si() - 3_386.388_640_341).abs() < 1e-9); // Pa
            /// assert!((Unit::Fahrenheit.of(212.0).si() - 373.15).abs() < 1e-9); // K
            /// ```
            #[must_use]
            pub fn si(self) -> f64 {
                match self { $(Quantity::$kind(quantity) => quantity.value),+ }
            }

            /// The value in `unit`; `None` when the unit measures something else.
            ///
            /// ```
            /// use shopmath::quantity::Unit;
            /// let pressure = Unit::PoundForcePerSquareInch.of(30.0);
            /// assert!((pressure.value_in(Unit::Bar).unwrap() - 2.068_427_187_95).abs() < 1e-10);
            /// assert_eq!(pressure.value_in(Unit::NewtonMetre), None);
            /// ```
            #[must_use]
            pub fn value_in(self, unit: Unit) -> Option<f64> {
                match (self, unit) {
                    $($((Quantity::$kind(quantity), Unit::$unit) => Some(quantity.get::<exact::$alias::$unit>()),)+)+
                    _ => None,
                }
            }
        }

        $(impl From<$type> for Quantity {
            fn from(quantity: $type) -> Self { Quantity::$kind(quantity) }
        })+
    };
}

units! {
    /// Torque. Shares its dimension with energy and is a different thing.
    Torque: Torque, "torque", uom::si::torque as torque {
        /// Newton metre.
        Row Metric NewtonMetre = 1.0; "N·m", "newton metres",
            ["nm", "newtonmetre", "newtonmeter", "newtonmetres", "newtonmeters"];
        /// Pound-force foot.
        Row Inch PoundForceFoot = POUND_FORCE * FOOT; "lbf·ft", "pound-force feet",
            ["lbfft", "ftlb", "ftlbs", "ftlbf", "lbft", "lbsft", "ft/lb", "ft/lbs", "footpound", "footpounds", "feetpounds",
             "footlb", "footlbs", "lbfoot", "lbsfoot", "poundfoot", "poundfeet", "poundsfeet", "poundforcefoot", "poundforcefeet", "footpoundforce", "footpoundsforce"];
        /// Pound-force inch.
        Row Inch PoundForceInch = POUND_FORCE * INCH; "lbf·in", "pound-force inches",
            ["lbfin", "inlb", "inlbs", "inlbf", "lbin", "lbsin", "in/lb", "in/lbs", "inchpound", "inchpounds", "inchlb",
             "inchlbs", "lbinch", "lbsinch", "poundinch", "poundinches", "poundsinches", "poundforceinch", "poundforceinches"];
        /// Ounce-force inch.
        Row Inch OunceForceInch = POUND_FORCE / 16.0 * INCH; "ozf·in", "ounce-force inches",
            ["ozfin", "inoz", "inozf", "ozin", "inchounce", "inchounces", "ounceinch", "ounceinches"];
        /// Kilogram-force metre, also written kgm, kpm, mkp and mkg.
        Row Metric KilogramForceMetre = GRAVITY; "kgf·m", "kilogram-force metres",
            ["kgfm", "kgm", "kpm", "mkp", "mkg", "mkgf", "kilogrammetre", "kilogrammeter", "kilogrammetres", "kilogrammeters"];
        /// Kilogram-force centimetre.
        Row Metric KilogramForceCentimetre = GRAVITY * 0.01; "kgf·cm", "kilogram-force centimetres",
            ["kgfcm", "kgcm", "kpcm", "cmkp", "cmkg", "cmkgf"];
        /// Decanewton metre, ten newton metres.
        Read Metric DecanewtonMetre = 10.0; "daN·m", "decanewton metres", ["danm", "mdan"];
        /// Centinewton metre, a hundredth of a newton metre.
        Read Metric CentinewtonMetre = 0.01; "cN·m", "centinewton metres", ["cnm"];
        /// Newton centimetre, the same hundredth.
        Read Metric NewtonCentimetre = 0.01; "N·cm", "newton centimetres", ["ncm", "newtoncentimetre", "newtoncentimetres", "newtoncentimeters"];
        /// Newton millimetre, a thousandth of a newton metre.
        Read Metric NewtonMillimetre = 0.001; "N·mm", "newton millimetres", ["nmm", "newtonmillimetre", "newtonmillimetres", "newtonmillimeters"];
    }

    /// Length.
    Length: Length, "length", uom::si::length as length {
        /// Millimetre.
        Row Metric Millimetre = 1e-3; "mm", "millimetres",
            ["mm", "millimetre", "millimeter", "millimetres", "millimeters"];
        /// Centimetre.
        Row Metric Centimetre = 1e-2; "cm", "centimetres", ["cm", "centimetre", "centimeter", "centimetres", "centimeters"];
        /// Metre.
        Row Metric Metre = 1.0; "m", "metres", ["m", "metre", "meter", "metres", "meters"];
        /// Inch.
        Row Inch Inch = INCH; "in", "inches", ["in", "ins", "inch", "inches", "\""];
        /// Foot.
        Row Inch Foot = FOOT; "ft", "feet", ["ft", "foot", "feet", "'"];
        /// Mile (international).
        Row Inch Mile = FOOT * 5280.0; "mi", "miles", ["mi", "mile", "miles"];
        /// Kilometre.
        Row Metric Kilometre = 1e3; "km", "kilometres", ["km", "kms", "kilometre", "kilometer", "kilometres", "kilometers"];
        /// Thousandth of an inch.
        Read Inch Thousandth = INCH / 1000.0; "thou", "thousandths of an inch", ["thou", "thousandth", "thousandths", "mil", "mils"];
        /// Micrometre.
        Read Metric Micrometre = 1e-6; "µm", "micrometres", ["µm", "um", "micron", "microns", "micrometre", "micrometer"];
    }

    /// Pressure or stress; gauge and absolute are not told apart here.
    Pressure: Pressure, "pressure", uom::si::pressure as pressure {
        /// Kilopascal.
        Row Metric Kilopascal = 1e3; "kPa", "kilopascals", ["kpa", "kilopascal", "kilopascals"];
        /// Megapascal, the same as N/mm².
        Row Metric Megapascal = 1e6; "MPa", "megapascals", ["mpa", "megapascal", "megapascals", "n/mm2"];
        /// Bar.
        Row Metric Bar = 1e5; "bar", "bar", ["bar", "bars"];
        /// Pound-force per square inch.
        Row Inch PoundForcePerSquareInch = POUND_FORCE / (INCH * INCH); "psi", "pounds per square inch",
            ["psi", "psig", "psia", "lb/in2", "lbf/in2", "lbs/in2", "lb/sqin", "lbf/sqin", "lbs/sqin", "poundspersquareinch"];
        /// Kilogram-force per square centimetre, the technical atmosphere.
        Row Metric KilogramForcePerSquareCentimetre = GRAVITY * 1e4; "kgf/cm²", "kilogram-force per square centimetre",
            ["kgf/cm2", "kg/cm2", "kp/cm2", "kg/sqcm", "at"];
        /// Conventional inch of mercury.
        Row Inch InchOfMercury = INCH_OF_MERCURY; "inHg", "inches of mercury", ["inhg", "\"hg", "inchhg", "inchesofmercury"];
        /// Pascal.
        Read Metric Pascal = 1.0; "Pa", "pascals", ["pa", "pascal", "pascals", "n/m2"];
        /// Standard atmosphere.
        Read Metric Atmosphere = 101_325.0; "atm", "atmospheres", ["atm", "atmosphere", "atmospheres"];
        /// Thousand pounds per square inch.
        Read Inch KilopoundPerSquareInch = 1e3 * POUND_FORCE / (INCH * INCH); "ksi", "thousand pounds per square inch", ["ksi"];
    }

    /// Volume of a fluid.
    Volume: Volume, "volume", uom::si::volume as volume {
        /// Litre.
        Row Metric Litre = 1e-3; "L", "litres", ["l", "litre", "liter", "litres", "liters", "ltr", "ltrs", "lt", "dm3"];
        /// Millilitre, the same as a cubic centimetre.
        Row Metric Millilitre = 1e-6; "mL", "millilitres",
            ["ml", "millilitre", "milliliter", "millilitres", "milliliters", "cc", "cm3", "ccm"];
        /// US liquid gallon.
        Row Inch UsGallon = US_GALLON; "US·gal", "US gallons", ["usgal", "usgals", "usgallon", "usgallons", "gal", "gals", "gallon", "gallons", "galus"];
        /// US liquid quart.
        Row Inch UsQuart = US_GALLON / 4.0; "US·qt", "US quarts", ["usqt", "usqts", "usquart", "usquarts", "qt", "qts", "quart", "quarts"];
        /// US fluid ounce.
        Row Inch UsFluidOunce = US_GALLON / 128.0; "US·fl·oz", "US fluid ounces",
            ["usfloz", "floz", "fluidounce", "fluidounces", "usfluidounce", "usfluidounces", "ozfl"];
        /// Imperial gallon.
        Row Inch ImperialGallon = IMPERIAL_GALLON; "imp·gal", "imperial gallons",
            ["impgal", "impgals", "impgallon", "impgallons", "imperialgallon", "imperialgallons", "ukgal", "ukgallon", "ukgallons"];
        /// US liquid pint.
        Read Inch UsPint = US_GALLON / 8.0; "US·pt", "US pints", ["uspt", "uspint", "uspints", "pt", "pts", "pint", "pints"];
        /// Imperial quart.
        Read Inch ImperialQuart = IMPERIAL_GALLON / 4.0; "imp·qt", "imperial quarts", ["impqt", "impquart", "impquarts", "imperialquart", "imperialquarts", "ukqt"];
        /// Imperial pint.
        Read Inch ImperialPint = IMPERIAL_GALLON / 8.0; "imp·pt", "imperial pints", ["imppt", "imppint", "imppints", "imperialpint", "imperialpints", "ukpt"];
        /// Imperial fluid ounce.
        Read Inch ImperialFluidOunce = IMPERIAL_GALLON / 160.0; "imp·fl·oz", "imperial fluid ounces", ["impfloz", "imperialfluidounce", "imperialfluidounces", "ukfloz"];
        /// Cubic metre.
        Read Metric CubicMetre = 1.0; "m³", "cubic metres", ["m3"];
    }

    /// Mass.
    Mass: Mass, "mass", uom::si::mass as mass {
        /// Kilogram.
        Row Metric Kilogram = 1.0; "kg", "kilograms", ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme"];
        /// Pound (avoirdupois).
        Row Inch Pound = POUND; "lb", "pounds", ["lb", "lbs", "lbm", "pound", "pounds"];
        /// Gram.
        Read Metric Gram = 1e-3; "g", "grams", ["g", "gram", "grams", "gramme"];
        /// Ounce (avoirdupois).
        Read Inch Ounce = POUND / 16.0; "oz·wt", "ounces by weight", ["ozwt", "ozmass", "ozavdp", "ounceweight", "ouncesweight"];
    }

    /// Force.
    Force: Force, "force", uom::si::force as force {
        /// Newton.
        Row Metric Newton = 1.0; "N", "newtons", ["n", "newton", "newtons"];
        /// Kilonewton.
        Row Metric Kilonewton = 1e3; "kN", "kilonewtons", ["kn", "kilonewton", "kilonewtons"];
        /// Pound-force.
        Row Inch PoundForce = POUND_FORCE; "lbf", "pounds-force", ["lbf", "lbsf", "poundforce", "poundsforce"];
        /// Kilogram-force, the kilopond.
        Row Metric KilogramForce = GRAVITY; "kgf", "kilograms-force", ["kgf", "kp", "kilopond", "kiloponds"];
        /// Decanewton, ten newtons.
        Read Metric Decanewton = 10.0; "daN", "decanewtons", ["dan"];
    }

    /// Power.
    Power: Power, "power", uom::si::power as power {
        /// Kilowatt.
        Row Metric Kilowatt = 1e3; "kW", "kilowatts", ["kw", "kilowatt", "kilowatts"];
        /// Mechanical horsepower, 550 foot pounds-force per second.
        Row Inch Horsepower = 550.0 * FOOT * POUND_FORCE; "hp", "horsepower", ["hp", "bhp", "horsepower"];
        /// Metric horsepower, 75 kilogram-force metres per second.
        Row Metric MetricHorsepower = 75.0 * GRAVITY; "PS", "metric horsepower", ["ps", "cv", "metrichp", "metrichorsepower", "hpmetric"];
        /// Watt.
        Read Metric Watt = 1.0; "W", "watts", ["w", "watt", "watts"];
    }

    /// Temperature on a scale; a difference is another kind.
    Temperature: ThermodynamicTemperature, "temperature", uom::si::thermodynamic_temperature as temperature {
        /// Degree Celsius.
        Row Metric Celsius = 1.0, 273.15; "°C", "degrees Celsius", ["°c", "c", "degc", "celsius", "degreescelsius", "degreesc", "centigrade"];
        /// Degree Fahrenheit.
        Row Inch Fahrenheit = 5.0 / 9.0, 459.67; "°F", "degrees Fahrenheit", ["°f", "f", "degf", "fahrenheit", "degreesfahrenheit", "degreesf"];
        /// Kelvin.
        Row Metric Kelvin = 1.0; "K", "kelvins", ["k", "kelvin", "kelvins", "°k"];
    }

    /// Speed along the road.
    Speed: Velocity, "speed", uom::si::velocity as speed {
        /// Kilometre per hour.
        Row Metric KilometrePerHour = 1.0 / 3.6; "km/h", "kilometres per hour", ["km/h", "kmh", "kph", "km/hr", "kmph"];
        /// Mile per hour.
        Row Inch MilePerHour = FOOT * 5280.0 / 3600.0; "mph", "miles per hour", ["mph", "mi/h", "miles/h", "mile/h", "milesperhour"];
        /// Metre per second.
        Read Metric MetrePerSecond = 1.0; "m/s", "metres per second", ["m/s", "mps"];
    }

    /// Rotational speed.
    Rotation: AngularVelocity, "rotational speed", uom::si::angular_velocity as rotation {
        /// Revolution per minute.
        Row Inch RevolutionPerMinute = core::f64::consts::TAU / 60.0; "rpm", "revolutions per minute",
            ["rpm", "r/min", "rev/min", "revs", "revs/min", "min1", "1/min", "/min", "u/min", "upm"];
        /// Radian per second.
        Row Metric RadianPerSecond = 1.0; "rad/s", "radians per second", ["rad/s", "rads/s", "rad/sec"];
    }

    /// Plane angle, such as the turn after a snug torque.
    Angle: Angle, "angle", uom::si::angle as angle {
        /// Degree of arc.
        Row Metric Degree = core::f64::consts::TAU / 360.0; "°", "degrees", ["°", "deg", "degs", "degree", "degrees", "°turn", "degturn", "degreeturn", "degreesturn", "°further", "degfurther", "degreesfurther", "°more", "degreesmore"];
        /// Full turn.
        Row Metric Turn = core::f64::consts::TAU; "turn", "turns", ["turn", "turns", "rev", "revolution", "revolutions"];
        /// Flat of a hexagon, 60°.
        Row Metric HexFlat = core::f64::consts::TAU / 6.0; "flat", "hex flats", ["flat", "flats", "hexflat", "hexflats"];
        /// Point of a 12-point socket, 30°.
        Row Metric TwelvePoint = core::f64::consts::TAU / 12.0; "click", "12-point clicks", ["click", "clicks", "12pointclick", "12pointclicks"];
        /// Radian.
        Read Metric Radian = 1.0; "rad", "radians", ["rad", "rads", "radian", "radians"];
    }

    /// Difference of temperature.
    TemperatureDifference: TemperatureInterval, "temperature difference", uom::si::temperature_interval as temperature_difference {
        /// Kelvin, as a difference.
        Row Metric KelvinDifference = 1.0; "ΔK", "kelvins of difference", ["δk", "δ°c", "δc", "kdiff"];
        /// Degree Fahrenheit, as a difference.
        Row Inch FahrenheitDifference = 5.0 / 9.0; "Δ°F", "degrees Fahrenheit of difference", ["δ°f", "δf"];
    }

    /// Area, such as a thread's stress area.
    Area: Area, "area", uom::si::area as area {
        /// Square millimetre.
        Read Metric SquareMillimetre = 1e-6; "mm²", "square millimetres", ["mm2"];
        /// Square inch.
        Read Inch SquareInch = INCH * INCH; "in²", "square inches", ["in2"];
        /// Square metre.
        Read Metric SquareMetre = 1.0; "m²", "square metres", ["m2"];
    }

    /// Ratio, a number without a unit.
    Ratio: Ratio, "ratio", uom::si::ratio as ratio {
        /// Plain number.
        Read Metric Number = 1.0; "1", "", [];
        /// Hundredth.
        Read Metric Percent = 0.01; "%", "per cent", ["%", "percent", "pct"];
    }

    /// Compliance, deflection per force.
    Compliance: Compliance, "compliance", crate::quantity::compliance as compliance {
        /// Metre per newton.
        Read Metric MetrePerNewton = 1.0; "m/N", "metres per newton", ["m/n"];
        /// Micrometre per kilonewton.
        Read Metric MicrometrePerKilonewton = 1e-9; "µm/kN", "micrometres per kilonewton", ["µm/kn", "um/kn"];
    }

    /// Frequency of a vibrating strand.
    Frequency: Frequency, "frequency", uom::si::frequency as frequency {
        /// Hertz.
        Read Metric Hertz = 1.0; "Hz", "hertz", ["hz", "hertz", "cps"];
    }

    /// Mass per length of a belt.
    LinearDensity: LinearMassDensity, "mass per length", uom::si::linear_mass_density as linear_density {
        /// Kilogram per metre.
        Read Metric KilogramPerMetre = 1.0; "kg/m", "kilograms per metre", ["kg/m"];
        /// Gram per metre.
        Read Metric GramPerMetre = 1e-3; "g/m", "grams per metre", ["g/m"];
    }

    /// Electric current, such as an alternator gives.
    Current: ElectricCurrent, "electric current", uom::si::electric_current as current {
        /// Ampere.
        Read Metric Ampere = 1.0; "A", "amperes", ["a", "amp", "amps", "ampere", "amperes"];
    }

    /// Voltage.
    Voltage: ElectricPotential, "voltage", uom::si::electric_potential as voltage {
        /// Volt.
        Read Metric Volt = 1.0; "V", "volts", ["v", "volt", "volts"];
    }
}

impl Unit {
    /// Every unit, in table order.
    ///
    /// ```
    /// use shopmath::quantity::Unit;
    /// assert_eq!(Unit::all().filter(|unit| unit.symbol() == "lbf·ft").count(), 1);
    /// assert!(Unit::all().all(|unit| (unit.of(2.0).value_in(unit).unwrap() - 2.0).abs() < 1e-9));
    /// ```
    pub fn all() -> impl Iterator<Item = Unit> {
        TABLE.iter().map(|entry| entry.unit)
    }

    /// The unit's line. The table is generated in the order of the variants.
    fn entry(self) -> &'static Entry {
        &TABLE[self as usize]
    }

    /// What the unit measures.
    ///
    /// ```
    /// use shopmath::quantity::{Kind, Unit};
    /// assert_eq!(Unit::Celsius.kind(), Kind::Temperature);
    /// assert_eq!(Unit::KelvinDifference.kind(), Kind::TemperatureDifference);
    /// ```
    #[must_use]
    pub fn kind(self) -> Kind {
        self.entry().kind
    }

    /// The symbol the page prints, such as `lbf·ft`. No two units share one.
    ///
    /// ```
    /// use shopmath::quantity::Unit;
    /// assert_eq!((Unit::PoundForceFoot.symbol(), Unit::KilogramForceMetre.symbol()), ("lbf·ft", "kgf·m"));
    /// ```
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.entry().symbol
    }

    /// The unit's name in the plural, such as "pound-force feet".
    ///
    /// ```
    /// assert_eq!(shopmath::quantity::Unit::KilogramForceMetre.name(), "kilogram-force metres");
    /// ```
    #[must_use]
    pub fn name(self) -> &'static str {
        self.entry().name
    }

    /// The tools the unit belongs to.
    ///
    /// ```
    /// use shopmath::quantity::{System, Unit};
    /// assert_eq!((Unit::KilogramForceMetre.system(), Unit::UsQuart.system()), (System::Metric, System::Inch));
    /// ```
    #[must_use]
    pub fn system(self) -> System {
        self.entry().system
    }

    /// Coherent SI units in one step of this unit (NIST SP 811, Appendix B); always above zero. The offset of a
    /// temperature scale is not in it.
    ///
    /// ```
    /// use shopmath::quantity::Unit;
    /// assert_eq!(Unit::PoundForce.factor(), 4.448_221_615_260_5); // N
    /// assert_eq!(Unit::Celsius.factor(), 1.0); // K, without the 273.15
    /// ```
    #[must_use]
    pub fn factor(self) -> f64 {
        self.entry().factor
    }

    /// Whether its values run into thousands and have no three decimals: there a point before three digits
    /// may mark thousands.
    pub(crate) fn runs_into_thousands(self) -> bool {
        matches!(
            self,
            Self::Kilometre | Self::Mile | Self::RevolutionPerMinute | Self::Newton
        )
    }

    /// Ways people type the unit, folded as [`super::spelling::fold`] does.
    ///
    /// ```
    /// use shopmath::quantity::Unit;
    /// assert!(Unit::PoundForceFoot.spellings().any(|spelling| spelling == "ftlbs"));
    /// ```
    pub fn spellings(self) -> impl Iterator<Item = &'static str> {
        self.entry().spellings.split_terminator(' ')
    }

    /// The unit a spelling means, folded as [`super::spelling::fold`] does; `None` for any other text.
    ///
    /// ```
    /// use shopmath::quantity::{Unit, spelling::fold};
    /// assert_eq!(Unit::spelled(&fold("Ft-Lbs")), Some(Unit::PoundForceFoot));
    /// assert_eq!((Unit::spelled("Ft-Lbs"), Unit::spelled("furlong")), (None, None));
    /// ```
    #[must_use]
    pub fn spelled(folded: &str) -> Option<Unit> {
        TABLE
            .iter()
            .find(|entry| entry.unit.spellings().any(|spelling| spelling == folded))
            .map(|entry| entry.unit)
    }
}

impl Kind {
    /// The rows Convert shows for this kind, in table order.
    ///
    /// ```
    /// use shopmath::quantity::{Kind, Unit};
    /// let rows: Vec<Unit> = Kind::Temperature.rows().collect();
    /// assert_eq!(rows, [Unit::Celsius, Unit::Fahrenheit, Unit::Kelvin]);
    /// ```
    pub fn rows(self) -> impl Iterator<Item = Unit> {
        TABLE
            .iter()
            .filter(move |entry| entry.kind == self && entry.usage == Use::Row)
            .map(|entry| entry.unit)
    }

    /// The kind's coherent SI unit: the one whose factor is 1.
    ///
    /// ```
    /// use shopmath::quantity::{Kind, Unit};
    /// assert_eq!((Kind::Volume.coherent(), Kind::Rotation.coherent()), (Unit::CubicMetre, Unit::RadianPerSecond));
    /// assert!(Kind::ALL.iter().all(|kind| kind.coherent().factor() == 1.0));
    /// ```
    #[must_use]
    pub fn coherent(self) -> Unit {
        match self {
            Kind::Torque => Unit::NewtonMetre,
            Kind::Length => Unit::Metre,
            Kind::Pressure => Unit::Pascal,
            Kind::Volume => Unit::CubicMetre,
            Kind::Mass => Unit::Kilogram,
            Kind::Force => Unit::Newton,
            Kind::Power => Unit::Watt,
            Kind::Temperature => Unit::Kelvin,
            Kind::Speed => Unit::MetrePerSecond,
            Kind::Rotation => Unit::RadianPerSecond,
            Kind::Angle => Unit::Radian,
            Kind::TemperatureDifference => Unit::KelvinDifference,
            Kind::Area => Unit::SquareMetre,
            Kind::Ratio => Unit::Number,
            Kind::Compliance => Unit::MetrePerNewton,
            Kind::Frequency => Unit::Hertz,
            Kind::LinearDensity => Unit::KilogramPerMetre,
            Kind::Current => Unit::Ampere,
            Kind::Voltage => Unit::Volt,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::spelling::fold;
    use std::collections::HashSet;

    #[test]
    fn the_table_stands_in_the_order_of_the_variants() {
        for (index, entry) in TABLE.iter().enumerate() {
            assert_eq!(entry.unit as usize, index, "{:?}", entry.unit);
            assert_eq!(entry.unit.of(1.0).kind(), entry.kind, "{:?}", entry.unit);
        }
    }

    #[test]
    fn symbols_are_unique_and_read_back() {
        let mut seen = HashSet::new();
        for unit in Unit::all() {
            assert!(seen.insert(unit.symbol()), "{} twice", unit.symbol());
            if unit != Unit::Number {
                assert_eq!(Unit::spelled(&fold(unit.symbol())), Some(unit), "{}", unit.symbol());
            }
        }
    }

    #[test]
    fn every_spelling_is_folded_and_means_one_unit() {
        let mut seen = HashSet::new();
        for spelling in Unit::all().flat_map(Unit::spellings) {
            assert!(seen.insert(spelling), "{spelling} twice");
            assert_eq!(fold(spelling), spelling);
        }
    }

    #[test]
    fn the_coherent_unit_has_factor_one() {
        for kind in Kind::ALL {
            assert_eq!(kind.coherent().kind(), *kind);
            assert_eq!(kind.coherent().factor().to_bits(), 1.0_f64.to_bits());
            assert_eq!(kind.coherent().of(2.5).si().to_bits(), 2.5_f64.to_bits());
        }
    }
}

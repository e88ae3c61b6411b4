//! Findings of the arm's travel: what growth of the belt it can still take, and where it stands
//! after the stretch and wear typed.

use super::Bench;
use super::held::{Held, named};
use crate::drive::si::metres;
use crate::drive::take_up::Fit;
use crate::drive::wear;
use crate::quantity::{Quantity, Unit};
use crate::result::{Finding, Term, Working};
use crate::source;
use uom::si::f64::{Length, Ratio};

/// What is left until the arm runs out.
pub(super) fn left(fit: &Fit, belt: Length) -> Vec<Finding> {
    let term = || {
        vec![Term::new(
            "ΔL",
            "belt the arm can still take up",
            fit.remaining,
            Unit::Millimetre,
        )]
    };
    let turn = wear::ribbed_turn(&fit.route);
    let mut seat_terms = term();
    seat_terms.push(Term::new("Σθ", "ribbed wraps together, radian", turn, Unit::Number));
    let tenth = metres(1e-4);
    vec![
        named(
            "belt-left",
            "growth until the arm runs out",
            fit.remaining,
            Unit::Millimetre,
            Working::new("L_max − L", Vec::new(), source::drive::TAKE_UP),
        ),
        named(
            "stretch-left",
            "stretch until the arm runs out",
            wear::stretch_left(fit.remaining, belt),
            Unit::Percent,
            Working::new("ΔL/L", term(), source::drive::TAKE_UP),
        ),
        named(
            "seat-left",
            "wear into the grooves until the arm runs out",
            wear::seat_left(fit.remaining, &fit.route),
            Unit::Millimetre,
            Working::new("ΔL/Σθ", seat_terms, source::drive::SEAT),
        ),
        named(
            "seat-frees",
            "belt freed by 0.1 mm of seat wear",
            tenth * turn,
            Unit::Millimetre,
            Working::new(
                "w·Σθ",
                vec![Term::new("Σθ", "ribbed wraps together, radian", turn, Unit::Number)],
                source::drive::SEAT,
            ),
        ),
    ]
}

/// Where the arm stands once the belt has stretched and sunk by what was typed.
pub(super) fn after(bench: &mut Bench, held: &Held, fit: &Fit, belt: Length) -> Vec<Finding> {
    let (stretch, seat) = (bench.value("stretch"), bench.value("seat"));
    let key = if stretch.is_some() { "stretch" } else { "seat" };
    let misread = bench
        .faults
        .iter()
        .any(|fault| ["stretch", "seat"].contains(&fault.key));
    if misread || (stretch.is_none() && seat.is_none()) {
        return Vec::new();
    }
    let none = (Ratio::new::<crate::quantity::exact::ratio::Number>(0.0), metres(0.0));
    let stretch = if let Some(Quantity::Ratio(stretch)) = stretch {
        stretch
    } else {
        none.0
    };
    let seat = if let Some(Quantity::Length(seat)) = seat {
        seat
    } else {
        none.1
    };
    let grown = belt + wear::growth(belt, stretch, seat, &fit.route);
    match held.arm_for(bench, grown) {
        Ok((angle, share)) => {
            let terms = || {
                vec![
                    Term::new("ε", "stretch", stretch, Unit::Percent),
                    Term::new("w", "seat wear", seat, Unit::Millimetre),
                    Term::new("L′", "length the arm must hold", grown, Unit::Millimetre),
                ]
            };
            let equation = "L(α) = L·(1 + ε) + w·Σθ";
            let angle = named(
                "arm-angle-worn",
                "arm angle then",
                angle,
                Unit::Degree,
                Working::new(equation, terms(), source::drive::SEAT),
            );
            let share = named(
                "arm-share-worn",
                "travel used then",
                share,
                Unit::Percent,
                Working::new(equation, terms(), source::drive::SEAT),
            );
            vec![angle, share]
        }
        Err(sentence) => {
            bench.fault(key, sentence);
            Vec::new()
        }
    }
}

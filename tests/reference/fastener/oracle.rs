//! Resilience, shear areas, engagement and share of yield of random joints against integration and
//! root finding: what `tests/oracles/fastener_joints.py` wrote down.

use super::{mm, mpa, ratio, thread};
use fenderside_tests::{Tolerance, agree};
use shopmath::fastener::engagement::{Engagement, external_area, internal_area};
use shopmath::fastener::resilience::{Body, Form, Held, Parts, bolt, parts};
use shopmath::fastener::thread::{Limit, Thread};
use shopmath::fastener::tighten::yield_share;
use shopmath::quantity::compliance::InUnits;
use shopmath::quantity::exact::area::SquareMillimetre;
use shopmath::quantity::exact::compliance::MetrePerNewton;
use shopmath::quantity::exact::force::Newton;
use shopmath::quantity::exact::length::Millimetre;
use shopmath::quantity::exact::ratio::Number;
use uom::si::f64::{Force, Length};

const FILE: &str = include_str!("../../oracles/fastener_joints.csv");

/// Quadrature was asked for 1e-12; lines, roots and long chains cost a few digits more.
const INTEGRATED: Tolerance = Tolerance::Relative(1e-10);

/// One joint of the file, by column name.
struct Row<'a> {
    names: &'a [&'a str],
    values: Vec<f64>,
}

impl Row<'_> {
    fn get(&self, name: &str) -> f64 {
        self.values[self.names.iter().position(|column| *column == name).unwrap()]
    }

    fn length(&self, name: &str) -> Length {
        mm(self.get(name))
    }

    /// A thread of the row's dimensions, which no table has.
    fn thread(&self) -> Thread {
        let only = |name: &str| Limit {
            max: self.length(name),
            min: self.length(name),
        };
        let mut random = thread("M10");
        random.diameter = self.length("d");
        random.pitch = self.length("p");
        random.external.major = only("major_min");
        random.external.pitch = only("d2_min");
        random.internal.pitch = only("hole_pitch_max");
        random.internal.minor = only("bore_max");
        random
    }

    fn tapped(&self) -> bool {
        self.get("tapped") > 0.5
    }

    fn body(&self) -> Body {
        let block = mpa(self.get("e_block"));
        Body {
            thread: self.thread(),
            head: self.get("head"),
            modulus: mpa(self.get("e_bolt")),
            shank: self.length("shank"),
            free_thread: self.length("grip") - self.length("shank"),
            held: if self.tapped() { Held::Tapped(block) } else { Held::Nut },
        }
    }

    fn parts(&self) -> Parts {
        Parts {
            grip: self.length("grip"),
            bearing: self.length("bearing"),
            hole: self.length("hole"),
            outer: self.length("outer"),
            modulus: mpa(self.get("e_parts")),
            tapped: self.tapped(),
        }
    }
}

fn rows() -> (Vec<&'static str>, Vec<Vec<f64>>) {
    let mut lines = FILE.lines().filter(|line| !line.starts_with('#'));
    let names = lines.next().unwrap().split(',').collect();
    let values = lines.map(|line| line.split(',').map(|value| value.parse().unwrap()).collect());
    (names, values.collect())
}

#[test]
fn random_joints_agree_with_integration_and_root_finding() {
    let (names, rows) = rows();
    let (mut cones, mut sleeves, mut tapped) = (0, 0, 0);
    for (index, values) in rows.into_iter().enumerate() {
        let row = Row { names: &names, values };
        let what = |name: &str| format!("joint {index}, {name}");
        let stretched = bolt(&row.body()).unwrap().total.get::<MetrePerNewton>() * 1e3;
        agree(&what("δS"), stretched, row.get("bolt_resilience"), INTEGRATED);
        let squeezed = parts(&row.parts()).unwrap();
        let total = squeezed.total.get::<MetrePerNewton>() * 1e3;
        agree(&what("δP"), total, row.get("parts_resilience"), INTEGRATED);
        *(if squeezed.form == Form::Cone {
            &mut cones
        } else {
            &mut sleeves
        }) += 1;
        tapped += usize::from(row.tapped());
        let (thread, engaged) = (row.thread(), row.length("engaged"));
        let area = external_area(&thread, engaged).get::<SquareMillimetre>();
        agree(&what("A_Ss"), area, row.get("external"), INTEGRATED);
        let area = internal_area(&thread, engaged).get::<SquareMillimetre>();
        agree(&what("A_Sn"), area, row.get("internal"), INTEGRATED);
        let engagement = Engagement {
            thread,
            bolt_tensile: mpa(row.get("rm_bolt")),
            bolt_shear: mpa(row.get("rm_bolt") * 0.6),
            hole_tensile: mpa(row.get("rm_hole")),
            hole_shear: mpa(row.get("rm_hole") * 0.6),
            boss: None,
        };
        let length = engagement.required().unwrap().length.get::<Millimetre>();
        agree(&what("length"), length, row.get("required"), INTEGRATED);
        let clamp = Force::new::<Newton>(row.get("clamp"));
        let share = yield_share(&thread, mpa(row.get("rp")), ratio(row.get("friction")), clamp);
        agree(&what("ν"), share.get::<Number>(), row.get("share"), INTEGRATED);
    }
    assert!(
        cones >= 30 && sleeves >= 30 && tapped >= 30,
        "{cones} {sleeves} {tapped}"
    );
}

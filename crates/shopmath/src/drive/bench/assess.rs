//! Every calculator's findings for a bench, in the sections of the screen.

use super::drawing::{self, Drawing};
use super::lengths::Candidate;
use super::{Bench, checks, held, lengths, loads, strands, tensioner};
use crate::caution::{self, Caution};
use crate::drive::belt::Belt;
use crate::field::FieldFault;
use crate::result::Finding;

/// What a bench comes to.
#[derive(Clone, Debug)]
pub struct Assessment {
    /// A sentence per field that could not be read or leads nowhere.
    pub faults: Vec<FieldFault>,
    /// The findings, by section of the screen.
    pub sections: Vec<Section>,
    /// Belts to order, shorter to longer, and what the tensioner makes of each.
    pub candidates: Vec<Candidate>,
    /// The belt of whole millimetres nearest to the route, whichever belt is named.
    pub nearest: Option<Belt>,
    /// What to draw.
    pub drawing: Drawing,
}

/// A part of the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Its name in links and styles.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// Its findings; a numbered one belongs to the pulley of that number, from 1.
    pub findings: Vec<Finding>,
}

/// The sections' names in links and styles, and their titles.
const TITLES: [(&str, &str); 6] = [
    ("length", "Belt length"),
    ("pulleys", "Wraps, spans, speeds"),
    ("tensioner", "Tensioner"),
    ("tension", "Strand tension"),
    ("slip", "Loads and slip"),
    ("checks", "Alignment and wear"),
];

/// Calculates everything the bench allows. Sections without findings are left out.
///
/// ```
/// use shopmath::drive::bench::{DriveText, assess, resolve};
/// let assessment = assess(resolve(&DriveText::demo()));
/// assert!(assessment.faults.is_empty());
/// assert_eq!(assessment.sections[0].findings[0].name, "effective length");
/// ```
#[must_use]
pub fn assess(mut bench: Bench) -> Assessment {
    let held = held::held(&mut bench);
    let drive = lengths::findings(&bench);
    let pulleys = lengths::per_pulley(&bench);
    let tensioning = tensioner::findings(&mut bench, held.as_ref());
    let strand = strands::findings(&bench, held.as_ref());
    let around = loads::findings(&bench, held.as_ref());
    let wear = checks::findings(&bench, held.as_ref());
    Assessment {
        candidates: lengths::candidates(&bench, held.as_ref()),
        nearest: lengths::nearest_belt(&bench),
        drawing: drawing::of(&bench, held.as_ref()),
        sections: sections([drive, pulleys, tensioning, strand, around, wear]),
        faults: bench.faults,
    }
}

/// Only the length, the belts to order and the drawing: what is shown while a pulley is dragged.
///
/// ```
/// use shopmath::drive::bench::{DriveText, assess, glance, resolve};
/// let demo = DriveText::demo();
/// let (glance, whole) = (glance(resolve(&demo)), assess(resolve(&demo)));
/// assert_eq!((glance.drawing, &glance.sections[0]), (whole.drawing, &whole.sections[0]));
/// assert_eq!(glance.sections.len(), 1);
/// ```
#[must_use]
pub fn glance(mut bench: Bench) -> Assessment {
    let held = held::held(&mut bench);
    Assessment {
        candidates: lengths::candidates(&bench, held.as_ref()),
        nearest: lengths::nearest_belt(&bench),
        drawing: drawing::of(&bench, held.as_ref()),
        sections: sections([lengths::findings(&bench)]),
        faults: bench.faults,
    }
}

/// Findings under the sections' names, in their order; those without any are left out.
fn sections<const N: usize>(findings: [Vec<Finding>; N]) -> Vec<Section> {
    let named = TITLES.iter().zip(findings).filter(|(_, findings)| !findings.is_empty());
    named
        .map(|(&(id, title), findings)| Section { id, title, findings })
        .collect()
}

/// The cautions of the whole screen, once, in the order of the work; that of the tensioner stands with it.
///
/// ```
/// let slugs = shopmath::drive::bench::cautions().map(|caution| caution.slug);
/// assert_eq!((slugs[0], slugs[3]), ("engine-off", "maker-decides"));
/// ```
#[must_use]
pub fn cautions() -> [Caution; 4] {
    use caution::drive::{ENGINE_OFF, EVERY_GROOVE, MAKER_DECIDES, REFIT_ORDER};
    [ENGINE_OFF, REFIT_ORDER, EVERY_GROOVE, MAKER_DECIDES]
}

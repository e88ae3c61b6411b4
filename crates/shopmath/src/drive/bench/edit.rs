//! Changes to the pulley list, as dragging and the buttons make them: each takes the texts and
//! rewrites `pulleys` (and what names a pulley) from the structure.

use super::{DriveText, guess, resolve};
use crate::drive::fault::MeasureFault;
use crate::drive::pulley::{Pulley, Side, Spot};
use crate::drive::route::{self, Route};
use crate::drive::si::{in_radians, metres};
use crate::drive::tensioner::Tensioner;
use crate::drive::text::loads;
use crate::drive::text::pulleys;
use crate::drive::text::tensioner;
use crate::quantity::exact::angle::Degree;
use kurbo::{Line, ParamCurve, Vec2};
use uom::si::f64::{Angle, Length};

/// How far along its span a new pulley stands, the middle first.
const ALONG: [f64; 5] = [0.5, 0.35, 0.65, 0.2, 0.8];
/// How far a new pulley bends its span, over the span's length.
const BENDS: [f64; 8] = [0.15, 0.1, 0.25, 0.06, 0.4, 0.8, 1.5, 3.0];
/// The least wrap a new pulley is given, radian.
const LEAST_WRAP: f64 = 0.1;

/// One change. Pulleys are numbered from 0 in belt order; places are millimetres.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Moves a pulley's centre.
    Move {
        /// Which.
        pulley: usize,
        /// To the right.
        x: f64,
        /// Up.
        y: f64,
    },
    /// Moves a pulley's centre by a little.
    Nudge {
        /// Which.
        pulley: usize,
        /// Right of where it is; negative to the left.
        right: f64,
        /// Above where it is; negative below.
        up: f64,
    },
    /// Moves a pulley to another turn in the order.
    Reorder {
        /// Which.
        pulley: usize,
        /// Its new number.
        to: usize,
    },
    /// Turns the belt's other side to a pulley.
    Flip(usize),
    /// Sets a diameter, millimetre.
    Resize {
        /// Which.
        pulley: usize,
        /// Effective or outside diameter.
        diameter: f64,
    },
    /// Gives a pulley another name; tensioner and loads follow.
    Rename {
        /// Which.
        pulley: usize,
        /// The new name.
        name: String,
    },
    /// Takes a pulley away.
    Remove(usize),
    /// Adds a pulley after another, where the belt to the next one runs over it; the first one where
    /// there is none.
    AddAfter(usize),
    /// Makes a pulley the tensioner, on an arm that is a guess: beside it, swinging round where it stands.
    Hold(usize),
    /// Takes the tensioner's arm away; its pulley stays where it is.
    Release,
    /// Sets the tensioner's arm.
    Arm {
        /// The pulley it carries.
        pulley: usize,
        /// The pivot, to the right and up.
        pivot: [f64; 2],
        /// The low and the high stop, degrees from the right, anticlockwise.
        stops: [f64; 2],
    },
    /// Sets what a pulley's accessory takes, as a person types it; nothing for an idler.
    Load {
        /// Which.
        pulley: usize,
        /// A torque, a power, or current and voltage; kept also where it cannot be read.
        load: String,
    },
}

/// The texts after a change; `None` where the pulley list cannot be read, the pulley is not there,
/// or the place is no number.
///
/// ```
/// use shopmath::drive::bench::{DriveText, edit::{Edit, apply}};
/// let moved = apply(&DriveText::demo(), &Edit::Move { pulley: 3, x: -70.0, y: 262.5 }).unwrap();
/// assert!(moved.get("pulleys").unwrap().contains("idler:back:-70,262.5:70"));
/// ```
#[must_use]
pub fn apply(texts: &DriveText, edit: &Edit) -> Option<DriveText> {
    let mut list = pulleys::read(texts.get("pulleys")?).ok()?;
    let mut texts = texts.clone();
    match edit {
        Edit::Move { pulley, x, y } => list.get_mut(*pulley)?.centre = spot(*x, *y)?,
        Edit::Nudge { pulley, right, up } => {
            let pulley = list.get_mut(*pulley)?;
            pulley.centre.x += millimetres(*right)?;
            pulley.centre.y += millimetres(*up)?;
        }
        Edit::Reorder { pulley, to } => {
            if *pulley >= list.len() || *to >= list.len() {
                return None;
            }
            let moved = list.remove(*pulley);
            list.insert(*to, moved);
        }
        Edit::Flip(pulley) => {
            let pulley = list.get_mut(*pulley)?;
            pulley.side = pulley.side.other();
        }
        Edit::Resize { pulley, diameter } => list.get_mut(*pulley)?.diameter = millimetres(*diameter)?,
        Edit::Rename { pulley, name } => rename(&mut texts, &mut list, *pulley, name)?,
        Edit::Remove(pulley) => {
            if *pulley >= list.len() {
                return None;
            }
            forget(&mut texts, &list, *pulley);
            list.remove(*pulley);
        }
        Edit::AddAfter(pulley) => add(&texts, &mut list, *pulley)?,
        Edit::Hold(pulley) => {
            let arm = guess::guess(&resolve(&texts), &list, *pulley)?;
            texts.set("tensioner", &tensioner::print(&arm, &list));
        }
        Edit::Release => {
            texts.set("tensioner", "");
        }
        Edit::Arm { pulley, pivot, stops } => {
            let [low, high] = stops.map(Angle::new::<Degree>);
            let arm = Tensioner {
                pulley: *pulley,
                pivot: spot(pivot[0], pivot[1])?,
                low,
                high,
            };
            texts.set("tensioner", &tensioner::print(&arm, &list));
        }
        Edit::Load { pulley, load } => {
            let name = &list.get(*pulley)?.name;
            let loads = loads::with(texts.get("loads")?, name, load);
            texts.set("loads", &loads);
        }
    }
    texts.set("pulleys", &pulleys::print(&list));
    Some(texts)
}

/// Whether a change can be made: it leaves a list that can still be read.
///
/// # Errors
/// [`MeasureFault`].
///
/// ```
/// use shopmath::drive::bench::{DriveText, edit::{Edit, check}};
/// let demo = DriveText::demo();
/// assert!(check(&demo, &Edit::Resize { pulley: 2, diameter: 0.0 }).is_err());
/// assert!(check(&demo, &Edit::Rename { pulley: 2, name: "Idler".into() }).is_err());
/// assert!(check(&demo, &Edit::Rename { pulley: 3, name: "Idler".into() }).is_ok());
/// ```
pub fn check(texts: &DriveText, edit: &Edit) -> Result<(), MeasureFault> {
    let Some(changed) = apply(texts, edit) else {
        return Err(match edit {
            Edit::Rename { name, .. } if !name.trim().is_empty() => MeasureFault::NameTaken(name.trim().to_owned()),
            Edit::Rename { .. } => MeasureFault::NoName,
            _ => MeasureFault::NoPlace,
        });
    };
    match (pulleys::read(changed.get("pulleys").unwrap_or_default()), edit) {
        (Ok(_), _) => Ok(()),
        (Err(_), Edit::Resize { .. }) => Err(MeasureFault::NoDiameter),
        (Err(_), _) => Err(MeasureFault::NoPlace),
    }
}

/// The texts with a pulley back that was removed from `before`, whatever was changed since; `None`
/// where it cannot go back.
///
/// ```
/// use shopmath::drive::bench::{DriveText, edit::{Edit, apply, bring_back}};
/// let demo = DriveText::demo();
/// let without = apply(&demo, &Edit::Remove(1)).unwrap();
/// assert_eq!(bring_back(&without, &demo, 1), Some(demo));
/// ```
#[must_use]
pub fn bring_back(texts: &DriveText, before: &DriveText, pulley: usize) -> Option<DriveText> {
    let lost = pulleys::read(before.get("pulleys")?).ok()?.get(pulley)?.clone();
    let mut list = pulleys::read(texts.get("pulleys")?).ok()?;
    if list.iter().any(|other| other.name.eq_ignore_ascii_case(&lost.name)) {
        return None;
    }
    let without = apply(before, &Edit::Remove(pulley))?;
    let mut texts = texts.clone();
    list.insert(pulley.min(list.len()), lost);
    texts.set("pulleys", &pulleys::print(&list));
    for key in ["tensioner", "loads"] {
        // What was rewritten since stays as it was rewritten.
        if texts.get(key) == without.get(key) {
            texts.set(key, before.get(key)?);
        }
    }
    Some(texts)
}

fn millimetres(value: f64) -> Option<Length> {
    (value.abs() < 1e9).then(|| metres(value * 1e-3))
}

fn spot(x: f64, y: f64) -> Option<Spot> {
    Some(Spot {
        x: millimetres(x)?,
        y: millimetres(y)?,
    })
}

fn rename(texts: &mut DriveText, list: &mut [Pulley], pulley: usize, name: &str) -> Option<()> {
    let name = pulleys::plain(name);
    let taken = list
        .iter()
        .enumerate()
        .any(|(index, other)| index != pulley && other.name.eq_ignore_ascii_case(&name));
    if name.is_empty() || taken {
        return None;
    }
    let arm = tensioner::read(texts.get("tensioner")?, list).ok();
    let old = list.get(pulley)?.name.clone();
    list.get_mut(pulley)?.name = name.clone();
    if let Some(arm) = arm {
        texts.set("tensioner", &tensioner::print(&arm, list));
    }
    let loads = loads::renamed(texts.get("loads")?, &old, &name);
    texts.set("loads", &loads);
    Some(())
}

/// Drops what other texts say about a pulley that goes.
fn forget(texts: &mut DriveText, list: &[Pulley], pulley: usize) {
    let name = list.get(pulley).map_or("", |pulley| pulley.name.trim()).to_owned();
    let names_it = |text: &str| {
        text.split('@')
            .next()
            .unwrap_or_default()
            .trim()
            .eq_ignore_ascii_case(&name)
    };
    if texts.get("tensioner").is_some_and(names_it) {
        texts.set("tensioner", "");
    }
    let kept = loads::with(texts.get("loads").unwrap_or_default(), &name, "");
    texts.set("loads", &kept);
}

/// Adds a pulley where the belt runs over it, if there is such a place, else halfway to the next.
fn add(texts: &DriveText, list: &mut Vec<Pulley>, after: usize) -> Option<()> {
    if list.is_empty() {
        let centre = spot(0.0, 0.0)?;
        list.push(ribbed("crank".into(), centre, 0.15));
        return Some(());
    }
    let here = list.get(after)?.centre;
    let next = list.get((after + 1) % list.len())?.centre;
    let taken = |name: &String| list.iter().any(|pulley| pulley.name.eq_ignore_ascii_case(name));
    // Counts on from the number of pulleys.
    let mut names = (list.len() + 1..).map(|number| format!("pulley {number}"));
    let name = names.find(|name| !taken(name))?;
    let midway = Spot {
        x: 0.5 * (here.x + next.x),
        y: 0.5 * (here.y + next.y),
    };
    let pulley = ribbed(name, midway, 0.06);
    let pulley = running(texts, &pulley, after).unwrap_or(pulley);
    list.insert(after + 1, pulley);
    Some(())
}

fn ribbed(name: String, centre: Spot, diameter: f64) -> Pulley {
    Pulley {
        name,
        side: Side::Rib,
        centre,
        diameter: metres(diameter),
    }
}

/// The pulley where it bends the span from one pulley to the next outwards, or else inwards on its
/// back, at a place where the whole drive still runs the same way; `None` where there is none.
fn running(texts: &DriveText, pulley: &Pulley, after: usize) -> Option<Pulley> {
    let bench = resolve(texts);
    let mut layout = bench.layout?;
    let (lines, sense) = match &bench.route {
        Some(route) => {
            let leg = route.legs.get(after)?;
            (vec![Line::new(leg.from, leg.to)], Some(route.sense))
        }
        // One alone has no span yet: the second stands up and to the right of it, farther from a large one.
        None if layout.pulleys.len() == 1 => {
            let centre = layout.pulleys.first()?.centre.point();
            let line = |far: f64| Line::new(centre, centre + 2.0 * far * Vec2::new(1.0, 1.0));
            (vec![line(0.2), line(0.5), line(2.0)], None)
        }
        None => return None,
    };
    layout.pulleys.insert(after + 1, pulley.clone());
    for (side, line) in Side::ALL
        .into_iter()
        .flat_map(|side| lines.iter().map(move |line| (side, line)))
    {
        for (along, bend) in ALONG.into_iter().flat_map(|along| BENDS.map(|bend| (along, bend))) {
            let placed = layout.pulleys.get_mut(after + 1)?;
            placed.side = side;
            let inwards = sense.map_or(0.0, |sense| sense.sign() * side.sign());
            let depth = placed.effective_radius(layout.back) - bend * line.length();
            let across = (line.end() - line.start()).normalize();
            let centre = line.eval(along) + inwards * depth * Vec2::new(-across.y, across.x);
            placed.centre = spot((centre.x * 1e3).round(), (centre.y * 1e3).round())?;
            let placed = placed.clone();
            let runs = |route: &Route| {
                let wrap = route.legs.get(after + 1).map_or(0.0, |leg| in_radians(leg.wrap));
                sense.is_none_or(|sense| sense == route.sense) && wrap > LEAST_WRAP
            };
            if route::solve(&layout).is_ok_and(|route| runs(&route)) {
                return Some(placed);
            }
        }
    }
    None
}

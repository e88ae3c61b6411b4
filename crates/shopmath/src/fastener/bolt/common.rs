//! What the sections of a bolt share: each calculator's answer, worked out once.

use super::resolve::{Joint, Resolved};
use crate::fastener::angle::{Joint as Turning, Turned};
use crate::fastener::class::Class;
use crate::fastener::engagement::{Engagement, Required, Strip, break_load};
use crate::fastener::material::Material;
use crate::fastener::refusal::Refusal;
use crate::fastener::resilience::{self, Body, BodyResilience, Held, Parts, PartsResilience};
use crate::fastener::si::ratio;
use crate::fastener::tighten::{Applied, Bolt, Spread};
use crate::field::FieldFault;
use crate::result::Term;
use crate::source::Source;
use uom::si::f64::{Force, Length, Ratio};

/// Outer diameter taken for parts of unknown width, in bearing diameters.
const WIDE: f64 = 3.0;

/// What the sections share, each worked out once.
pub(super) struct Common<'a> {
    pub(super) resolved: &'a Resolved,
    /// Thread, head and friction together.
    pub(super) bolt: Option<Bolt>,
    /// The torque that tightens most, with the tool's tolerance.
    pub(super) applied: Option<Applied>,
    /// Clamp load after the torque alone.
    pub(super) clamp: Option<Spread<Force>>,
    /// Share of yield after the torque alone.
    pub(super) share: Option<Spread<Ratio>>,
    /// Stiffness of bolt and parts.
    pub(super) stiffness: Option<Stiffness>,
    /// The joint as it is turned.
    pub(super) turning: Option<Turning>,
    /// What the whole spec does to it.
    pub(super) turned: Option<Turned>,
    /// The threads in the hole.
    pub(super) hold: Option<Hold>,
    pub(super) errors: Vec<FieldFault>,
}

/// Stiffness of a joint, with what it was worked out from.
#[derive(Clone, Copy)]
pub(super) struct Stiffness {
    pub(super) body: Body,
    pub(super) body_resilience: BodyResilience,
    pub(super) parts: Parts,
    pub(super) parts_resilience: PartsResilience,
}

/// The threads of a tapped hole.
pub(super) struct Hold {
    pub(super) engagement: Engagement,
    pub(super) material: Material,
    /// Where the strength of the bolt comes from.
    pub(super) bolt_source: Source,
    pub(super) required: Required,
    /// At the length engaged, where that is given.
    pub(super) strip: Option<Strip>,
    /// The same with a wire thread insert.
    pub(super) with_insert: Option<Strip>,
}

impl<'a> Common<'a> {
    /// Puts a bolt through the calculators, each once.
    pub(super) fn of(resolved: &'a Resolved) -> Self {
        let mut common = Self {
            resolved,
            bolt: bolt(resolved),
            applied: applied(resolved),
            clamp: None,
            share: None,
            stiffness: None,
            turning: None,
            turned: None,
            hold: None,
            errors: Vec::new(),
        };
        let class = resolved.class.given();
        if let (Some(bolt), Some(applied)) = (common.bolt, common.applied) {
            common.clamp = common.keep("spec", bolt.clamp_range(applied));
            if let Some(class) = class {
                common.share = common.keep("spec", bolt.yield_range(applied, class.yield_strength));
            }
        }
        common.stiffness = common.stiffness();
        common.turning = common.turning();
        if let (Some(turning), Some(spec)) = (common.turning, resolved.spec.as_given()) {
            common.turned = common.keep("spec", turning.turned(spec));
        }
        common.hold = common.hold();
        common
    }
}

impl Common<'_> {
    /// A term taken from the bolt's strength class, or from its metal.
    pub(super) fn of_class(&self, term: Term, source: fn(&Class) -> Source) -> Term {
        let class = self.resolved.class.given();
        class.map_or(term, |class| term.taken_from(source(&class)))
    }

    /// A term taken from the head's table.
    pub(super) fn of_head(&self, term: Term) -> Term {
        self.bolt.map_or(term, |bolt| term.taken_from(bolt.head.source))
    }

    /// Clamp load at the end of the spec; none while an angle is given and no grip. An angle never takes
    /// clamp load away: where the torque alone comes to more than the yield at which a turn is held, that
    /// counts, for a real bolt hardens.
    pub(super) fn final_clamp(&self) -> Option<Spread<Force>> {
        let alone = self.clamp?;
        if !self.resolved.spec.as_given()?.turns() {
            return Some(alone);
        }
        Some(self.turned?.clamp.zip(alone, Force::max))
    }

    /// Whether the spec goes past yield and the threads in the hole hold less than breaks the bolt.
    pub(super) fn outlasts_hole(&self) -> bool {
        let Some(hold) = &self.hold else {
            return false;
        };
        let yields = self.share.is_some_and(|share| share.mid > ratio(1.0))
            || self.turned.is_some_and(|turned| turned.past_yield.high.value > 0.0);
        let breaks = break_load(&hold.engagement.thread, hold.engagement.bolt_tensile);
        yields && hold.strip.is_some_and(|strip| strip.load < breaks)
    }

    /// A calculator's answer; a refusal is kept for the field it is about.
    pub(super) fn keep<T>(&mut self, key: &'static str, answer: Result<T, Refusal>) -> Option<T> {
        answer
            .map_err(|refusal| {
                self.errors.push(FieldFault {
                    key,
                    sentence: refusal.to_string(),
                    remedies: Vec::new(),
                });
            })
            .ok()
    }
}

impl Common<'_> {
    fn stiffness(&mut self) -> Option<Stiffness> {
        let resolved = self.resolved;
        let thread = resolved.thread.given()?.thread;
        let (class, head, grip) = (resolved.class.given()?, resolved.head.given()?, resolved.grip.given()?);
        let shank = self.shank(grip)?;
        let tapped = resolved.joint.given()? == Joint::Tapped;
        let held = if tapped {
            Held::Tapped(resolved.into.given()?.modulus)
        } else {
            Held::Nut
        };
        let body = Body {
            thread,
            head: head.shape.stretched_height(),
            modulus: class.metal.modulus(),
            shank,
            free_thread: grip - shank,
            held,
        };
        let parts = Parts {
            grip,
            bearing: head.bearing,
            hole: head.hole,
            outer: resolved.outer.or(head.bearing * WIDE)?,
            modulus: resolved.clamped.given()?.modulus,
            tapped,
        };
        Some(Stiffness {
            body,
            body_resilience: self.keep("grip", resilience::bolt(&body))?,
            parts,
            parts_resilience: self.keep("outer", resilience::parts(&parts))?,
        })
    }

    /// The plain shank, which ends within the grip.
    fn shank(&mut self, grip: Length) -> Option<Length> {
        let shank = self.resolved.shank.given()?;
        let fits = if shank <= grip {
            Ok(shank)
        } else {
            Err(Refusal::not_smaller(("shank", shank), ("grip", grip)))
        };
        self.keep("shank", fits)
    }

    fn turning(&self) -> Option<Turning> {
        let stiffness = self.stiffness?;
        Some(Turning {
            bolt: self.bolt?,
            yield_strength: self.resolved.class.given()?.yield_strength,
            bolt_resilience: stiffness.body_resilience.total,
            parts_resilience: stiffness.parts_resilience.total,
            tool: self.resolved.tool.given()?,
        })
    }

    fn hold(&mut self) -> Option<Hold> {
        let resolved = self.resolved;
        let (class, material) = (resolved.class.given()?, resolved.into.given()?);
        let engagement = Engagement {
            thread: resolved.thread.given()?.thread,
            bolt_tensile: class.tensile,
            bolt_shear: class.shear(),
            hole_tensile: material.tensile,
            hole_shear: material.shear,
            boss: resolved.boss.optional()?,
        };
        let required = self.keep("boss", engagement.required())?;
        let engaged = resolved.engaged.given();
        Some(Hold {
            engagement,
            material,
            bolt_source: class.source,
            required,
            strip: engaged.and_then(|engaged| self.keep("engaged", engagement.strip(engaged))),
            with_insert: engaged.and_then(|engaged| engagement.strip_with_insert(engaged).ok()),
        })
    }
}

fn bolt(resolved: &Resolved) -> Option<Bolt> {
    Some(Bolt {
        thread: resolved.thread.given()?.thread,
        head: resolved.head.given()?,
        friction: resolved.friction.given()?,
    })
}

fn applied(resolved: &Resolved) -> Option<Applied> {
    let (low, high) = resolved.spec.as_given()?.strongest_torque()?;
    let tool = resolved.tool.given()?;
    Some(Applied { low, high, tool })
}

//! What an engine cannot show, and why: the one place where a journey is left out.

use crate::browser::Engine;
use anyhow::{Result, ensure};

/// Journeys that an engine cannot run.
struct Beyond {
    engine: Engine,
    /// What the engine or its driver lacks: "not there, as …".
    reason: &'static str,
    /// Names of journeys, or of modules of them, which end in `::`.
    journeys: &'static [&'static str],
}

const BEYOND: &[Beyond] = &[];

/// What an engine shows, but not as well as another.
const WEAKER: &[(Engine, &str)] = &[];

/// Fails when an entry names no journey: what has been renamed would be left out unsaid, or run.
pub(super) fn check(all: &[String]) -> Result<()> {
    for entry in BEYOND.iter().flat_map(|beyond| beyond.journeys) {
        ensure!(
            all.iter().any(|journey| is_named(entry, journey)),
            "`{entry}` in journeys/beyond.rs is no journey"
        );
    }
    Ok(())
}

/// Why an engine cannot run a journey; none if it can.
pub(super) fn reason(engine: Engine, journey: &str) -> Option<&'static str> {
    BEYOND
        .iter()
        .find(|beyond| beyond.engine == engine && beyond.journeys.iter().any(|entry| is_named(entry, journey)))
        .map(|beyond| beyond.reason)
}

/// Journeys that are left out, by what the engine lacks.
pub(super) fn by_reason<'a>(engine: Engine, journeys: &[&'a str]) -> Vec<(&'static str, Vec<&'a str>)> {
    let reasons = BEYOND.iter().filter(|beyond| beyond.engine == engine);
    let groups = reasons.map(|beyond| {
        let of_it = |journey: &&&str| reason(engine, journey) == Some(beyond.reason);
        (beyond.reason, journeys.iter().filter(of_it).copied().collect())
    });
    groups.filter(|(_, journeys): &(_, Vec<_>)| !journeys.is_empty()).collect()
}

/// What an engine shows less well than another.
pub(super) fn weaker(engine: Engine) -> impl Iterator<Item = &'static str> {
    WEAKER.iter().filter(move |(of, _)| *of == engine).map(|(_, what)| *what)
}

fn is_named(entry: &str, journey: &str) -> bool {
    journey == entry || (entry.ends_with("::") && journey.starts_with(entry))
}

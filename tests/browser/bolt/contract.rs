//! Every result the contract names for this screen, with its unit, for one bolt with all fields.

use super::{FULL, at};
use anyhow::{Context, ensure};
use fenderside_tests::harness::{Outcome, Server};

/// The `bolt` row of the contract: ids by coherent unit.
const RESULTS: &[(&str, &[&str])] = &[
    (
        "N",
        &[
            "clamp-low",
            "clamp-mid",
            "clamp-high",
            "clamp-90",
            "proof-load",
            "angle-clamp-low",
            "angle-clamp-mid",
            "angle-clamp-high",
            "strip-load",
            "break-load",
            "hand-force",
            "heat-clamp-change",
        ],
    ),
    (
        "N·m",
        &[
            "torque-90",
            "strip-torque",
            "wrench-setting",
            "twist-yield-torque",
            "twist-break-torque",
            "stop-torque",
        ],
    ),
    (
        "1",
        &[
            "yield-use-low",
            "yield-use-mid",
            "yield-use-high",
            "nut-factor",
            "engagement-turns",
            "strip-margin",
            "reading-deviation",
        ],
    ),
    (
        "m",
        &["past-yield", "bolt-stretch", "engagement-required", "heat-clearance"],
    ),
    ("m²", &["stress-area"]),
    ("m/N", &["bolt-resilience", "parts-resilience"]),
    ("rad", &["angle-to-yield"]),
];

#[test]
fn every_result_of_the_contract_is_there_in_its_unit() -> Outcome {
    let server = Server::start()?;
    let phone = at(&server, FULL)?;
    phone.until_text("#verdict[data-verdict='past-yield']", "by design")?;
    for (unit, ids) in RESULTS {
        for id in *ids {
            let value = phone.result(id).with_context(|| format!("`{id}`"))?;
            ensure!(value.is_finite(), "`{id}` is {value}");
            let shown = phone.attribute(&format!("[id='{id}']"), "data-unit")?;
            ensure!(shown.as_deref() == Some(unit), "`{id}` is in {shown:?}, not in {unit}");
            ensure!(
                phone.count(&format!("[id='{id}']"))? == 1,
                "`{id}` is there more than once"
            );
        }
    }
    // Other tools change what is shown, never the value.
    let before = phone.result("clamp-mid")?;
    phone.tap("input[name='tools'][value='inch']")?;
    phone.until_text("[id='clamp-high'] .unit", "lbf")?;
    ensure!(phone.result("clamp-mid")? == before);
    ensure!(phone.attribute("[id='clamp-mid']", "data-unit")?.as_deref() == Some("N"));
    phone.close()?.1.stays_home()
}

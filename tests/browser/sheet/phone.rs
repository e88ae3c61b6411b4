//! One mend each of what a mechanic met who worked a sheet on a phone.

use super::bring_in;
use anyhow::ensure;
use fenderside_tests::harness::{Outcome, Phone, Server};
use serde_json::json;

#[test]
fn a_bare_reading_is_in_the_unit_of_its_spec() -> Outcome {
    let server = Server::start()?;
    let phone = Phone::fresh(server.site())?;
    let bolt = json!({ "id": 1, "label": "Cover", "thread": "M8", "class": "8.8", "spec": "18 ft-lb", "done": true });
    bring_in(
        &phone,
        &[json!({ "schema": 1, "id": "feet", "machine": "Van", "fasteners": [bolt] })],
    )?;
    phone.open("#/sheet/feet")?;
    phone.until_text("#progress", "Complete")?;
    ensure!(phone.attribute("#bolt-1-0-reading", "placeholder")?.as_deref() == Some("lbf·ft"));
    phone.type_into("bolt-1-0-reading", "18")?;
    phone.until_value(".judged data.deviation", 0.0, 1e-9)?;
    phone.until_text(".judged", "✓ within")?;
    phone.until_text(".judged", "read in lbf·ft")?;
    phone.until_text("#progress", "Complete")?;
    phone.type_into("bolt-1-0-reading", "18 N·m")?;
    phone.until_text(".judged", "✕ outside")?;
    ensure!(!phone.text(".judged")?.contains("read in"));
    Ok(())
}

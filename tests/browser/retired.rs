//! The way back: a deployed worker can be taken out of service from the host.

use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn a_retired_worker_takes_its_files_with_it() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.until_kept()?;
    phone.script::<()>("localStorage.setItem('mine', 'kept')", vec![])?;
    assert!(caches(&phone)?, "there is something to take back");

    copy.retire()?;
    phone.reload()?;
    phone.until("the caches to be gone", || Ok(caches(&phone).ok().filter(|any| !any)))?;
    phone.until_running()?;
    let saved: String = phone.script("return localStorage.getItem('mine')", vec![])?;
    assert_eq!(saved, "kept", "what a person saved stays");
    Ok(())
}

fn caches(phone: &Phone) -> anyhow::Result<bool> {
    phone.script("return caches.keys().then((names) => names.length > 0)", vec![])
}

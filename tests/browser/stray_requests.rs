//! The watch itself: a page and a worker that ask elsewhere must be noticed, or
//! "no request to any other origin" would prove nothing.

use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn requests_to_another_origin_are_noticed() -> Outcome {
    let elsewhere = Server::start()?;
    let copy = Copy::of_the_page()?;
    copy.add_to_worker(&format!(
        "fetch('{}from-the-worker').catch(() => {{}});",
        elsewhere.site()
    ))?;
    let server = Server::serving(copy.path(), "/")?;
    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.until_kept()?;

    let (_, traffic) = phone.close()?;
    let seen = traffic.stays_home().map_err(|error| error.to_string());
    assert!(
        seen.as_ref().is_err_and(|text| text.contains("from-the-worker")),
        "{seen:?}"
    );
    Ok(())
}

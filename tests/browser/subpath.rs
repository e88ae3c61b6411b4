//! The page is a folder: it works under any path of a host, and another copy on
//! the same host is none of its business.

use fenderside_tests::harness::{Copy, Outcome, Phone, Server};

#[test]
fn the_page_works_under_a_path_with_and_without_a_network() -> Outcome {
    let copy = Copy::of_the_page()?;
    let server = Server::serving(copy.path(), "/a/b/")?;
    assert!(server.site().ends_with("/a/b/"), "{}", server.site());

    let phone = Phone::fresh(server.site())?;
    phone.open("#/convert")?;
    phone.field("q")?;
    phone.until_kept()?;

    server.kill()?;
    phone.reload()?;
    phone.open("#/convert?q=35%20psi")?;
    assert_eq!(phone.field("q")?, "35 psi");

    let (_, traffic) = phone.close()?;
    let outside: Vec<_> = traffic.urls().iter().filter(|url| !url.contains("/a/b/")).collect();
    assert!(outside.is_empty(), "asked outside its own folder: {outside:?}");
    traffic.stays_home()
}

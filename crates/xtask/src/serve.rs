//! `cargo xtask serve`: the page as it is deployed, on this machine.

use crate::server::{self, Site};
use crate::{dist, options, paths};
use anyhow::Result;
use lexopt::{Arg, Parser};
use std::path::PathBuf;

pub(crate) fn command(mut options: Parser) -> Result<()> {
    let mut built = None;
    let mut site = Site::here(paths::dist(), 8080);
    while let Some(argument) = options.next()? {
        match argument {
            Arg::Long("port") => site.port = options::value(&mut options)?,
            Arg::Long("host") => site.host = options::value(&mut options)?,
            Arg::Long("prefix") => site.prefix = options::value(&mut options)?,
            Arg::Long("dir") => built = Some(PathBuf::from(options.value()?)),
            other => return options::unknown(&other),
        }
    }
    match built {
        Some(folder) => site.folder = folder,
        None => dist::build()?,
    }
    server::serve(&site)
}

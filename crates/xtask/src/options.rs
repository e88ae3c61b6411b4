//! What the commands share when they read their command line.
//!
//! Which options a command has is written in that command's own file.

use anyhow::{Result, bail};
use lexopt::{Arg, Parser, ValueExt};

/// The next word that is not an option, if there is one.
pub(crate) fn word(options: &mut Parser) -> Result<Option<String>> {
    match options.next()? {
        None => Ok(None),
        Some(Arg::Value(word)) => Ok(Some(word.string()?)),
        Some(Arg::Long("help") | Arg::Short('h')) => Ok(Some("help".to_owned())),
        Some(other) => unknown(&other),
    }
}

/// The value of an option, read as whatever type the caller needs.
pub(crate) fn value<T>(options: &mut Parser) -> Result<T>
where
    T: std::str::FromStr,
    T::Err: Into<Box<dyn std::error::Error + Send + Sync>>,
{
    Ok(options.value()?.parse()?)
}

/// The error for an option a command does not have.
pub(crate) fn unknown<T>(argument: &Arg<'_>) -> Result<T> {
    match argument {
        Arg::Long(name) => bail!("there is no option `--{name}` here. Type `cargo xtask help`."),
        Arg::Short(name) => bail!("there is no option `-{name}` here. Type `cargo xtask help`."),
        Arg::Value(word) => bail!(
            "`{}` was not expected here. Type `cargo xtask help`.",
            word.to_string_lossy()
        ),
    }
}

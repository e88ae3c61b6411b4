//! A `.br` and a `.gz` beside each file, for hosts that serve them as they are.

use crate::folder;
use anyhow::Result;
use std::io::Write;
use std::path::{Path, PathBuf};

/// The strongest setting of each format: this runs once per build.
const BROTLI_QUALITY: u32 = 11;
/// The largest window every browser accepts (16 MB).
const BROTLI_WINDOW: u32 = 24;

/// Writes the compressed twins of every file below a folder.
pub(crate) fn beside(folder: &Path) -> Result<()> {
    for path in folder::files(folder)?.into_iter().filter(|path| is_worth_it(path)) {
        let bytes = std::fs::read(folder.join(&path))?;
        std::fs::write(twin(folder, &path, "br"), brotli(&bytes)?)?;
        std::fs::write(twin(folder, &path, "gz"), gzip(&bytes)?)?;
    }
    Ok(())
}

/// The bytes as brotli sends them.
pub(crate) fn brotli(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut out = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut out, 1 << 16, BROTLI_QUALITY, BROTLI_WINDOW);
    writer.write_all(bytes)?;
    writer.flush()?;
    drop(writer);
    Ok(out)
}

fn gzip(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut writer = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    writer.write_all(bytes)?;
    Ok(writer.finish()?)
}

/// PNG is compressed already; the twins must not get twins of their own.
fn is_worth_it(path: &Path) -> bool {
    !path
        .extension()
        .is_some_and(|end| ["png", "br", "gz"].iter().any(|done| end == *done))
}

fn twin(folder: &Path, path: &Path, end: &str) -> PathBuf {
    let mut name = folder.join(path).into_os_string();
    name.push(".");
    name.push(end);
    PathBuf::from(name)
}

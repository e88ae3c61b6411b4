//! Packages of the npm registry, each in a folder of its own under `target/tools/npm`: npm takes
//! away whatever else it finds in the folder it installs into.

use crate::system::{find_on_path, install, may_install};
use crate::{paths, run};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A program or script library of the registry, in the one version the project was tested with.
pub(crate) struct Package {
    name: &'static str,
    version: &'static str,
}

/// The version whose wasm-opt reads what the pinned compiler writes.
pub(crate) const BINARYEN: Package = Package {
    name: "binaryen",
    version: "132.0.0",
};
/// Finds what keeps people from using a page.
const AXE: Package = Package {
    name: "axe-core",
    version: "4.14.1",
};
/// The last version that runs on Node 20 and has the scores the issue asks for.
const LIGHTHOUSE: Package = Package {
    name: "lighthouse",
    version: "12.2.3",
};

/// Whether packages can be installed and run here.
pub(crate) fn is_here() -> bool {
    find_on_path("node").is_some() && find_on_path("npm").is_some()
}

/// The script that is put into a page to check it.
pub(crate) fn axe() -> Result<PathBuf> {
    needed()?;
    Ok(AXE.fetch()?.join("axe-core/axe.min.js"))
}

/// Lighthouse's own program, for Node.
pub(crate) fn lighthouse() -> Result<PathBuf> {
    needed()?;
    Ok(LIGHTHOUSE.fetch()?.join("lighthouse/cli/index.js"))
}

/// Node with npm, installed where that is allowed.
fn needed() -> Result<()> {
    if !is_here() && may_install() {
        install(&["nodejs", "npm"])?;
    }
    if is_here() {
        Ok(())
    } else {
        bail!("Node.js with npm is not here. Install the packages `nodejs` and `npm` (their Debian names)")
    }
}

impl Package {
    /// The folder of modules the package is in, installed when it is not there in this version.
    pub(crate) fn fetch(&self) -> Result<PathBuf> {
        let Self { name, version } = self;
        let home = paths::tools().join("npm").join(name);
        let modules = home.join("node_modules");
        let manifest = modules.join(name).join("package.json");
        if has_version(&manifest, version) {
            return Ok(modules);
        }
        println!("Installing {name} {version} into target/tools");
        std::fs::create_dir_all(&home)?;
        let mut npm = Command::new("npm");
        npm.args(["install", "--no-save", "--no-audit", "--no-fund", "--prefix"])
            .arg(&home)
            .arg(format!("{name}@{version}"));
        run::run(&mut npm).with_context(|| format!("{name} is not to be had from the npm registry"))?;
        if !has_version(&manifest, version) {
            bail!("{} was installed but is not version {version}", home.display());
        }
        Ok(modules)
    }
}

fn has_version(manifest: &Path, version: &str) -> bool {
    let text = std::fs::read_to_string(manifest).unwrap_or_default();
    let found: Value = serde_json::from_str(&text).unwrap_or_default();
    found["version"] == version
}

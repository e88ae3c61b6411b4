//! The page's server as a process of its own, so that killing it is real.

use super::setting;
use anyhow::{Context, Result, bail, ensure};
use std::io::{BufRead, BufReader};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};

/// A running `xtask serve`.
#[derive(Debug)]
pub struct Server {
    process: Child,
    site: String,
    address: SocketAddr,
}

impl Server {
    /// Serves the built page at the root of its host.
    pub fn start() -> Result<Self> {
        Self::serving(&setting::dist()?, "/")
    }

    /// Serves a folder under a path of its host.
    pub fn serving(folder: &Path, prefix: &str) -> Result<Self> {
        let mut process = Command::new(setting::xtask()?)
            .args(["serve", "--port", "0", "--prefix", prefix, "--dir"])
            .arg(folder)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .context("the server could not be started")?;
        let site = match listening(&mut process) {
            Ok(site) => site,
            Err(error) => {
                stop(&mut process);
                return Err(error);
            }
        };
        let host = site.trim_start_matches("http://").split('/').next().unwrap_or_default();
        let address = host.parse().with_context(|| format!("`{site}` names no address"))?;
        Ok(Self { process, site, address })
    }

    /// The address of the start page.
    #[must_use]
    pub fn site(&self) -> &str {
        &self.site
    }

    /// Kills the server and makes sure that nothing answers any more.
    pub fn kill(mut self) -> Result<()> {
        stop(&mut self.process);
        let answer = TcpStream::connect(self.address);
        ensure!(
            answer.is_err(),
            "{} still answers after its server was killed",
            self.address
        );
        Ok(())
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        stop(&mut self.process);
    }
}

fn listening(process: &mut Child) -> Result<String> {
    let output = process.stdout.take().context("the server has no output")?;
    for line in BufReader::new(output).lines() {
        if let Some(site) = line?.strip_prefix("Listening on ") {
            return Ok(site.to_owned());
        }
    }
    bail!("the server ended before it listened; what it said is above")
}

fn stop(process: &mut Child) {
    // Both fail only when the process has ended already.
    let _ = process.kill();
    let _ = process.wait();
}

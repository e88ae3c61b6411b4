//! The program between a journey and its browser, on a port of its own.

use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// Far beyond what a driver takes to listen.
const LIMIT: Duration = Duration::from_secs(30);
/// How often its port is tried.
const PAUSE: Duration = Duration::from_millis(20);

/// A running driver.
#[derive(Debug)]
pub(super) struct Driver {
    process: Child,
    pub(super) url: String,
}

impl Driver {
    /// A driver that chooses a free port and says which, after these words.
    pub(super) fn that_says_its_port(command: &mut Command, words: &str) -> Result<Self> {
        let mut driver = Self::start(command)?;
        let output = driver.process.stdout.take().context("the driver has no output")?;
        let mut lines = BufReader::new(output).lines();
        for line in lines.by_ref() {
            if let Some((_, rest)) = line?.split_once(words) {
                driver.listens_on(rest.trim_end_matches('.').parse()?);
                // It goes on talking, and would stop if nobody listened.
                std::thread::spawn(move || lines.for_each(drop));
                return Ok(driver);
            }
        }
        bail!("the driver ended before it listened")
    }

    /// A driver that has to be told its port, by this option.
    pub(super) fn on_a_free_port(command: &mut Command, option: &str) -> Result<Self> {
        let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port();
        let mut driver = Self::start(command.arg(format!("{option}{port}")))?;
        driver.process.stdout.take();
        driver.listens_on(port);
        let start = Instant::now();
        while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
            if let Some(end) = driver.process.try_wait()? {
                bail!("the driver ended before it listened ({end})");
            }
            if start.elapsed() > LIMIT {
                bail!("the driver does not listen on port {port}");
            }
            std::thread::sleep(PAUSE);
        }
        Ok(driver)
    }

    fn start(command: &mut Command) -> Result<Self> {
        let process = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .with_context(|| format!("{} could not be started", command.get_program().to_string_lossy()))?;
        let url = String::new();
        Ok(Self { process, url })
    }

    fn listens_on(&mut self, port: u16) {
        self.url = format!("http://127.0.0.1:{port}");
    }

    /// Its process.
    pub(super) fn id(&self) -> u32 {
        self.process.id()
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

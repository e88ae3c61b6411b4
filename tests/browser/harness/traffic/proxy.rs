//! A proxy that notes each request and passes it on. Where its server is gone it hangs up, as a
//! dead network would.
//!
//! It takes one request from each connection, which keeps it simple, and passes on no encrypted
//! ones: the page is served in the clear here, so each of those is a request to elsewhere.

use anyhow::{Context, Result, ensure};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, Shutdown, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};

/// Where Firefox fetches lists of its own, which no setting of it turns off everywhere. A page that
/// asked for something there would not be noticed, and would get nothing.
const ERRANDS: &[&str] = &["firefox.settings.services.mozilla.com:443"];

/// A proxy of one browser. It ends with the program.
#[derive(Debug)]
pub(crate) struct Proxy {
    port: u16,
    seen: Arc<Mutex<Vec<String>>>,
}

impl Proxy {
    pub(super) fn start() -> Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let port = listener.local_addr()?.port();
        let seen = Arc::new(Mutex::new(Vec::new()));
        let notes = Arc::clone(&seen);
        std::thread::spawn(move || {
            for client in listener.incoming().flatten() {
                let notes = Arc::clone(&notes);
                // A connection that breaks is the browser's to notice.
                std::thread::spawn(move || pass_on(&client, &notes));
            }
        });
        Ok(Self { port, seen })
    }

    pub(super) fn port(&self) -> u16 {
        self.port
    }

    /// All addresses asked for so far.
    pub(super) fn urls(&self) -> Result<Vec<String>> {
        let seen = self.seen.lock().ok().context("the proxy has failed")?;
        Ok(seen.clone())
    }
}

/// Notes what a browser asks for, asks its server, and hands back what that answers.
fn pass_on(client: &TcpStream, notes: &Mutex<Vec<String>>) -> Result<()> {
    let mut asked = BufReader::new(client);
    let mut first = String::new();
    asked.read_line(&mut first)?;
    let words: Vec<&str> = first.split_whitespace().collect();
    let [method, url, _] = words[..] else {
        return Ok(());
    };
    if ERRANDS.contains(&url) {
        return Ok(());
    }
    notes.lock().ok().context("the notes are lost")?.push(url.to_owned());
    ensure!(method == "GET", "{method} is not passed on");
    let rest = url.strip_prefix("http://").context("an address in the clear")?;
    let (host, path) = rest.split_once('/').context("an address has a path")?;

    let mut server = TcpStream::connect(host)?;
    write!(server, "GET /{path} HTTP/1.1\r\n")?;
    for line in asked.lines() {
        let line = line?;
        if line.is_empty() {
            break;
        }
        if !is_about_the_connection(&line) {
            write!(server, "{line}\r\n")?;
        }
    }
    server.write_all(b"Connection: close\r\n\r\n")?;
    hand_back(&mut server, client)
}

fn hand_back(server: &mut TcpStream, mut client: &TcpStream) -> Result<()> {
    let mut some = [0; 1 << 14];
    loop {
        let size = server.read(&mut some)?;
        if size == 0 {
            break;
        }
        client.write_all(&some[..size])?;
    }
    Ok(client.shutdown(Shutdown::Write)?)
}

fn is_about_the_connection(line: &str) -> bool {
    let name = line.split(':').next().unwrap_or_default();
    ["connection", "proxy-connection", "keep-alive"]
        .iter()
        .any(|other| name.eq_ignore_ascii_case(other))
}

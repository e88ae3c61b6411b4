//! A server whose answers can be spoilt, one by one: for what a bad network, a bad host, or the
//! sign-in page of some Wi-Fi puts in the place of a file. Every connection has one answer.

use anyhow::{Result, ensure};
use std::io::{BufRead, BufReader, Write};
use std::net::{Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::Duration;

/// What happens to an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The connection ends without a word.
    Dead,
    /// The connection ends in the middle of the file.
    Cut,
    /// Half of the file is sent as if it were all of it.
    Half,
    /// The file comes as another type.
    Type(&'static str),
    /// A sign-in page comes instead, as if all were well.
    SignIn,
    /// The answer sends the browser to a sign-in page.
    Redirect,
}

/// What the sign-in page says.
pub const SIGN_IN: &str = "Free Wi-Fi. Sign in to go on.";
const SIGN_IN_PATH: &str = "/sign-in";
/// No answer here takes longer, so a browser that says nothing is not waited for.
const PATIENCE: Duration = Duration::from_secs(10);

/// A running server, in threads of its own.
#[derive(Debug)]
pub struct FaultyServer {
    site: String,
    address: SocketAddr,
    shared: Arc<Shared>,
    listening: Option<JoinHandle<()>>,
}

#[derive(Debug)]
struct Shared {
    folder: PathBuf,
    /// Where answers are spoilt, and how.
    fault: Mutex<Option<(String, Fault)>>,
    /// How many answers were spoilt since that was set.
    spoilt: Mutex<usize>,
    over: AtomicBool,
}

impl FaultyServer {
    /// Serves a folder, with no fault yet.
    pub fn serving(folder: &Path) -> Result<Self> {
        let listener = TcpListener::bind(("127.0.0.1", 0))?;
        let address = listener.local_addr()?;
        let shared = Arc::new(Shared {
            folder: folder.to_owned(),
            fault: Mutex::default(),
            spoilt: Mutex::default(),
            over: AtomicBool::new(false),
        });
        let served = shared.clone();
        let listening = std::thread::spawn(move || listen(&listener, &served));
        Ok(Self {
            site: format!("http://{address}/"),
            address,
            shared,
            listening: Some(listening),
        })
    }

    /// The address of the start page.
    #[must_use]
    pub fn site(&self) -> &str {
        &self.site
    }

    /// Spoils all answers from here on whose path ends in this, or whose file's name begins and ends
    /// as this does around a `*`, and no others. The start page's path is `/`.
    pub fn spoil(&self, place: &str, fault: Fault) {
        *held(&self.shared.fault) = Some((place.to_owned(), fault));
        *held(&self.shared.spoilt) = 0;
    }

    /// Fails if no answer was spoilt, for then nothing was tried.
    pub fn was_asked(&self) -> Result<()> {
        let spoilt = *held(&self.shared.spoilt);
        ensure!(spoilt > 0, "nobody asked for what was spoilt");
        Ok(())
    }

    /// Answers as it should again; fails as [`Self::was_asked`].
    pub fn heal(&self) -> Result<()> {
        *held(&self.shared.fault) = None;
        self.was_asked()
    }

    /// Ends, and makes sure that nothing answers any more.
    pub fn kill(mut self) -> Result<()> {
        self.end();
        let answer = TcpStream::connect(self.address);
        ensure!(answer.is_err(), "{} still answers after its end", self.address);
        Ok(())
    }

    fn end(&mut self) {
        self.shared.over.store(true, Ordering::SeqCst);
        if let Some(listening) = self.listening.take() {
            // A last connection wakes the listener; it has ended already where that fails.
            let _ = TcpStream::connect(self.address);
            let _ = listening.join();
        }
    }
}

impl Drop for FaultyServer {
    fn drop(&mut self) {
        self.end();
    }
}

fn held<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

fn listen(listener: &TcpListener, shared: &Arc<Shared>) {
    for stream in listener.incoming() {
        if shared.over.load(Ordering::SeqCst) {
            return;
        }
        let shared = shared.clone();
        if let Ok(stream) = stream {
            // A browser that has gone away is no fault of the server.
            std::thread::spawn(move || answer(stream, &shared));
        }
    }
}

fn answer(mut stream: TcpStream, shared: &Shared) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    let path = asked(&stream)?;
    let fault = held(&shared.fault)
        .as_ref()
        .filter(|(place, _)| path != SIGN_IN_PATH && fits(place, &path))
        .map(|(_, fault)| *fault);
    if fault.is_some() {
        *held(&shared.spoilt) += 1;
    }
    let name = if path.ends_with('/') { "index.html" } else { &path[1..] };
    let file = std::fs::read(shared.folder.join(name));
    let (status, kind, mut body) = match file {
        Ok(body) => ("200 OK", kind(name), body),
        Err(_) if path == SIGN_IN_PATH => ("200 OK", "text/html", SIGN_IN.into()),
        Err(_) => ("404 Not Found", "text/plain", Vec::new()),
    };
    let (mut status, mut kind, mut place) = (status, kind, String::new());
    match fault {
        Some(Fault::Dead) => return stream.shutdown(Shutdown::Both),
        Some(Fault::Half) => body.truncate(body.len() / 2),
        Some(Fault::Type(other)) => kind = other,
        Some(Fault::SignIn) => (status, kind, body) = ("200 OK", "text/html", SIGN_IN.into()),
        Some(Fault::Redirect) => (status, place) = ("302 Found", format!("Location: {SIGN_IN_PATH}\r\n")),
        Some(Fault::Cut) | None => {}
    }
    let length = body.len();
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\n{place}Cache-Control: no-cache\r\nConnection: close\r\n\r\n"
    );
    if fault == Some(Fault::Cut) {
        body.truncate(length / 2);
    }
    stream.write_all(head.as_bytes())?;
    stream.write_all(&body)?;
    stream.flush()
}

fn fits(place: &str, path: &str) -> bool {
    let file = path.rsplit('/').next().unwrap_or_default();
    match place.split_once('*') {
        Some((start, end)) => file.starts_with(start) && file.ends_with(end),
        None => path.ends_with(place),
    }
}

/// The path that is asked for. The rest of the question is read as well, or the connection would
/// end with a reset instead of an answer.
fn asked(stream: &TcpStream) -> std::io::Result<String> {
    let mut lines = BufReader::new(stream).lines();
    let first = lines.next().unwrap_or_else(|| Ok(String::new()))?;
    for line in lines {
        if line?.is_empty() {
            break;
        }
    }
    let path = first.split(' ').nth(1).filter(|path| path.starts_with('/'));
    let path = path.unwrap_or("/").split('?').next().unwrap_or_default();
    Ok(path.to_owned())
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next().unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript",
        "css" => "text/css",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

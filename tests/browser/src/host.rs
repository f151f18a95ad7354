//! A host that can be told to go wrong, as hosts and what stands before them do.

use std::io::{BufRead, BufReader, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use anyhow::Result;
use xtask::precache;

/// What is wrong with an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The file is gone.
    NotFound,
    /// The host is broken.
    Broken,
    /// The page of a hotel's network that wants a room number, as a good answer.
    Login,
    /// Nothing, as a good answer.
    Empty,
    /// Half of it, as a good answer.
    Truncated,
    /// The line is cut half way.
    Cut,
    /// Nothing, and the line stays open.
    Hang,
    /// One bit is wrong.
    Flipped,
    /// The file as the version before had it.
    Stale,
    /// The bytes are right, the type is not.
    WrongType,
}

/// Every fault that must stop an install.
pub const FAULTS: [Fault; 9] = [
    Fault::NotFound,
    Fault::Broken,
    Fault::Login,
    Fault::Empty,
    Fault::Truncated,
    Fault::Cut,
    Fault::Hang,
    Fault::Flipped,
    Fault::Stale,
];

/// The driver waits for a page to load, and a browser for minutes.
const HANGS: Duration = Duration::from_secs(3);

#[derive(Debug, Default)]
struct Told {
    folder: PathBuf,
    /// What it served before that.
    before: PathBuf,
    is_gone: bool,
    is_over: bool,
    /// Goes wrong with the files whose path ends so.
    fault: Option<(String, Fault)>,
    /// How often it has.
    wrong: usize,
    redirects: Vec<(String, String)>,
    /// The policy that it sends with every page.
    policy: String,
}

/// A host of this machine, until it is dropped.
#[derive(Debug)]
pub struct Host {
    told: Arc<Mutex<Told>>,
    port: u16,
}

fn lock(told: &Mutex<Told>) -> MutexGuard<'_, Told> {
    told.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Host {
    /// Serves a folder on a free port.
    ///
    /// # Errors
    /// When no port is free.
    pub fn start(folder: &Path) -> Result<Host> {
        let listener = TcpListener::bind(("127.0.0.1", 0))?;
        let port = listener.local_addr()?.port();
        let told = Arc::new(Mutex::new(Told { folder: folder.into(), before: folder.into(), ..Told::default() }));
        let hears = Arc::clone(&told);
        std::thread::spawn(move || {
            for caller in listener.incoming().flatten() {
                if lock(&hears).is_over {
                    return;
                }
                let told = Arc::clone(&hears);
                std::thread::spawn(move || answer(&caller, &told));
            }
        });
        Ok(Host { told, port })
    }

    /// The address to open.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://localhost:{}/", self.port)
    }

    /// Serves another build from now on.
    pub fn publish(&self, folder: &Path) {
        let mut told = lock(&self.told);
        told.before = std::mem::replace(&mut told.folder, folder.into());
    }

    /// Whether every call is cut at once, as without a network.
    pub fn gone(&self, is_gone: bool) {
        lock(&self.told).is_gone = is_gone;
    }

    /// Goes wrong with the files whose path ends so, and with no others; "" for all but the worker.
    pub fn fail(&self, path: &str, fault: Fault) {
        let mut told = lock(&self.told);
        told.fault = Some((path.to_owned(), fault));
        told.wrong = 0;
    }

    /// How often it went wrong since it was told to.
    #[must_use]
    pub fn went_wrong(&self) -> usize {
        lock(&self.told).wrong
    }

    /// Goes right again.
    pub fn mend(&self) {
        lock(&self.told).fault = None;
    }

    /// Sends a policy with every page from now on.
    pub fn policy(&self, policy: &str) {
        policy.clone_into(&mut lock(&self.told).policy);
    }

    /// Sends who asks for one path to another.
    pub fn redirect(&self, from: &str, to: &str) {
        lock(&self.told).redirects.push((from.to_owned(), to.to_owned()));
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        lock(&self.told).is_over = true;
        // Wakes the one who waits for callers.
        let _ = TcpStream::connect(("127.0.0.1", self.port));
    }
}

/// Answers one call, and closes the line.
fn answer(mut caller: &TcpStream, told: &Mutex<Told>) {
    let mut lines = BufReader::new(caller).lines().map_while(Result::ok);
    let asked = lines.next().unwrap_or_default();
    let path = asked.split(' ').nth(1).unwrap_or("/").split('?').next().unwrap_or("/").to_owned();
    // All of what is asked has to be read, or the line breaks.
    lines.take_while(|line| !line.is_empty()).for_each(drop);
    let (answer, fault) = {
        let mut told = lock(told);
        let fault = told.fault_of(&path);
        told.wrong += usize::from(fault.is_some() && !told.is_gone);
        (told.answer(&path), fault)
    };
    let hangs = |told: &Told| !told.is_gone && !told.is_over && told.fault_of(&path) == Some(Fault::Hang);
    let asked = Instant::now();
    while fault == Some(Fault::Hang) && asked.elapsed() < HANGS && hangs(&lock(told)) {
        std::thread::sleep(Duration::from_millis(10));
    }
    if fault != Some(Fault::Hang) && !lock(told).is_gone {
        let _ = caller.write_all(&answer);
    }
    let _ = caller.shutdown(Shutdown::Both);
}

impl Told {
    fn fault_of(&self, path: &str) -> Option<Fault> {
        let file = path.trim_start_matches('/');
        let is_start = |name: &str| name == "index.html" && (file.is_empty() || file.ends_with('/'));
        let (name, fault) = self.fault.as_ref()?;
        // Of all files but the worker, which browsers run as nothing but a script.
        let is_meant = if name.is_empty() { !file.ends_with(precache::WORKER) } else { file.ends_with(name.as_str()) };
        (is_meant || is_start(name)).then_some(*fault)
    }

    /// The bytes to send.
    fn answer(&self, path: &str) -> Vec<u8> {
        if let Some((_, to)) = self.redirects.iter().find(|(from, _)| from == path) {
            return format!("HTTP/1.1 302 Found\r\nLocation: {to}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")
                .into_bytes();
        }
        let mut name = path.trim_start_matches('/').to_owned();
        if name.is_empty() || name.ends_with('/') {
            name.push_str("index.html");
        }
        let fault = self.fault_of(path);
        let folder = if fault == Some(Fault::Stale) { &self.before } else { &self.folder };
        let file = std::fs::read(folder.join(&name));
        let mime = precache::mime(&name).unwrap_or("application/octet-stream");
        let login = || b"<!doctype html><title>Welcome</title><p>Your room number, please.".to_vec();
        let (status, mime, mut body) = match (file, fault) {
            (_, Some(Fault::Login)) => ("200 OK", "text/html", login()),
            (_, Some(Fault::Broken)) => ("500 Internal Server Error", "text/html", login()),
            (Err(_), _) | (_, Some(Fault::NotFound)) => ("404 Not Found", "text/html", login()),
            (Ok(_), Some(Fault::Empty)) => ("200 OK", mime, Vec::new()),
            (Ok(body), Some(Fault::WrongType)) => ("200 OK", "text/plain", body),
            (Ok(body), _) => ("200 OK", mime, body),
        };
        let half = body.len() / 2;
        if fault == Some(Fault::Truncated) {
            body.truncate(half);
        }
        if let (Some(Fault::Flipped), Some(byte)) = (fault, body.get_mut(half)) {
            *byte ^= 1;
        }
        // A careless host: it lets everything be cached for a year. The browser asks for workers past that.
        let policy = match self.policy.as_str() {
            policy if !policy.is_empty() && mime.starts_with("text/html") => {
                format!("Content-Security-Policy: {policy}\r\n")
            }
            _ => String::new(),
        };
        let head = format!(
            "HTTP/1.1 {status}\r\nContent-Type: {mime}\r\n{policy}Content-Length: {}\r\nCache-Control: public, max-age=31536000\r\nConnection: close\r\n\r\n",
            body.len()
        );
        if fault == Some(Fault::Cut) {
            body.truncate(half);
        }
        let mut bytes = head.into_bytes();
        bytes.extend(body);
        bytes
    }
}

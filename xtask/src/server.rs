//! A small static server: right types, compression, 404 for what is not there. For this machine only.

use std::collections::HashMap;
use std::net::SocketAddr;
use std::path::Path;
use std::sync::Arc;
use std::thread::JoinHandle;

use anyhow::{Context, Result, anyhow};
use tiny_http::{Header, Request, Response, Server};

use crate::{dist, precache, size};

const PORT: u16 = 8080;

/// A server that runs until it is dropped.
pub struct Serving {
    server: Arc<Server>,
    thread: Option<JoinHandle<()>>,
    address: SocketAddr,
}

impl Serving {
    /// Serves a folder on a free port of this machine. The files are read once, now.
    ///
    /// # Errors
    /// When the folder cannot be read or no port is free.
    pub fn start(folder: &Path) -> Result<Serving> {
        Self::on(folder, 0)
    }

    /// As [`Serving::start`], on a given port.
    ///
    /// # Errors
    /// As [`Serving::start`].
    pub fn on(folder: &Path, port: u16) -> Result<Serving> {
        let files = Files::read(folder)?;
        let server = Arc::new(Server::http(("127.0.0.1", port)).map_err(|problem| anyhow!("port {port}: {problem}"))?);
        let address = server.server_addr().to_ip().context("no address")?;
        let listening = Arc::clone(&server);
        let thread = std::thread::spawn(move || {
            for request in listening.incoming_requests() {
                files.answer(request);
            }
        });
        Ok(Serving { server, thread: Some(thread), address })
    }

    /// The port.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// The address to open.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://localhost:{}/", self.port())
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        self.server.unblock();
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

/// Serves dist/ and waits.
///
/// # Errors
/// When there is no build or no free port.
pub fn serve_until_stopped() -> Result<()> {
    let serving = Serving::on(&dist(), PORT).or_else(|_| Serving::start(&dist()))?;
    println!("\nMeniscus is at {}\nStop it with Ctrl-C.", serving.url());
    loop {
        std::thread::park();
    }
}

struct File {
    plain: Vec<u8>,
    brotli: Vec<u8>,
    kind: &'static str,
}

struct Files(HashMap<String, File>);

impl Files {
    fn read(folder: &Path) -> Result<Files> {
        let mut names = precache::files(folder)?;
        names.extend([precache::WORKER.to_owned()].into_iter().filter(|name| folder.join(name).exists()));
        let screenshots = folder.join("screenshots");
        if screenshots.is_dir() {
            names.extend(precache::files(&screenshots)?.into_iter().map(|name| format!("screenshots/{name}")));
        }
        let mut files = HashMap::new();
        for name in names {
            let plain = std::fs::read(folder.join(&name))?;
            let kind = kind(&name);
            let brotli = if kind.starts_with("image/png") { Vec::new() } else { size::brotli(&plain, 5)? };
            files.insert(name, File { plain, brotli, kind });
        }
        Ok(Files(files))
    }

    fn answer(&self, request: Request) {
        let path = request.url().split(['?', '#']).next().unwrap_or("/").trim_start_matches('/');
        let name = if path.is_empty() { "index.html" } else { path };
        let Some(file) = self.0.get(name) else {
            let _ = request.respond(Response::from_string("Not here.").with_status_code(404));
            return;
        };
        let takes_brotli = request
            .headers()
            .iter()
            .any(|header| header.field.equiv("Accept-Encoding") && header.value.as_str().contains("br"))
            && !file.brotli.is_empty();
        let body = if takes_brotli { &file.brotli } else { &file.plain };
        let mut response = Response::from_data(body.clone());
        let mut headers =
            vec![("Content-Type", file.kind), ("Cache-Control", "no-cache"), ("X-Content-Type-Options", "nosniff")];
        if takes_brotli {
            headers.push(("Content-Encoding", "br"));
        }
        for (field, value) in headers {
            if let Ok(header) = Header::from_bytes(field, value) {
                response.add_header(header);
            }
        }
        let _ = request.respond(response);
    }
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "text/plain; charset=utf-8",
    }
}

//! A small static server: right types, compression, 404 for what is not there. For this machine only.

use std::net::SocketAddr;
use std::path::Path;
use std::thread::JoinHandle;

use anyhow::{Context, Result, ensure};
use axum::Router;
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, X_CONTENT_TYPE_OPTIONS};
use tokio::net::TcpListener;
use tokio::sync::oneshot;
use tower_http::compression::CompressionLayer;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

use crate::dist;

const PORT: u16 = 8080;

/// A server that runs until it is dropped, and then is gone at once.
pub struct Serving {
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
    address: SocketAddr,
}

impl Serving {
    /// Serves a folder on a free port of this machine.
    ///
    /// # Errors
    /// When there is no such folder or no port is free.
    pub fn start(folder: &Path) -> Result<Serving> {
        Self::on(folder, 0)
    }

    /// As [`Serving::start`], on a given port.
    ///
    /// # Errors
    /// As [`Serving::start`].
    pub fn on(folder: &Path, port: u16) -> Result<Serving> {
        ensure!(folder.join("index.html").is_file(), "no build in {}: run `cargo xtask build`", folder.display());
        let header = |name, value| SetResponseHeaderLayer::overriding(name, HeaderValue::from_static(value));
        let app = Router::new()
            .fallback_service(ServeDir::new(folder))
            .layer(CompressionLayer::new())
            .layer(header(CACHE_CONTROL, "no-cache"))
            .layer(header(X_CONTENT_TYPE_OPTIONS, "nosniff"));
        let listener = std::net::TcpListener::bind(("127.0.0.1", port)).with_context(|| format!("port {port}"))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(1).enable_all().build()?;
        let (stop, stopped) = oneshot::channel::<()>();
        // In a thread of its own, which ends with every connection, so that callers may be async or not.
        let thread = std::thread::spawn(move || {
            runtime.block_on(async move {
                let Ok(listener) = TcpListener::from_std(listener) else { return };
                tokio::select! {
                    _ = axum::serve(listener, app) => {}
                    _ = stopped => {}
                }
            });
        });
        Ok(Serving { stop: Some(stop), thread: Some(thread), address })
    }

    /// The port.
    #[must_use]
    pub const fn port(&self) -> u16 {
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
        drop(self.stop.take());
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

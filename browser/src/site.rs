//! The site: a folder on this machine, served until it is stopped, at one address for the whole run.

use crate::ground::Outcome;
use axum::Router;
use axum::extract::State;
use axum::http::{StatusCode, Uri, header};
use axum::response::{IntoResponse, Response};
use std::fs;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use tokio::sync::oneshot;

pub(crate) struct Site {
    port: u16,
    shared: Arc<Mutex<Shared>>,
    running: Option<Running>,
}

struct Shared {
    folder: PathBuf,
    asked: Vec<String>,
}

struct Running {
    stop: oneshot::Sender<()>,
    thread: JoinHandle<()>,
}

impl Site {
    pub(crate) fn serve(folder: &Path) -> Outcome<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let port = listener.local_addr()?.port();
        let shared = Shared { folder: folder.to_owned(), asked: Vec::new() };
        let mut site = Self { port, shared: Arc::new(Mutex::new(shared)), running: None };
        site.run(listener)?;
        Ok(site)
    }

    pub(crate) fn origin(&self) -> String {
        format!("http://localhost:{}", self.port)
    }

    /// Serves again, if it was stopped.
    pub(crate) fn start(&mut self) -> Outcome {
        if self.running.is_some() {
            return Ok(());
        }
        // The library binds with the address marked as reusable, unlike the standard one.
        let runtime = tokio::runtime::Handle::current();
        let _inside = runtime.enter();
        let socket = tokio::net::TcpSocket::new_v4()?;
        socket.set_reuseaddr(true)?;
        socket.bind((Ipv4Addr::LOCALHOST, self.port).into())?;
        self.run(socket.listen(64)?.into_std()?)
    }

    /// Stops it; connections that are open end with it.
    pub(crate) fn stop(&mut self) -> Outcome {
        if let Some(Running { stop, thread }) = self.running.take() {
            let _ = stop.send(());
            thread.join().map_err(|_| "the site ended badly")?;
        }
        Ok(())
    }

    /// Serves another folder from now on.
    pub(crate) fn show(&self, folder: &Path) {
        locked(&self.shared).folder = folder.to_owned();
    }

    /// The paths that were asked for since this was last asked.
    pub(crate) fn asked(&self) -> Vec<String> {
        std::mem::take(&mut locked(&self.shared).asked)
    }

    /// How many paths that begin so were asked for since.
    pub(crate) fn count(&self, beginning: &str) -> usize {
        locked(&self.shared).asked.iter().filter(|path| path.starts_with(beginning)).count()
    }

    /// A runtime of its own ends every connection when it is dropped.
    fn run(&mut self, listener: TcpListener) -> Outcome {
        listener.set_nonblocking(true)?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
        let (stop, stopped) = oneshot::channel();
        let router = Router::new().fallback(answer).with_state(Arc::clone(&self.shared));
        let thread = thread::spawn(move || {
            runtime.block_on(async {
                let Ok(listener) = tokio::net::TcpListener::from_std(listener) else { return };
                tokio::select! {
                    _ = axum::serve(listener, router) => {}
                    _ = stopped => {}
                }
            });
        });
        self.running = Some(Running { stop, thread });
        Ok(())
    }
}

fn locked(shared: &Mutex<Shared>) -> MutexGuard<'_, Shared> {
    shared.lock().unwrap_or_else(PoisonError::into_inner)
}

async fn answer(State(shared): State<Arc<Mutex<Shared>>>, asked: Uri) -> Response {
    let path = asked.path().trim_start_matches('/').to_owned();
    let mut shared = locked(&shared);
    shared.asked.push(path.clone());
    let name = if path.is_empty() { "index.html" } else { path.as_str() };
    match fs::read(shared.folder.join(name)) {
        Ok(bytes) => {
            let kind = (header::CONTENT_TYPE, kind(name));
            ([kind, (header::CACHE_CONTROL, "no-cache")], bytes).into_response()
        }
        Err(_) => StatusCode::NOT_FOUND.into_response(),
    }
}

/// The media type that any web space gives a file of this name.
fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("webmanifest") => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

//! The app on this machine: files from memory and pages as PDF, to this machine alone. Nothing that comes
//! in is written down anywhere.

use crate::printer::Printer;
use app::ShellFile;
use axum::Router;
use axum::body::Bytes;
use axum::extract::{DefaultBodyLimit, FromRequestParts, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderName, StatusCode, Uri, header};
use axum::response::{IntoResponse, Response};
use axum::routing::post;
use desk::MOST_BYTES;
use std::io::{self, Write as _};
use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use tokio::net::TcpListener;
use tokio::task::spawn_blocking;

/// The largest order: an outing, and what its signs and ends of line take up in JSON.
const MOST_ORDERED: usize = 2 * MOST_BYTES;

/// Serves files and printer until the program is stopped. A browser that does not open is no failure: the
/// address is printed.
pub(crate) fn serve(
    files: Vec<ShellFile>,
    printer: Printer,
    port: u16,
    open: bool,
) -> io::Result<()> {
    let files: Arc<[ShellFile]> = files.into();
    let orders =
        post(print).layer(DefaultBodyLimit::max(MOST_ORDERED)).with_state(Arc::new(printer));
    let router = Router::new().route("/pdf", orders).fallback(answer).with_state(files);
    let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
    runtime.block_on(async {
        // `localhost` is an address at which browsers keep what they are given; others see nothing.
        let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).await?;
        let address = format!("http://localhost:{}/", listener.local_addr()?.port());
        writeln!(io::stdout(), "{address}")?;
        if open {
            let _ = open::that_detached(&address);
        }
        axum::serve(listener, router).await
    })
}

async fn answer(State(files): State<Arc<[ShellFile]>>, asked: Uri) -> Response {
    let path = asked.path().trim_start_matches('/');
    let path = if path.is_empty() { "index.html" } else { path };
    match files.iter().find(|file| file.path == path) {
        Some(file) => {
            let kind = (header::CONTENT_TYPE, file.kind);
            ([kind, (header::CACHE_CONTROL, "no-cache")], file.bytes.clone()).into_response()
        }
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

async fn print(_: FromTheApp, State(printer): State<Arc<Printer>>, order: Bytes) -> Response {
    // Setting a page takes the machine for a while, in which files are still handed out.
    match spawn_blocking(move || printer.print(&order)).await {
        Ok(Ok(pdf)) => {
            let kind = (header::CONTENT_TYPE, "application/pdf");
            ([kind, (header::CACHE_CONTROL, "no-store")], pdf).into_response()
        }
        Ok(Err(why)) => (StatusCode::UNPROCESSABLE_ENTITY, why).into_response(),
        Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}

/// The names of this machine for itself.
const OWN_NAMES: [&str; 2] = ["localhost", "127.0.0.1"];

const FETCH_SITE: HeaderName = HeaderName::from_static("sec-fetch-site");

/// That the app asks, as this program served it: no page of another origin, and none that calls this
/// machine by another name.
struct FromTheApp;

impl<S: Sync> FromRequestParts<S> for FromTheApp {
    type Rejection = StatusCode;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, StatusCode> {
        from_the_app(&parts.headers).then_some(Self).ok_or(StatusCode::FORBIDDEN)
    }
}

fn from_the_app(headers: &HeaderMap) -> bool {
    let said = |name| headers.get(name).and_then(|said| said.to_str().ok());
    let host = said(header::HOST).unwrap_or_default();
    let name = host.rsplit_once(':').map_or(host, |(name, _)| name);
    let from_here = said(header::ORIGIN) == Some(format!("http://{host}").as_str());
    // Browsers that are older than this header leave it out; nobody can put it in for them.
    let same = said(FETCH_SITE).is_none_or(|site| site == "same-origin");
    OWN_NAMES.contains(&name) && from_here && same
}

//! The app on this machine: files from memory, to this machine alone.

use app::ShellFile;
use axum::Router;
use axum::extract::State;
use axum::http::{StatusCode, Uri, header};
use axum::response::{IntoResponse, Response};
use std::io::{self, Write as _};
use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use tokio::net::TcpListener;

/// Serves the files until the program is stopped. A browser that does not open is no failure: the
/// address is printed.
pub(crate) fn serve(files: Vec<ShellFile>, port: u16, open: bool) -> io::Result<()> {
    let files: Arc<[ShellFile]> = files.into();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
    runtime.block_on(async {
        // `localhost` is an address at which browsers keep what they are given; others see nothing.
        let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).await?;
        let address = format!("http://localhost:{}/", listener.local_addr()?.port());
        writeln!(io::stdout(), "{address}")?;
        if open {
            let _ = open::that_detached(&address);
        }
        axum::serve(listener, Router::new().fallback(answer).with_state(files)).await
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

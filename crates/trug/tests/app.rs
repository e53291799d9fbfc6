//! `trug app`, run as a user runs it: what its server hands out, and to whom.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]

use app::PdfOrder;
use desk::InputFile;
use page::Habits;
use std::fs;
use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};

/// The server, stopped when the test is over.
struct Server {
    child: Child,
    port: u16,
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// What it answered.
struct Answer {
    code: u16,
    body: Vec<u8>,
}

impl Server {
    /// None where this program was built without the app, which has nothing to serve then.
    fn start() -> Option<Self> {
        let mut command = Command::new(env!("CARGO_BIN_EXE_trug"));
        command.args(["app", "--no-open", "--port", "0"]);
        let child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let mut server = Self { child, port: 0 };
        let mut address = String::new();
        BufReader::new(server.child.stdout.take().unwrap()).read_line(&mut address).unwrap();
        if address.is_empty() {
            let mut why = String::new();
            server.child.stderr.take().unwrap().read_to_string(&mut why).unwrap();
            assert!(why.contains("cargo xtask app"), "{why}");
            return None;
        }
        let port = address.trim_end_matches("/\n").rsplit(':').next().unwrap();
        server.port = port.parse().unwrap();
        Some(server)
    }

    fn origin(&self) -> String {
        format!("http://localhost:{}", self.port)
    }

    /// An order as the app sends it, but for what a test says otherwise.
    fn order(&self, host: &str, headers: &[(&str, &str)], body: &[u8]) -> Answer {
        let mut head = format!("POST /pdf HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n");
        head += &format!("Content-Length: {}\r\n", body.len());
        head.extend(headers.iter().map(|(name, said)| format!("{name}: {said}\r\n")));
        self.say(&[head.as_bytes(), b"\r\n", body].concat())
    }

    fn order_as_the_app(&self, body: &[u8]) -> Answer {
        let host = format!("localhost:{}", self.port);
        self.order(&host, &[("Origin", &self.origin()), ("Sec-Fetch-Site", "same-origin")], body)
    }

    fn say(&self, bytes: &[u8]) -> Answer {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        // Who is refused may be cut off before everything was said.
        let _ = stream.write_all(bytes);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        let end = answer.windows(4).position(|four| four == b"\r\n\r\n").unwrap();
        let (head, body) = answer.split_at(end + 4);
        let code = String::from_utf8_lossy(head).split(' ').nth(1).unwrap().parse().unwrap();
        Answer { code, body: body.to_vec() }
    }
}

/// A page of the plan of an outing, which the app sends as one file.
fn order(page: &str) -> Vec<u8> {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let read = |name: &str| fs::read_to_string(demo.join(name)).unwrap();
    let text =
        read("autumn-evening.toml") + &read("autumn-people.toml") + &read("autumn-health.toml");
    let text = text.lines().filter(|line| !line.starts_with("include")).collect::<Vec<_>>();
    let file = InputFile { name: "outing.toml".to_owned(), text: text.join("\n") };
    let now = jiff::civil::date(2027, 10, 1).at(19, 0, 0, 0);
    serde_json::to_vec(&PdfOrder { page: page.to_owned(), now, file, habits: Habits::default() })
        .unwrap()
}

#[test]
fn a_page_that_the_app_orders_comes_as_a_pdf() {
    let Some(server) = Server::start() else { return };
    let made = server.order_as_the_app(&order("run-sheet"));
    assert_eq!(made.code, 200, "{}", String::from_utf8_lossy(&made.body));
    assert!(made.body.starts_with(b"%PDF-"));
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("ordered.pdf");
    fs::write(&file, &made.body).unwrap();
    if let Ok(checked) = Command::new("qpdf").arg("--check").arg(&file).output() {
        assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stdout));
    }
    if let Ok(read) = Command::new("pdftotext").arg(&file).arg("-").output() {
        assert!(String::from_utf8_lossy(&read.stdout).contains("Run sheet"));
    }
}

#[test]
fn whoever_is_not_the_app_is_refused() {
    let Some(server) = Server::start() else { return };
    let (own, order) = (server.origin(), order("run-sheet"));
    let host = format!("localhost:{}", server.port);
    let other_port = "http://localhost:1".to_owned();
    for (host, headers) in [
        (&host, vec![]),
        (&host, vec![("Origin", "null")]),
        (&host, vec![("Origin", "https://elsewhere.example")]),
        (&host, vec![("Origin", other_port.as_str())]),
        (&host, vec![("Origin", own.as_str()), ("Sec-Fetch-Site", "cross-site")]),
        (&host, vec![("Origin", own.as_str()), ("Sec-Fetch-Site", "same-site")]),
        // A name of somebody else's that leads to this machine.
        (&"elsewhere.example".to_owned(), vec![("Origin", "http://elsewhere.example")]),
        (&"localhost.example".to_owned(), vec![("Origin", "http://localhost.example")]),
    ] {
        let answer = server.order(host, &headers, &order);
        assert_eq!((answer.code, answer.body.len()), (403, 0), "{host} {headers:?}");
    }
    let by_link = format!("GET /pdf HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");
    assert_eq!(server.say(by_link.as_bytes()).code, 405);
}

#[test]
fn what_is_too_large_or_is_no_order_is_refused() {
    let Some(server) = Server::start() else { return };
    assert_eq!(server.order_as_the_app(&vec![b' '; 2 * desk::MOST_BYTES + 1]).code, 413);
    for wrong in [b"".as_slice(), b"{}", b"\xff", &order("no-such-page")] {
        let answer = server.order_as_the_app(wrong);
        assert_eq!(answer.code, 422);
        assert!(!answer.body.is_empty() && !answer.body.starts_with(b"%PDF"));
    }
}

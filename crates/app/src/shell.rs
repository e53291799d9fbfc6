//! The files that a browser loads besides program and herbal: one document, its style and scripts,
//! and what makes it a thing to keep on a phone.

use maud::{DOCTYPE, html};
use page::{Catalogue, html_looks, html_paper, html_style};
use serde_json::json;

/// A file of the app.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShellFile {
    /// Its path below the address of the app.
    pub path: String,
    /// Its media type.
    pub kind: &'static str,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl ShellFile {
    fn new(path: impl Into<String>, kind: &'static str, bytes: impl Into<Vec<u8>>) -> Self {
        Self { path: path.into(), kind, bytes: bytes.into() }
    }
}

/// Who hands the files out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Host {
    /// Any web space: files, and nothing else.
    Folder,
    /// The program for the command line, which makes PDFs of pages, too.
    Program,
}

const SCRIPT: &str = "text/javascript; charset=utf-8";
const STYLE: &str = "text/css; charset=utf-8";
const PACKED: &str = "application/x-lzma";
const GZIP: &str = "application/gzip";

/// What the worker and the keeper begin with.
const UNPACK: &str = include_str!("../web/unpack.js");

/// What people choose on each device: the values of each choice, with the words for them. The first, which is
/// empty, holds where nothing was chosen.
const CHOICES: [(&str, &[(&str, &str)]); 4] = [
    ("looks", &[("", "day"), ("dusk", "dusk"), ("contrast", "contrast")]),
    ("hand", &[("", "right"), ("left", "left")]),
    ("measures", &[("", "metric"), ("us", "us"), ("imperial", "imperial")]),
    (
        "dates",
        &[
            ("", "day-month-year"),
            ("month-day-year", "month-day-year"),
            ("year-month-day", "year-month-day"),
        ],
    ),
];

/// Every file of the app, for a program and a herbal that crate `pack` packed, and for the module of that
/// crate, packed with gzip (RFC 1952), which browsers unpack themselves.
///
/// All but the first four lie in a folder that is named by what they hold: files of two versions never
/// mix, whatever a cache on the way does.
#[must_use]
pub fn shell(program: &[u8], herbal: &[u8], unpacker: &[u8], host: Host) -> Vec<ShellFile> {
    let style = html_style() + &html_looks() + include_str!("../web/app.css");
    let worker = UNPACK.to_owned() + include_str!("../web/worker.js");
    let plain = [
        ("start.js", SCRIPT, include_bytes!("../web/start.js").as_slice()),
        ("main.js", SCRIPT, include_bytes!("../web/main.js").as_slice()),
        ("worker.js", SCRIPT, worker.as_bytes()),
        ("app.css", STYLE, style.as_bytes()),
    ];
    let packed = [
        ("app.wasm.lzma", PACKED, program),
        ("herbal.bin.lzma", PACKED, herbal),
        ("unpack.wasm.gz", GZIP, unpacker),
    ];
    let inner = [plain.as_slice(), &packed].concat();
    let catalogue = Catalogue::english();
    let unnamed = document("", &catalogue, host);
    let all = inner.iter().map(|(_, _, bytes)| *bytes).chain([unnamed.as_bytes()]);
    let version = ground::ContentId::of(&all.collect::<Vec<_>>().concat()).to_string();
    let within = |name: &str| format!("{version}/{name}");
    let kept: Vec<_> = ["./", "manifest.webmanifest", "icon.svg"]
        .into_iter()
        .map(str::to_owned)
        .chain(plain.iter().map(|(name, ..)| within(name)))
        .collect();
    let keeper = format!(
        "const VERSION = {};\nconst FILES = {};\n{UNPACK}{}",
        json!(version),
        json!(kept),
        include_str!("../web/sw.js")
    );
    [
        ShellFile::new(
            "index.html",
            "text/html; charset=utf-8",
            document(&version, &catalogue, host),
        ),
        ShellFile::new("sw.js", SCRIPT, keeper),
        ShellFile::new("manifest.webmanifest", "application/manifest+json", manifest(&catalogue)),
        ShellFile::new("icon.svg", "image/svg+xml", include_bytes!("../web/icon.svg").as_slice()),
    ]
    .into_iter()
    .chain(inner.iter().map(|(name, kind, bytes)| ShellFile::new(within(name), kind, *bytes)))
    .collect()
}

/// W3C Web Application Manifest.
fn manifest(catalogue: &Catalogue) -> String {
    json!({
        "name": catalogue.word("app-name"),
        "short_name": catalogue.word("app-name"),
        "description": catalogue.word("app-about"),
        "lang": catalogue.language(),
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": html_paper(),
        "theme_color": html_paper(),
        "icons": [{ "src": "icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any maskable" }],
    })
    .to_string()
}

fn document(version: &str, words: &Catalogue, host: Host) -> String {
    let word = |id: &str| words.word(id);
    let policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data:";
    html! {
        (DOCTYPE)
        html lang=(words.language()) data-makes-pdf[host == Host::Program] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content=(policy);
                meta name="theme-color" content=(html_paper());
                title { (word("app-name")) }
                link rel="manifest" href="manifest.webmanifest";
                link rel="icon" href="icon.svg";
                script type="module" async src={ (version) "/start.js" } {}
                link rel="stylesheet" href={ (version) "/app.css" };
                script type="module" src={ (version) "/main.js" } {}
            }
            body {
                a.skip href="#main" { (word("page-skip")) }
                header.bar {
                    a.first href="#/" { (word("app-name")) }
                    a href="#/herbal" { (word("app-herbal")) }
                    a href="#/emergency" { (word("app-emergency")) }
                }
                div #newer .offer role="status" hidden {
                    p { (word("app-newer")) }
                    button #renew type="button" { (word("app-renew")) }
                }
                div #not-kept .offer role="status" hidden { p { (word("app-not-kept")) } }
                main #main tabindex="-1" {
                    noscript { p { (word("app-no-script")) } }
                    p { (word("app-starting")) }
                }
                ul #clocks .bar hidden {}
                footer.bar {
                    p #held .held hidden { (word("app-held")) }
                    p #not-held .held hidden { (word("app-not-held")) }
                    details {
                        summary { (word("app-choices")) }
                        div.opened {
                            @for (name, options) in CHOICES {
                                label for=(name) { (word(&format!("app-{name}"))) }
                                select id=(name) {
                                    @for (value, says) in options {
                                        option value=(value) { (word(&format!("app-{name}-{says}"))) }
                                    }
                                }
                            }
                        }
                    }
                }
                template #clock {
                    li {
                        span.name {}
                        span.left role="status" data-up=(word("app-clock-up")) {}
                        button.quiet type="button" { (word("app-clock-stop")) }
                    }
                }
                template #not-kept-now {
                    h2 tabindex="-1" { (word("app-not-kept-now")) }
                    p { (word("app-not-kept-now-says")) }
                }
                template #no-passphrase {
                    h2 tabindex="-1" { (word("app-no-passphrase")) }
                    p { (word("app-no-passphrase-says")) }
                }
                template #no-pdf {
                    h2 tabindex="-1" { (word("app-no-pdf")) }
                    p { (word("app-no-pdf-says")) }
                }
                template #not-started {
                    h1 tabindex="-1" { (word("app-not-started")) }
                    p { (word("app-not-started-says")) }
                }
            }
        }
    }
    .into_string()
}

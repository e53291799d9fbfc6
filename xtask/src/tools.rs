//! What the checks need besides Rust: found, installed where that is ours to do, or asked for.

use crate::house::{House, Outcome, run, say};
use crate::wasm;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::{env, fs};

/// A program, the names it goes by, and the Debian package that brings it.
pub(crate) struct Tool {
    names: &'static [&'static str],
    package: &'static str,
}

pub(crate) const NODE: Tool = Tool { names: &["node", "nodejs"], package: "nodejs" };
const NPM: Tool = Tool { names: &["npm"], package: "npm" };
pub(crate) const PDFINFO: Tool = Tool { names: &["pdfinfo"], package: "poppler-utils" };
pub(crate) const QPDF: Tool = Tool { names: &["qpdf"], package: "qpdf" };
pub(crate) const ZBAR: Tool = Tool { names: &["zbarimg"], package: "zbar-tools" };
pub(crate) const CHROMIUM: Tool =
    Tool { names: &["chromium", "chromium-browser", "google-chrome"], package: "chromium" };
pub(crate) const CHROMEDRIVER: Tool = Tool { names: &["chromedriver"], package: "chromium-driver" };

/// The accessibility checker, pinned so that its rules are the same everywhere.
const AXE: &str = "axe-core@4.14.1";

/// The library that reads our calendar files, pinned so that it reads them alike everywhere.
const ICALENDAR: (&str, &str) = ("icalendar", "7.3.2");

/// What large and open tables are measured beside, pinned so that a ratio means the same everywhere. The
/// packages bring their own fast multiplication, which a system's NumPy may lack.
const PEERS: [(&str, &str); 2] = [("numpy", "2.4.6"), ("scikit-learn", "1.9.1")];

/// Sees to everything that the steps need, before any of them takes its time.
pub(crate) fn ready(house: &House) -> Outcome {
    wasm_target(house)?;
    let programs = [NODE, CHROMIUM, CHROMEDRIVER, PDFINFO, QPDF, ZBAR];
    let mut found: Vec<_> = programs.iter().map(|tool| tool.find(house)).collect::<Outcome<_>>()?;
    found.extend([axe(house)?, python_with_icalendar(house)?]);
    found.push(python_with(house, &[NUMPY, PIKEPDF, PILLOW])?);
    for found in found {
        say(format_args!("found {}", house.short(&found)));
    }
    Ok(())
}

impl Tool {
    /// The program, installed first if it is missing.
    pub(crate) fn find(&self, house: &House) -> Outcome<PathBuf> {
        if let Some(found) = self.on_path() {
            return Ok(found);
        }
        install(house, self.package)?;
        let named =
            || format!("the package {} brought no {}", self.package, self.names.join(" or "));
        self.on_path().ok_or_else(|| named().into())
    }

    fn on_path(&self) -> Option<PathBuf> {
        let path = env::var_os("PATH")?;
        let folders: Vec<_> = env::split_paths(&path).collect();
        let places =
            self.names.iter().flat_map(|name| folders.iter().map(move |dir| dir.join(name)));
        places.into_iter().find(|place| place.is_file())
    }
}

/// Installs a Debian package where we may; elsewhere names it in one line.
fn install(house: &House, package: &str) -> Outcome {
    if !Path::new("/etc/debian_version").exists() || !is_root() {
        return Err(format!(
            "{package} is missing: install it (on Debian: apt-get install {package}) and run this again"
        )
        .into());
    }
    let apt = || {
        let mut command = house.command("apt-get");
        command.env("DEBIAN_FRONTEND", "noninteractive");
        command
    };
    run(apt().args(["update", "-qq"]))?;
    run(apt().args(["install", "-y", "-qq", "--no-install-recommends", package]))
}

fn is_root() -> bool {
    let id = Command::new("id").arg("-u").output();
    id.is_ok_and(|out| out.stdout.trim_ascii() == b"0")
}

/// Sees to it that the compiler can build for [`wasm::TARGET`].
pub(crate) fn wasm_target(house: &House) -> Outcome {
    let library = || {
        let rustc = env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
        let args = ["--print", "target-libdir", "--target", wasm::TARGET];
        let out = house.command(rustc).args(args).output().ok()?;
        let folder = String::from_utf8(out.stdout).ok()?;
        Path::new(folder.trim()).is_dir().then_some(())
    };
    if library().is_some() {
        return Ok(());
    }
    let added = run(house.command("rustup").args(["target", "add", wasm::TARGET]));
    if added.is_ok() && library().is_some() {
        return Ok(());
    }
    let target = wasm::TARGET;
    Err(format!(
        "the compiler lacks {target}: add it (rustup target add {target}) and run this again"
    )
    .into())
}

/// A module of Python, and the Debian package that brings it.
pub(crate) type Module = (&'static str, &'static str);

pub(crate) const NUMPY: Module = ("numpy", "python3-numpy");
pub(crate) const PIKEPDF: Module = ("pikepdf", "python3-pikepdf");
pub(crate) const PILLOW: Module = ("PIL", "python3-pil");

/// A Python that can import all of these.
pub(crate) fn python_with(house: &House, modules: &[Module]) -> Outcome<PathBuf> {
    let names: Vec<_> = modules.iter().map(|(name, _)| *name).collect();
    let import = format!("import {}", names.join(", "));
    let able = || {
        ["python3", "/usr/bin/python3"].into_iter().find(|python| {
            let mut trial = house.command(python);
            let trial = trial.args(["-c", import.as_str()]).stderr(Stdio::null());
            trial.status().is_ok_and(|status| status.success())
        })
    };
    if able().is_none() {
        modules.iter().try_for_each(|(_, package)| install(house, package))?;
    }
    able().map(PathBuf::from).ok_or_else(|| format!("no python3 here can {import}").into())
}

/// A Python of our own that can import the calendar library, which is fetched by name once.
pub(crate) fn python_with_icalendar(house: &House) -> Outcome<PathBuf> {
    own_python(house, "calendar", &[ICALENDAR])
}

/// A Python of our own that can import the peers, which are fetched by name once.
pub(crate) fn python_with_peers(house: &House) -> Outcome<PathBuf> {
    own_python(house, "peers", &PEERS)
}

/// A Python of our own with these packages in these versions.
fn own_python(house: &House, name: &str, packages: &[(&str, &str)]) -> Outcome<PathBuf> {
    let home = house.target.join("tools").join(name);
    let python = home.join("bin/python");
    let version = |package: &str| {
        let script = format!("from importlib.metadata import version; print(version({package:?}))");
        let out = house.command(&python).args(["-c", &script]).stderr(Stdio::null()).output();
        out.ok().and_then(|out| String::from_utf8(out.stdout).ok())
    };
    let known = || {
        let mut all = packages.iter();
        all.all(|(package, wanted)| version(package).is_some_and(|found| found.trim() == *wanted))
    };
    if !known() {
        virtual_python(house, &home)?;
        let quiet = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check"];
        let pinned = packages.iter().map(|(package, version)| format!("{package}=={version}"));
        run(house.command(&python).args(quiet).args(pinned))?;
    }
    if known() { Ok(python) } else { Err(format!("{} lacks {name}", house.short(&python)).into()) }
}

/// A Python apart from the machine's; on Debian its means come in a package of their own.
fn virtual_python(house: &House, home: &Path) -> Outcome {
    let make = || run(house.command("python3").args(["-m", "venv", "--clear"]).arg(home));
    if make().is_ok() {
        return Ok(());
    }
    install(house, "python3-venv")?;
    make()
}

/// The script of the accessibility checker, fetched by name once.
pub(crate) fn axe(house: &House) -> Outcome<PathBuf> {
    let prefix = house.target.join("tools");
    let package = prefix.join("node_modules/axe-core");
    let script = package.join("axe.min.js");
    let wanted = AXE.split('@').next_back().map(|version| format!("\"version\": \"{version}\""));
    let about = fs::read_to_string(package.join("package.json")).unwrap_or_default();
    if !script.is_file() || !wanted.is_some_and(|version| about.contains(&version)) {
        let npm = NPM.find(house)?;
        fs::create_dir_all(&prefix)?;
        let quiet = ["install", "--no-save", "--no-audit", "--no-fund", "--no-package-lock"];
        run(house.command(npm).args(quiet).arg("--prefix").arg(&prefix).arg(AXE))?;
    }
    Ok(script)
}

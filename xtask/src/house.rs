//! Where the project lies, and how its commands are run and logged.

use std::error::Error;
use std::ffi::OsStr;
use std::fmt::Display;
use std::io::{self, BufRead as _, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::{env, fs};

/// What went wrong, in one line.
pub(crate) type Failure = Box<dyn Error + Send + Sync>;
/// Done, or what went wrong.
pub(crate) type Outcome<T = ()> = Result<T, Failure>;

/// The project on this machine.
pub(crate) struct House {
    /// The folder of the workspace.
    pub(crate) root: PathBuf,
    /// Where cargo puts what it builds.
    pub(crate) target: PathBuf,
    /// The linter, where it stands in for the compiler and builds everything before anything runs.
    linter: Option<PathBuf>,
}

/// A kind of program that cargo builds.
pub(crate) enum Program<'a> {
    Binary(&'a str),
    Example(&'a str),
}

impl House {
    /// The project that this program was built from.
    pub(crate) fn find() -> Outcome<Self> {
        let program = env::current_exe()?;
        let target = program.ancestors().nth(2).ok_or("this program lies in no target folder")?;
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().ok_or("xtask has no parent")?;
        Ok(Self { root: root.to_owned(), target: target.to_owned(), linter: None })
    }

    /// The same project, whose own crates the linter compiles: what it lints is what is run, and
    /// nothing is compiled twice.
    pub(crate) fn linting(&self) -> Outcome<Self> {
        let sysroot = read(self.command("rustc").args(["--print", "sysroot"]))?;
        let linter = Path::new(sysroot.trim()).join("bin/clippy-driver");
        if !linter.exists() {
            return Err(
                "clippy is missing: add it (rustup component add clippy) and run this again".into(),
            );
        }
        Ok(Self { root: self.root.clone(), target: self.target.clone(), linter: Some(linter) })
    }

    /// A program of the project, or an example of one of its packages, for use in development.
    pub(crate) fn program(&self, package: &str, program: Program<'_>) -> Outcome<PathBuf> {
        let (kind, folder, name) = match program {
            Program::Binary(name) => ("--bin", "debug", name),
            Program::Example(name) => ("--example", "debug/examples", name),
        };
        let built = self.target.join(folder).join(name);
        if !self.built_before(&built) {
            run(&mut self.cargo(["build", "--quiet", "--package", package, kind, name]))?;
        }
        Ok(built)
    }

    /// Whether the step that builds everything built this. Built for itself alone a program would ask its
    /// libraries for less than all do together, and they would be compiled once more.
    pub(crate) fn built_before(&self, program: &Path) -> bool {
        self.linter.is_some() && program.exists()
    }

    /// A command that runs in the folder of the workspace.
    pub(crate) fn command(&self, program: impl AsRef<OsStr>) -> Command {
        let mut command = Command::new(program);
        command.current_dir(&self.root).stdin(Stdio::null());
        command
    }

    /// The cargo that started this program.
    pub(crate) fn cargo<S: AsRef<OsStr>>(&self, args: impl IntoIterator<Item = S>) -> Command {
        let mut command = self.command(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
        command.args(args);
        if let Some(linter) = &self.linter {
            command.env("RUSTC_WORKSPACE_WRAPPER", linter);
        }
        command
    }

    /// A folder under the target folder, emptied.
    pub(crate) fn fresh(&self, name: &str) -> Outcome<PathBuf> {
        let folder = self.target.join(name);
        if folder.exists() {
            fs::remove_dir_all(&folder)?;
        }
        fs::create_dir_all(&folder)?;
        Ok(folder)
    }

    /// A path as a person in the project's folder would write it.
    pub(crate) fn short<'a>(&self, path: &'a Path) -> std::path::Display<'a> {
        path.strip_prefix(&self.root).unwrap_or(path).display()
    }
}

/// Writes a line for the reader; one who stopped reading is no fault.
pub(crate) fn say(line: impl Display) {
    let _ = writeln!(io::stdout(), "{line}");
}

/// The command as it would be typed.
fn typed(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default();
    let words = [program].into_iter().chain(command.get_args());
    words.map(OsStr::to_string_lossy).collect::<Vec<_>>().join(" ")
}

/// Logs a command and runs it in the open.
pub(crate) fn run(command: &mut Command) -> Outcome {
    let typed = typed(command);
    say(format_args!("$ {typed}"));
    let status = command.status().map_err(|error| format!("`{typed}` did not start: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("`{typed}` failed ({status})").into()) }
}

/// Logs a command, runs it and gives what it wrote.
pub(crate) fn read(command: &mut Command) -> Outcome<String> {
    let typed = typed(command);
    say(format_args!("$ {typed}"));
    command.stderr(Stdio::inherit());
    let output = command.output().map_err(|error| format!("`{typed}` did not start: {error}"))?;
    let text = String::from_utf8(output.stdout)?;
    if output.status.success() {
        return Ok(text);
    }
    say(text.trim_end());
    Err(format!("`{typed}` failed ({})", output.status).into())
}

/// Logs a command and runs it in the open; a warning is a failure.
pub(crate) fn run_without_warnings(command: &mut Command) -> Outcome {
    let typed = typed(command);
    say(format_args!("$ {typed}"));
    let mut child = command.stderr(Stdio::piped()).spawn()?;
    let mut warnings = 0;
    for line in child.stderr.take().into_iter().flat_map(|told| BufReader::new(told).lines()) {
        let line = line?;
        warnings += usize::from(line.starts_with("warning"));
        let _ = writeln!(io::stderr(), "{line}");
    }
    match (child.wait()?, warnings) {
        (status, 0) if status.success() => Ok(()),
        (status, 0) => Err(format!("`{typed}` failed ({status})").into()),
        (_, warnings) => Err(format!("`{typed}`: {warnings} warnings").into()),
    }
}

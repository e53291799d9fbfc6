//! The built program, run as a user runs it.

use std::process::{Command, Output};

/// The program, without whatever the surroundings say of colour.
pub(crate) fn trug() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_trug"));
    command.env_remove("NO_COLOR").env_remove("TERM");
    command.current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
    command
}

/// Runs it with these arguments.
pub(crate) fn run(args: &[&str]) -> Ran {
    Ran::of(trug().args(args).output().expect("the program can be run"))
}

/// What a run left.
pub(crate) struct Ran {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Ran {
    fn of(output: Output) -> Self {
        let text = |bytes| String::from_utf8(bytes).expect("it prints UTF-8");
        Self { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
    }
}

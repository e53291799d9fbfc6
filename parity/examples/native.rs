//! `native FOLDER` writes the herbal, and every request with its native reply, into the folder, which begins
//! empty.

use std::error::Error;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

fn main() -> ExitCode {
    let args: Vec<_> = env::args_os().skip(1).collect();
    let done = match args.as_slice() {
        [folder] => write(Path::new(folder)),
        _ => Err("usage: native FOLDER".into()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            let _ = writeln!(io::stderr(), "native: {error}");
            ExitCode::FAILURE
        }
    }
}

fn write(folder: &Path) -> Result<(), Box<dyn Error>> {
    if folder.exists() {
        fs::remove_dir_all(folder)?;
    }
    fs::create_dir_all(folder)?;
    fs::write(folder.join("herbal.bin"), herbal_data::bytes())?;
    let mut machine = parity::Machine::open(herbal_data::bytes())?;
    for case in parity::cases()? {
        fs::write(folder.join(format!("{}.request.json", case.name)), &case.request)?;
        let reply = machine.answer(case.request.as_bytes());
        fs::write(folder.join(format!("{}.reply.json", case.name)), reply)?;
    }
    Ok(())
}

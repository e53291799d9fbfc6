//! `trug app`: the app, served on this machine or written into a folder.

use crate::failed::Failed;
use crate::folder::write_whole;
use crate::printer::Printer;
use crate::serve;
use app::{Host, ShellFile, shell};
use clap::Args;
use ground::{Fault, Place};
use std::fs;
use std::path::{Path, PathBuf};

/// The program that runs in the browser, packed; empty where none was built.
static PROGRAM: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/app.wasm.lzma"));
/// What unpacks it there.
static UNPACKER: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/unpack.wasm.gz"));

#[derive(Args)]
#[command(after_help = "Example:\n  trug app --export app")]
pub(crate) struct App {
    /// Write it into this folder instead, for any web space that has https
    #[arg(long, value_name = "DIR")]
    export: Option<PathBuf>,
    /// Serve it at this port of this machine
    #[arg(long, value_name = "N", default_value_t = 4717)]
    port: u16,
    /// Do not open a browser
    #[arg(long)]
    no_open: bool,
}

impl App {
    /// Serves the app until it is stopped, or writes it once.
    pub(crate) fn run(&self) -> Result<(), Failed> {
        if PROGRAM.is_empty() {
            let fault = Fault::new("app-not-built", Place::default(), env!("CARGO_PKG_VERSION"));
            return Err(fault.into());
        }
        let files = |host| shell(PROGRAM, herbal_data::packed(), UNPACKER, host);
        match &self.export {
            Some(folder) => export(folder, files(Host::Folder)),
            None => {
                let (files, printer) = (files(Host::Program), Printer::new()?);
                Ok(serve::serve(files, printer, self.port, !self.no_open)?)
            }
        }
    }
}

fn export(folder: &Path, files: Vec<ShellFile>) -> Result<(), Failed> {
    if !may_write(folder) {
        let place = Place::entry("app", "", "export");
        let fault = Fault::new("folder-not-an-app", place, folder.display().to_string());
        return Err(fault.into());
    }
    let files = files.into_iter().map(|file| (file.path, file.bytes));
    Ok(write_whole(folder, files.collect())?)
}

/// Whether nothing stands there, or an app that was written before.
fn may_write(folder: &Path) -> bool {
    let empty = || fs::read_dir(folder).is_ok_and(|mut entries| entries.next().is_none());
    let ours = || folder.join("sw.js").is_file() && folder.join("manifest.webmanifest").is_file();
    folder.file_name().is_some() && (!folder.exists() || empty() || ours())
}

//! What every scenario stands on: the driver, the site, a folder to write in, and how figures are said.

use crate::browser::Browser;
use crate::driver::Driver;
use crate::site::Site;
use crate::taps::Tap;
use std::error::Error;
use std::fmt::Display;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::process::Command;

/// Done, or what went wrong.
pub(crate) type Outcome<T = ()> = Result<T, Box<dyn Error + Send + Sync>>;

pub(crate) struct Ground {
    driver: Driver,
    /// The program.
    pub(crate) trug: PathBuf,
    /// The app, as the program exported it.
    pub(crate) exported: PathBuf,
    pub(crate) site: Site,
    pub(crate) folder: PathBuf,
    /// The script of the accessibility checker.
    pub(crate) axe: PathBuf,
    /// How often the browser is killed.
    pub(crate) kills: usize,
    /// Whether taps are timed, on a processor slowed down for it.
    pub(crate) times_taps: bool,
    /// Every tap that was timed.
    pub(crate) taps: Vec<Tap>,
}

impl Ground {
    pub(crate) async fn prepare(
        chromedriver: &str,
        chromium: &str,
        trug: &str,
        axe: &str,
        folder: &str,
        kills: &str,
    ) -> Outcome<Self> {
        let folder = std::path::absolute(folder)?;
        let exported = folder.join("app");
        fs::create_dir_all(&folder)?;
        let export = Command::new(trug).args(["app", "--export"]).arg(&exported).status()?;
        if !export.success() {
            return Err(format!("the app was not exported ({export})").into());
        }
        let driver = Driver::start(Path::new(chromedriver), Path::new(chromium)).await?;
        let site = Site::serve(&exported)?;
        let (trug, axe, kills) = (trug.into(), axe.into(), kills.parse()?);
        Ok(Self {
            driver,
            trug,
            exported,
            site,
            folder,
            axe,
            kills,
            times_taps: false,
            taps: Vec::new(),
        })
    }

    /// The site as it is at first, whatever a scenario left behind.
    pub(crate) fn begin(&mut self) -> Outcome {
        self.site.show(&self.exported);
        self.site.start()
    }

    /// A browser with what this profile kept; a profile that is new has kept nothing.
    pub(crate) async fn browser(&self, profile: &str) -> Outcome<Browser> {
        let profile = self.folder.join(profile);
        let client = self.driver.session(&profile).await?;
        Ok(Browser::new(client, self.site.origin(), profile))
    }
}

/// A figure, in a line that other programs can read.
pub(crate) fn figure(name: &str, value: impl Display, unit: &str) {
    say(format_args!("browser-{name}\t{value}\t{unit}"));
}

/// Writes a line for the reader; one who stopped reading is no fault.
pub(crate) fn say(line: impl Display) {
    let _ = writeln!(io::stdout(), "{line}");
}

/// Fails with what was wanted and what there was.
pub(crate) fn equal<T: PartialEq + std::fmt::Debug>(what: &str, is: &T, wanted: &T) -> Outcome {
    if is == wanted { Ok(()) } else { Err(format!("{what}: {is:?}, not {wanted:?}").into()) }
}

//! Pages on disk: a folder that is there whole or not at all.

use crate::failed::Failed;
use crate::folder::write_whole;
use clap::{Args, ValueEnum};
use desk::{Reply, World, device, sheets, usual_paper};
use ground::{Fault, Faults, Place};
use jiff::civil::DateTime;
use page::{NamedPage, Paper, Words, calendar, html, pages, sheet_pages, view};
use pdf::Press;
use std::ffi::OsStr;
use std::fs;
use std::panic::resume_unwind;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::thread;

/// The calendar file beside the pages.
const DATES: &str = "dates.ics";

/// Where pages are written, and on what.
#[derive(Args)]
pub(crate) struct PageArgs {
    /// Write the pages into this folder too, each as HTML and as PDF
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// The paper in the printer; what is usual where the outing goes when left out
    #[arg(long, value_enum)]
    paper: Option<PaperArg>,
    /// In large print
    #[arg(long, requires = "out")]
    large: bool,
}

#[derive(Clone, Copy, ValueEnum)]
enum PaperArg {
    /// 210 by 297 mm
    A4,
    /// 8½ by 11 inches
    Letter,
}

impl PageArgs {
    /// Whether pages may be written where they are meant to go.
    ///
    /// # Errors
    /// A folder with anything else in it, which would be lost.
    pub(crate) fn may_write(&self) -> Result<(), Fault> {
        self.out.as_deref().map_or(Ok(()), may_write)
    }

    /// The paper that was asked for.
    pub(crate) fn paper(&self) -> Option<Paper> {
        self.paper.map(|paper| match paper {
            PaperArg::A4 => Paper::A4,
            PaperArg::Letter => Paper::Letter,
        })
    }

    /// Writes the pages of a reply into the folder that was asked for, if one was; of a plan those
    /// that are named, or all.
    pub(crate) fn write(
        &self,
        names: &[String],
        reply: &Reply,
        world: &World,
        words: &Words<'_>,
    ) -> Result<(), Failed> {
        let Some(folder) = &self.out else { return Ok(()) };
        let files = match reply {
            Reply::Device(device::Reply::Plan(plan)) => {
                let paper = self.paper().unwrap_or_else(|| usual_paper(plan.head.region));
                let pages = pages(plan, &sheets(world, plan), paper, words);
                let mut files = self.print(choose(pages, names)?, paper, plan.head.as_of)?;
                files.push((DATES.to_owned(), calendar(plan, words).into_bytes()));
                files
            }
            Reply::Labels(labels) => {
                let page = NamedPage { name: "labels".to_owned(), page: view(reply, words) };
                self.print(vec![page], labels.sheet.paper, world.now)?
            }
            Reply::Device(device::Reply::Compare(_)) | Reply::Apart(_) => {
                let page = NamedPage { name: "compare".to_owned(), page: view(reply, words) };
                self.print(vec![page], self.paper().unwrap_or(Paper::A4), world.now)?
            }
            Reply::Key(_) => {
                let page = NamedPage { name: "key".to_owned(), page: view(reply, words) };
                self.print(vec![page], self.paper().unwrap_or(Paper::A4), world.now)?
            }
            Reply::Sorting(_) => {
                let page = NamedPage { name: "sorting".to_owned(), page: view(reply, words) };
                self.print(vec![page], self.paper().unwrap_or(Paper::A4), world.now)?
            }
            Reply::Sheet(sheets) => {
                let paper = self.paper().unwrap_or(Paper::A4);
                self.print(sheet_pages(sheets, words), paper, world.now)?
            }
            _ => return Ok(()),
        };
        Ok(write_whole(folder, files)?)
    }

    /// Each page as HTML and as PDF.
    fn print(
        &self,
        pages: Vec<NamedPage>,
        paper: Paper,
        made: DateTime,
    ) -> Result<Vec<(String, Vec<u8>)>, Faults> {
        let press = Press::new()?;
        let both = |NamedPage { name, page }: NamedPage| {
            let page = if self.large { page.large() } else { page };
            let pdf = press.print(&page, paper, made)?;
            Ok([(format!("{name}.html"), html(&page).into_bytes()), (format!("{name}.pdf"), pdf)])
        };
        let printed: Result<Vec<_>, Fault> = side_by_side(pages, both).into_iter().collect();
        Ok(printed?.into_iter().flatten().collect())
    }
}

/// Does something with each, as many at once as the machine has cores; the order stays.
fn side_by_side<T: Send, R: Send>(all: Vec<T>, work: impl Fn(T) -> R + Sync) -> Vec<R> {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let queue = Mutex::new(all.into_iter().enumerate());
    let next = || queue.lock().unwrap_or_else(PoisonError::into_inner).next();
    let worker = || std::iter::from_fn(next).map(|(at, one)| (at, work(one))).collect::<Vec<_>>();
    let mut done: Vec<_> = thread::scope(|scope| {
        let workers: Vec<_> = (0..cores).map(|_| scope.spawn(worker)).collect();
        let finished = workers.into_iter().map(|worker| worker.join());
        finished.flat_map(|done| done.unwrap_or_else(|panic| resume_unwind(panic))).collect()
    });
    done.sort_by_key(|(at, _)| *at);
    done.into_iter().map(|(_, result)| result).collect()
}

/// The pages of these names, or whose names begin so; all where none is named.
fn choose(pages: Vec<NamedPage>, names: &[String]) -> Result<Vec<NamedPage>, Faults> {
    let asked = |page: &NamedPage, name: &String| {
        page.name.strip_prefix(name.as_str()).is_some_and(|n| n.is_empty() || n.starts_with('-'))
    };
    let mut faults = Faults::none();
    for name in names.iter().filter(|name| !pages.iter().any(|page| asked(page, name))) {
        let known: Vec<_> = pages.iter().map(|page| page.name.as_str()).collect();
        let fault = Fault::new("unknown-page", Place::entry("plan", "", "pages"), name);
        faults.add(fault.with("known", known.join(", ")));
    }
    faults.or(())?;
    let wanted = |page: &NamedPage| names.is_empty() || names.iter().any(|name| asked(page, name));
    Ok(pages.into_iter().filter(wanted).collect())
}

/// Whether pages may be written there: nothing stands there, or nothing but pages.
fn may_write(folder: &Path) -> Result<(), Fault> {
    let of_a_page = |end: &OsStr| ["html", "pdf"].iter().any(|known| end == *known);
    let ours = |path: &Path| path.extension().is_some_and(of_a_page) || path.ends_with(DATES);
    let is_page = |path: &Path| ours(path) && path.is_file();
    let only_pages = || {
        let mut entries = fs::read_dir(folder).into_iter().flatten();
        folder.is_dir() && entries.all(|entry| entry.is_ok_and(|entry| is_page(&entry.path())))
    };
    let named = folder.file_name().is_some();
    if named && (!folder.exists() || only_pages()) {
        return Ok(());
    }
    let name = folder.display().to_string();
    Err(Fault::new("folder-not-ours", Place::entry("plan", "", "out"), name))
}

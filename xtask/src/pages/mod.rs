//! HTML pages in a browser, with an accessibility checker at the widths of a telephone and a desk.
//!
//! Pages are copied, the checker (axe-core) is added to each copy, and one outer page shows some of them in
//! frames of each width and collects what the frames report; the browser then prints that page.

mod browser;

use crate::house::{House, Outcome, say};
use crate::{cores, demo, tools};
use std::fs;
use std::path::{Path, PathBuf};

/// Widths in CSS pixels.
const WIDTHS: [u32; 2] = [360, 1280];

/// As many pages are looked at by a browser that was started once.
const AT_ONCE: usize = 8;

/// A page whose faults the checker must find, or it proves nothing.
const PLANTED: &str = include_str!("planted.html");
const PLANTED_FAULTS: [(u32, &str); 5] = [
    (360, "document-title"),
    (360, "html-has-lang"),
    (360, "sideways-scroll"),
    (1280, "color-contrast"),
    (1280, "image-alt"),
];

/// One thing that is wrong with a page at one width.
#[derive(Clone, Debug)]
struct Finding {
    width: u32,
    rule: String,
    words: String,
}

/// The pages of the demo.
pub(crate) fn check(house: &House) -> Outcome {
    check_folder(house, &demo::made(house)?)
}

/// The pages of a folder; having none is a failure.
pub(crate) fn check_folder(house: &House, folder: &Path) -> Outcome {
    let benches = benches(house)?;
    benches.iter().try_for_each(Bench::prove)?;
    let pages = demo::pages(folder).map_err(|error| format!("{}: {error}", house.short(folder)))?;
    if pages.is_empty() {
        return Err(format!("no page lies under {}", house.short(folder)).into());
    }
    let shares: Vec<_> = pages.chunks(AT_ONCE).collect();
    let looked = cores::share_out(&benches, &shares, |bench, share| {
        let read: Result<Vec<_>, _> = share.iter().map(fs::read_to_string).collect();
        bench.findings(&read?)
    });
    let looked = looked.into_iter().collect::<Outcome<Vec<_>>>()?;
    let mut faults = 0;
    for (page, findings) in pages.iter().zip(looked.concat()) {
        say(format_args!("{}: {} violations", house.short(page), findings.len()));
        for Finding { width, words, .. } in &findings {
            say(format_args!("  at {width} px: {words}"));
        }
        faults += findings.len();
    }
    match faults {
        0 => Ok(()),
        _ => Err(format!("{faults} violations on {} pages", pages.len()).into()),
    }
}

/// A bench for each core.
fn benches(house: &House) -> Outcome<Vec<Bench>> {
    let browser = tools::CHROMIUM.find(house)?;
    let axe = tools::axe(house)?;
    let folder = house.fresh("pages")?;
    let numbered = (1..=cores::count()).map(|number| folder.join(number.to_string()));
    numbered.map(|folder| Bench::set_up(browser.clone(), &axe, folder)).collect()
}

/// Where pages are looked at.
struct Bench {
    browser: PathBuf,
    folder: PathBuf,
}

impl Bench {
    fn set_up(browser: PathBuf, axe: &Path, folder: PathBuf) -> Outcome<Self> {
        fs::create_dir_all(&folder)?;
        fs::copy(axe, folder.join("axe.js"))?;
        fs::write(folder.join("probe.js"), include_str!("probe.js"))?;
        Ok(Self { browser, folder })
    }

    /// The checker must find what was planted before its silence means anything.
    fn prove(&self) -> Outcome {
        let findings = self.findings(&[PLANTED.to_owned()])?.concat();
        let found = |(width, rule): &(u32, &str)| {
            findings.iter().any(|finding| finding.width == *width && finding.rule == *rule)
        };
        match PLANTED_FAULTS.iter().find(|planted| !found(planted)) {
            None => Ok(()),
            Some((width, rule)) => {
                Err(format!("the checker overlooked a planted fault: {rule} at {width} px").into())
            }
        }
    }

    /// What is wrong with each of these pages.
    fn findings(&self, pages: &[String]) -> Outcome<Vec<Vec<Finding>>> {
        for (number, page) in pages.iter().enumerate() {
            fs::write(self.folder.join(format!("{number}.html")), with_checker(page))?;
        }
        fs::write(self.folder.join("frames.html"), frames(pages.len()))?;
        let report = report(&browser::dump(&self.browser, &self.folder, "frames.html")?)?;
        (0..pages.len()).map(|number| read_report(&report, number)).collect()
    }
}

/// The outer page. A page knows its number by the name of its frame.
fn frames(pages: usize) -> String {
    let frame = |number, width| {
        format!(
            "<iframe name=\"{number}\" src=\"{number}.html\" style=\"border:0;width:{width}px;height:900px\"></iframe>"
        )
    };
    let frames = (0..pages).flat_map(|number| WIDTHS.map(|width| frame(number, width)));
    format!(
        "<!doctype html><meta charset=\"utf-8\"><pre id=\"report\"></pre>\
         <script>addEventListener(\"message\", (event) => {{\
         document.getElementById(\"report\").append(event.data + \"\\n\") }})</script>{}",
        frames.collect::<String>()
    )
}

/// The page with the checker at its end. A policy of its own against scripts is set aside in the
/// copy, since it would keep the checker out too.
fn with_checker(page: &str) -> String {
    let open = page.replace("Content-Security-Policy", "x-policy-set-aside");
    format!("{open}\n<script src=\"axe.js\"></script><script src=\"probe.js\"></script>\n")
}

/// What the frames reported, out of the printed outer page.
fn report(dump: &str) -> Outcome<String> {
    let inner =
        dump.split_once("<pre id=\"report\">").and_then(|(_, rest)| rest.split_once("</pre>"));
    let (report, _) = inner.ok_or("the browser printed no report")?;
    let plain = report.replace("&lt;", "<").replace("&gt;", ">").replace("&nbsp;", "\u{a0}");
    Ok(plain.replace("&amp;", "&"))
}

/// The findings on a page, once every width reported that the checker ran to its end and passed something.
fn read_report(report: &str, page: usize) -> Outcome<Vec<Finding>> {
    let own = format!("{page}\t");
    let rows: Vec<Vec<_>> = report
        .lines()
        .filter_map(|line| Some(line.strip_prefix(&own)?.split('\t').collect()))
        .collect();
    let findings: Vec<_> = rows.iter().filter_map(|row| finding(row)).collect();
    let checked = |width: &u32| {
        let width = width.to_string();
        rows.iter().any(|row| matches!(row.as_slice(), ["checked", at, passed] if *at == width && *passed != "0"))
    };
    match WIDTHS.iter().find(|width| !checked(width)) {
        None => Ok(findings),
        Some(width) => Err(format!("the checker did not finish at {width} px:\n{report}").into()),
    }
}

fn finding(row: &[&str]) -> Option<Finding> {
    let ["finding", width, rule, words @ ..] = row else { return None };
    let words = format!("{rule}: {}", words.join(": "));
    Some(Finding { width: width.parse().ok()?, rule: (*rule).to_owned(), words })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_width_that_did_not_report_is_no_clean_page() {
        assert!(read_report("0\tchecked\t360\t12", 0).is_err());
        assert!(read_report("0\tchecked\t360\t12\n0\tchecked\t1280\t0", 0).is_err());
        let both = "0\tchecked\t360\t12\n0\tchecked\t1280\t12";
        assert!(read_report(both, 0).unwrap().is_empty());
        assert!(read_report(both, 1).is_err());
    }

    #[test]
    fn findings_keep_page_width_and_rule() {
        let checked = |page| format!("{page}\tchecked\t360\t1\n{page}\tchecked\t1280\t1\n");
        let found = "1\tfinding\t360\timage-alt\tImages need words\timg\n";
        let report = [checked(0), found.to_owned(), checked(1)].concat();
        let findings = read_report(&report, 1).unwrap();
        assert_eq!((findings[0].width, findings[0].rule.as_str()), (360, "image-alt"));
        assert_eq!(findings[0].words, "image-alt: Images need words: img");
        assert!(read_report(&report, 0).unwrap().is_empty());
    }

    #[test]
    fn a_printed_report_is_read_as_it_was_written() {
        assert_eq!(
            report("<pre id=\"report\">a &lt;b&gt; &amp;amp;</pre>").unwrap(),
            "a <b> &amp;"
        );
        assert!(report("<p>nothing</p>").is_err());
    }
}

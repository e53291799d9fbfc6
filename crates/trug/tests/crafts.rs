//! A plan and its parts, as a user asks for them.
#![expect(clippy::unwrap_used, reason = "a test reports by panicking")]
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::{run, trug};
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Output, Stdio};

/// A folder of this test's own, empty.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn plan_of(path: &Path) -> common::Ran {
    run(&["plan", path.to_str().unwrap()])
}

#[test]
fn a_refusal_and_a_plant_that_is_not_settled_are_no_errors() {
    let open = run(&["make", "herb-tea", "--herb", "2 tsp"]);
    assert_eq!((open.code, open.err.as_str()), (Some(0), ""));
    assert!(open.out.contains("What would settle it"));
    let unsettled =
        run(&["name", "--is", "ramsons", "--date", "2027-05-01", "leaf_venation=parallel"]);
    assert_eq!(unsettled.code, Some(0));
    assert!(unsettled.out.contains("Not yet: Allium ursinum"), "{}", unsettled.out);
}

#[test]
fn bad_input_is_told_with_a_mend() {
    for args in [
        &["make", "no-such-recipe"][..],
        &["name", "--is", "ramsons", "no_such_character=x"],
        &["name", "leaf_venation"],
        &["name", "leaf_venation=garlic"],
        &["name", "leaf_length_mm=3 km"],
        &["name", "leaf_length_mm=18 g"],
        &["name", "leaf_venation=parallel", "leaf_venation=netted"],
        &["name", "--misread", "wizard", "leaf_venation=parallel"],
        &["compare", "ramsons", "xyzzy"],
        &["compare", "xyzzy"],
        &["compare", "ramsons", "--month", "13"],
        &["compare", "ramsons", "autumn crocus", "--month", "4"],
        &["key", "ramsons"],
        &["key", "ramsons", "Allium ursinum"],
        &["key", "ramsons", "lilly of the valey"],
        &["key", "ramsons", "autumn crocus", "--month", "13"],
        &["sort", "0"],
        &["sort", "5", "--wrong", "6"],
        &["sort", "5", "--seen", "9"],
        &["sort", "5", "--by", "Ida", "--by", "Ida"],
        &["sort", "5", "--by", "=leader"],
        &["sort", "5", "--by", "Ida=often"],
        &["sort", "5", "--plant", "xyzzy", "--part", "leaf"],
        &["plan", "nowhere.toml"],
    ] {
        let ran = run(args);
        assert_eq!(ran.code, Some(2), "{args:?}: {}", ran.err);
        assert!(ran.out.is_empty() && !ran.err.contains('⟦'), "{args:?}: {}", ran.err);
        assert!(ran.err.len() > 40, "{args:?}: {}", ran.err);
    }
}

#[test]
fn a_missing_include_and_a_ring_of_includes_are_told() {
    let folder = folder("includes");
    let missing = folder.join("missing.toml");
    fs::write(&missing, "include = [\"not-there.toml\"]\n").unwrap();
    let ran = plan_of(&missing);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("not-there.toml") && ran.err.contains("To mend it"), "{}", ran.err);
    let [one, other] = ["one.toml", "other.toml"].map(|name| folder.join(name));
    fs::write(&one, "include = [\"other.toml\"]\n").unwrap();
    fs::write(&other, "include = [\"one.toml\"]\n").unwrap();
    let ran = plan_of(&one);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("includes itself"), "{}", ran.err);
}

#[test]
fn files_that_are_too_large_empty_or_no_text_are_told() {
    let folder = folder("files");
    let large = folder.join("large.toml");
    // No byte of it is on the disk, and none is read.
    fs::File::create(&large).unwrap().set_len(200_000_000).unwrap();
    assert!(plan_of(&large).err.contains("200000000 bytes"));
    for (name, bytes) in [("empty.toml", &b""[..]), ("binary.toml", b"a = \"\xff\"")] {
        let path = folder.join(name);
        fs::write(&path, bytes).unwrap();
        let ran = plan_of(&path);
        assert_eq!(ran.code, Some(2), "{}", ran.err);
        assert!(ran.err.contains(name), "{}", ran.err);
    }
}

#[test]
fn pages_come_whole_and_never_take_the_place_of_anything_else() {
    let folder = folder("pages");
    let out = folder.join("out");
    let plan = ["plan", "demo/spring-evening.toml", "--out", out.to_str().unwrap()];
    // Twice: the second run takes the place of the first.
    for _ in 0..2 {
        let ran = run(&plan);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let page = fs::read_to_string(out.join("run-sheet.html")).unwrap();
        assert!(page.starts_with("<!DOCTYPE html>") && page.trim_end().ends_with("</html>"));
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 1, "something is left beside it");
    }
    fs::write(out.join("diary.txt"), "mine").unwrap();
    assert_eq!(run(&plan).code, Some(2));
    assert_eq!(fs::read_to_string(out.join("diary.txt")).unwrap(), "mine");
}

#[test]
fn a_key_is_printed_and_its_numbers_lead_on() {
    let out = folder("key").join("out");
    let plants = ["ramsons", "lily of the valley", "autumn crocus", "lords-and-ladies"];
    let ran = run(&[&["key"], &plants[..], &["--out", out.to_str().unwrap()]].concat());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    assert!(fs::read(out.join("key.pdf")).unwrap().starts_with(b"%PDF"));
    let page = fs::read_to_string(out.join("key.html")).unwrap();
    let leads = page.split("href=\"#couplet-").skip(1).map(|rest| rest.split('"').next().unwrap());
    let leads: Vec<_> = leads.collect();
    assert!(!leads.is_empty());
    for number in leads {
        assert!(page.contains(&format!("id=\"couplet-{number}\"")), "{number} leads nowhere");
    }
}

#[test]
fn a_sorted_basket_is_printed_with_its_figure() {
    let out = folder("sort").join("out");
    let order =
        ["sort", "200", "--plant", "ramsons", "--part", "leaf", "--by", "Ida", "--by", "Jon"];
    let ran = run(&[&order[..], &["--out", out.to_str().unwrap()]].concat());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    assert!(fs::read(out.join("sorting.pdf")).unwrap().starts_with(b"%PDF"));
    let page = fs::read_to_string(out.join("sorting.html")).unwrap();
    // One line for one person, one for two, each ending in a ring.
    assert_eq!((page.matches("<svg").count(), page.matches("<circle").count()), (1, 2));
    let json = run(&["sort", "200", "--seen", "20", "--by", "Ida", "--json"]);
    assert_eq!(json.code, Some(0));
    assert!(json.out.contains("\"one-person\"") && json.out.contains("\"not-every-piece\""));
}

#[test]
fn one_plant_is_told_from_all_that_it_is_taken_for() {
    let ran = run(&["compare", "ramsons", "--month", "4", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    for word in ["Convallaria majalis", "Colchicum autumnale", "\"at_least\"", "\"seconds\""] {
        assert!(ran.out.contains(word), "{word}: {}", ran.out);
    }
    let said = |args: &[&str]| run(&[&["compare", "ramsons"], args].concat()).out;
    assert!(said(&["--month", "4"]).contains("in April"));
    let out = folder("compare").join("out");
    said(&["--out", out.to_str().unwrap()]);
    assert!(fs::read(out.join("compare.pdf")).unwrap().starts_with(b"%PDF"));
    assert!(fs::read_to_string(out.join("compare.html")).unwrap().contains("The fewest looks"));
    assert!(said(&["--region", "europe"]).contains("whatever harms in Europe"));
}

/// Asks step by step, with these answers.
fn asked(answers: &str) -> Output {
    let mut child = trug()
        .args(["name", "--region", "europe", "--date", "2027-05-01"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().expect("a pipe").write_all(answers.as_bytes()).unwrap();
    child.wait_with_output().unwrap()
}

#[test]
fn questions_are_asked_one_by_one_and_the_end_of_the_input_ends_them() {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    let questions = |output: &Output| text(&output.stderr).matches("\u{a0}seconds): ").count();
    let [none, two, back] = ["", "1\n?\n", "1\nb\n"].map(asked);
    for output in [&none, &two, &back] {
        assert_eq!(output.status.code(), Some(0));
        assert!(text(&output.stdout).contains("What it could be"));
    }
    assert_eq!([&none, &two, &back].map(questions), [1, 3, 3]);
    // Going back asks the first question again.
    let said = text(&back.stderr);
    let first = said.lines().nth(2).unwrap();
    assert_eq!(said.matches(first).count(), 2, "{said}");
}

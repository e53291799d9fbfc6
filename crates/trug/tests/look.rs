//! A plant in hand, asked for look by look, as a user answers.
#![expect(clippy::unwrap_used, clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::{run, trug};
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Stdio;

/// The plant as it stands in April, in the words of the demo's leader: in flower.
const RAMSONS: &[(&str, &str)] = &[
    ("habit", "herb"),
    ("flower_colour", "white"),
    ("leaf_venation", "parallel"),
    ("leaf_arrangement", "rosette"),
    ("leaf_type", "simple"),
    ("leaf_shape", "elliptic"),
    ("leaf_base", "petiolate"),
    ("leaf_emergence", "singly"),
    ("leaf_surface", "smooth"),
    ("leaf_hairs", "none"),
    ("leaf_texture", "soft-tearing"),
    ("leaf_underside_sheen", "matt"),
    ("leaf_width_mm", "46 mm"),
    ("leaf_length_mm", "18 cm"),
    ("crushed_smell", "garlic"),
    ("stem_section", "triangular"),
    ("stem_interior", "solid"),
    ("inflorescence", "umbel"),
    ("underground", "bulb"),
];

/// Autumn crocus in April: leaves and a capsule, no flower.
const AUTUMN_CROCUS: &[(&str, &str)] = &[
    ("habit", "herb"),
    ("flower_colour", "-"),
    ("inflorescence", "-"),
    ("leaf_venation", "parallel"),
    ("leaf_arrangement", "rosette"),
    ("leaf_type", "simple"),
    ("leaf_shape", "lanceolate"),
    ("leaf_base", "sheathing"),
    ("leaf_surface", "smooth"),
    ("leaf_hairs", "none"),
    ("leaf_width_mm", "3 cm"),
    ("leaf_length_mm", "20 cm"),
    ("crushed_smell", "none"),
    ("underground", "corm"),
];

const BEGINNING: &str = "ramsons\nMill Wood\neurope\n";
const MORNING: &str = "2027-04-20T10:00:00";
const LATER: &str = "2027-04-20T10:20:00";

/// A folder of this test's own, empty.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("look").join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// A run with these answers.
struct Told {
    code: Option<i32>,
    out: String,
    err: String,
}

fn look(file: &Path, args: &[&str], answers: &[u8]) -> Told {
    let mut child = trug()
        .arg("look")
        .arg(file)
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().expect("a pipe");
    let output = std::thread::scope(|scope| {
        // Whoever ended early reads no more.
        scope.spawn(move || drop(input.write_all(answers)));
        child.wait_with_output().unwrap()
    });
    let text = |bytes| String::from_utf8(bytes).expect("it prints UTF-8");
    Told { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
}

/// The character that a run with these answers ends asking for.
fn asked(file: &Path, reader: &str, now: &str, answers: &str) -> Option<String> {
    let ran = look(file, &["--reader", reader, "--now", now, "--json"], answers.as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let reply: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    let character = reply.pointer("/step/asks/look/character")?;
    Some(character.as_str().unwrap().to_owned())
}

/// Reads a plant to the end, leaving after each answer; every line that was typed.
fn read_and_leave(
    file: &Path,
    reader: &str,
    now: &str,
    beginning: &str,
    plant: &[(&str, &str)],
) -> String {
    let mut typed = beginning.to_owned();
    let mut next = asked(file, reader, now, beginning);
    while let Some(character) = next {
        let said = plant.iter().find(|(known, _)| *known == character);
        let line = said.map_or("?", |(_, said)| said).to_owned() + "\n";
        typed.push_str(&line);
        next = asked(file, reader, now, &line);
        assert!(typed.lines().count() < 60, "it never ends:\n{typed}");
    }
    typed
}

#[test]
fn two_readers_determine_ramsons_and_leaving_changes_nothing() {
    let folder = folder("ramsons");
    let [left, whole] = ["left.toml", "whole.toml"].map(|name| folder.join(name));
    let first = read_and_leave(&left, "Maren", MORNING, &format!("{BEGINNING}leader\n"), RAMSONS);
    let one = look(&whole, &["--reader", "Maren", "--now", MORNING], first.as_bytes());
    assert_eq!((one.code, one.err.as_str()), (Some(0), ""));
    assert!(one.out.contains("Somebody else must read it too"), "{}", one.out);
    assert_eq!(fs::read_to_string(&left).unwrap(), fs::read_to_string(&whole).unwrap());
    let second = read_and_leave(&left, "Tobias", LATER, "trained\n", RAMSONS);
    assert!(second.lines().count() < first.lines().count() / 2, "{second}");
    let two = look(&whole, &["--reader", "Tobias", "--now", LATER], second.as_bytes());
    assert_eq!(fs::read_to_string(&left).unwrap(), fs::read_to_string(&whole).unwrap());
    let (reading, verdict) = two.out.split_once("Is it Allium ursinum?").expect("a verdict");
    assert!(verdict.contains("Determined: Allium ursinum"), "{verdict}");
    // Before it nothing is said of what it could be, or of what the first saw.
    for hidden in ["Allium", "ramsons", "Colchicum", "crocus", "Convallaria", "garlic", "Maren"] {
        assert!(!one.out.contains("Colchicum") && !reading.contains(hidden), "{hidden}: {reading}");
    }
    let named = run(&["name", "--looks", whole.to_str().unwrap()]);
    assert!(named.out.contains("Determined: Allium ursinum"), "{}", named.out);
    assert_eq!(fs::read_dir(&folder).unwrap().count(), 2, "something is left beside the files");
}

#[test]
fn autumn_crocus_taken_for_ramsons_is_not_determined_and_is_named() {
    let file = folder("crocus").join("in-hand.toml");
    read_and_leave(&file, "Maren", MORNING, &format!("{BEGINNING}leader\n"), AUTUMN_CROCUS);
    let hidden = look(&file, &["--reader", "Maren", "--now", MORNING], b"");
    assert!(hidden.out.contains("Nothing may be taken by it"), "{}", hidden.out);
    assert!(!hidden.out.contains("Colchicum"), "{}", hidden.out);
    let shown = look(&file, &["--reader", "Maren", "--now", MORNING], b"verdict\n");
    assert!(!shown.out.contains("Determined"), "{}", shown.out);
    assert!(shown.out.contains("Allium ursinum is not settled"), "{}", shown.out);
    assert!(shown.out.contains("It could still be"), "{}", shown.out);
    assert!(shown.out.contains("Colchicum autumnale"), "{}", shown.out);
}

#[test]
fn a_session_with_slips_reads_so() {
    let file = folder("slips").join("in-hand.toml");
    let answers = "lilly of the wood\nramsons\nback\nramsons\nMill Wood\nasia\n1\nMaren\nwhy\n\
         leader\n99\nlike a rope\nwhy\n?\nback\n1, 2\n";
    let ran = look(&file, &["--now", MORNING], answers.as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    assert!(!ran.out.contains(['⟦', '{', '\u{1b}']), "{}", ran.out);
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    insta::assert_snapshot!(ran.out);
    insta::assert_snapshot!("the_file_of_a_session_with_slips", fs::read_to_string(file).unwrap());
}

#[test]
fn nothing_typed_asks_the_first_question_and_writes_nothing() {
    let file = folder("nothing").join("in-hand.toml");
    for answers in ["", "\n\n", "quit\n", "xyzzy\n"] {
        let ran = look(&file, &[], answers.as_bytes());
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
        assert!(ran.out.contains("What is the plant taken for?"), "{}", ran.out);
        assert!(!file.exists(), "{answers}");
    }
}

#[test]
fn bytes_that_are_no_words_and_endless_lines_are_answers_like_any_other() {
    let file = folder("bytes").join("in-hand.toml");
    look(&file, &["--reader", "Maren", "--now", MORNING], b"ramsons\n?\n?\nleader\n");
    let before = fs::read_to_string(&file).unwrap();
    let endless = "x".repeat(100_000);
    for bytes in [&b"\xff\xfe\n"[..], b"\0\n", b"\x1b[2J\n", endless.as_bytes()] {
        let ran = look(&file, &["--reader", "Maren", "--now", MORNING], bytes);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
        assert!(ran.out.contains("is none of these answers"), "{}", ran.out);
        assert!(!ran.out.contains(['\u{1b}', '\0']), "{}", ran.out);
        assert_eq!(fs::read_to_string(&file).unwrap(), before);
    }
}

#[test]
fn a_file_at_fault_is_told_and_left_alone() {
    let folder = folder("fault");
    let file = folder.join("in-hand.toml");
    for (text, said) in [
        ("[plant]\ntaken-for = \"xyzzy\"\n", "in-hand.toml:2"),
        ("[plant\n", "in-hand.toml:1"),
        ("[[looks]]\nreader = \"Maren\"\n", "at"),
    ] {
        fs::write(&file, text).unwrap();
        let ran = look(&file, &[], b"1\n1\n");
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{}", ran.err);
        assert!(ran.err.contains(said) && ran.err.contains("To mend it"), "{}", ran.err);
        assert_eq!(fs::read_to_string(&file).unwrap(), text);
    }
    let ran = look(&folder, &[], b"1\n");
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{}", ran.err);
    let none = run(&["name", "--looks", folder.join("none.toml").to_str().unwrap()]);
    assert_eq!((none.code, none.out.as_str()), (Some(2), ""));
    assert!(none.err.contains("none.toml"), "{}", none.err);
}

#[test]
fn a_file_that_may_not_be_written_is_told_and_left_alone() {
    let file = folder("locked").join("in-hand.toml");
    fs::write(&file, "# mine\n").unwrap();
    let mut permissions = fs::metadata(&file).unwrap().permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&file, permissions).unwrap();
    let ran = look(&file, &[], b"ramsons\n");
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(ran.err.contains("may not be written"), "{}", ran.err);
    assert_eq!(fs::read_to_string(&file).unwrap(), "# mine\n");
}

/// Two people in two windows: whatever the order of their answers, none is lost and none is taken
/// for the other’s.
#[test]
fn two_who_read_at_once_lose_nothing() {
    const LOOKS: usize = 6;
    let file = folder("two").join("in-hand.toml");
    look(&file, &["--now", MORNING], BEGINNING.as_bytes());
    let answers = |level: &str| format!("{level}\n{}", "?\n".repeat(LOOKS));
    std::thread::scope(|scope| {
        for (reader, level) in [("Maren", "leader"), ("Tobias", "trained")] {
            let file = &file;
            scope.spawn(move || {
                let ran =
                    look(file, &["--reader", reader, "--now", MORNING], answers(level).as_bytes());
                assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{reader}");
            });
        }
    });
    let text = fs::read_to_string(&file).unwrap();
    for reader in ["Maren", "Tobias"] {
        let ran = look(&file, &["--reader", reader, "--now", MORNING], b"");
        let told = format!("{reader} reads, and has looked {LOOKS} times today");
        assert!(ran.out.contains(&told), "{}\n{text}", ran.out);
    }
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_the_file_keeps_who_may_read_it() {
    use std::os::unix::fs::{PermissionsExt as _, symlink};
    let folder = folder("link");
    let [file, link] = ["in-hand.toml", "link.toml"].map(|name| folder.join(name));
    fs::write(&file, "").unwrap();
    fs::set_permissions(&file, fs::Permissions::from_mode(0o640)).unwrap();
    symlink(&file, &link).unwrap();
    look(&link, &["--now", MORNING], BEGINNING.as_bytes());
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert!(fs::read_to_string(&file).unwrap().contains("Allium ursinum"));
    assert_eq!(fs::metadata(&file).unwrap().permissions().mode() & 0o777, 0o640);
}

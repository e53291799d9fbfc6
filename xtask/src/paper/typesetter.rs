//! Who stands on the typesetter.

use crate::figure::Figure;
use crate::house::{House, Outcome, read};

/// Which of our crates are built after the typesetter: a change in any other leaves it alone, and none
/// of ours is built before it.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    let args = ["tree", "--invert", "typst", "--edges", "normal,build", "--prefix", "none"];
    let above = read(&mut house.cargo(args))?;
    let root = house.root.display().to_string();
    let names = above.lines().filter(|line| line.contains(&root));
    let mut names: Vec<_> = names.filter_map(|line| line.split(' ').next()).collect();
    names.sort_unstable();
    names.dedup();
    let unit = format!("crates stand on the typesetter: {} (goal 2: pdf, trug)", names.join(", "));
    Ok(vec![Figure { name: "typesetter".to_owned(), value: names.len().to_string(), unit }])
}

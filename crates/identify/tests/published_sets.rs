//! Smallest sets of characters, against published tables and against theorems.
//!
//! Figures of the tables were counted exhaustively, or proved by integer programming, on the files
//! that lie in `tests/data`.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a panic is the report"
)]

mod kit;

use identify::sets::{Effort, Separation, Smallest};
use kit::{MUSHROOM, PLANTAGO, Row, ZOO, read, separating};

const ALL: Effort = Effort { list: 1_000, steps: 1_000_000 };
const SIZE: Effort = Effort { list: 0, ..ALL };

fn smallest(characters: usize, pairs: &[Vec<usize>], times: usize, effort: Effort) -> Smallest {
    let groups: Vec<usize> = (0..characters).collect();
    Separation::new(&groups, pairs.iter().cloned()).smallest(times, effort)
}

/// The size and how many sets there are of it, after the same size was found without counting.
fn size_and_count(characters: usize, pairs: &[Vec<usize>]) -> (usize, u64) {
    let (size, all) = (smallest(characters, pairs, 1, SIZE), smallest(characters, pairs, 1, ALL));
    assert!(size.is_proved() && all.is_proved());
    assert_eq!(size.size(), all.size());
    (all.size(), all.count.unwrap())
}

/// The lines of the affine space over three elements of so many dimensions: all {x, y, z} whose sum
/// is nought in each place.
fn affine(dimensions: u32) -> Vec<Vec<usize>> {
    let points = 3_usize.pow(dimensions);
    let digit = |point: usize, place: u32| point / 3_usize.pow(place) % 3;
    let third = |x: usize, y: usize| -> usize {
        let digits =
            (0..dimensions).map(|at| (6 - digit(x, at) - digit(y, at)) % 3 * 3_usize.pow(at));
        digits.sum()
    };
    let two = (0..points).flat_map(|x| (x + 1..points).map(move |y| (x, y)));
    two.map(|(x, y)| vec![x, y, third(x, y)]).filter(|line| line[1] < line[2]).collect()
}

/// The triples of Bose 1939 (Annals of Eugenics 9:353–399) on fifteen points (x, i), x modulo 5 and i
/// modulo 3: {(x, 0), (x, 1), (x, 2)}, and {(x, i), (y, i), ((x + y) / 2, i + 1)}.
fn bose() -> Vec<Vec<usize>> {
    let point = |x: usize, i: usize| x % 5 + 5 * (i % 3);
    let mut triples: Vec<_> = (0..5).map(|x| (0..3).map(|i| point(x, i)).collect()).collect();
    for i in 0..3 {
        for x in 0..5 {
            triples.extend(
                (x + 1..5).map(|y| vec![point(x, i), point(y, i), point((x + y) * 3, i + 1)]),
            );
        }
    }
    triples
}

/// A system of triples three times as large: the points (x, a), a modulo 3, with {(x, 0), (x, 1),
/// (x, 2)}, and for each triple {x, y, z} all {(x, a), (y, b), (z, c)} with a + b + c = 0.
fn tripled(points: usize, triples: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let mut larger: Vec<_> = (0..points).map(|x| vec![x, x + points, x + 2 * points]).collect();
    for triple in triples {
        for a in 0..3 {
            larger.extend((0..3).map(|b| {
                let turns = [a, b, (6 - a - b) % 3];
                triple.iter().zip(turns).map(|(x, turn)| x + points * turn).collect()
            }));
        }
    }
    larger
}

/// Fulkerson, Nemhauser & Trotter 1974 (Mathematical Programming Study 2:72–81) for 9, 15 and 27
/// points, as given with the instances of Steiner triple covering by Resende.
#[test]
fn steiner_triples_are_met_by_as_few_points_as_was_published() {
    assert_eq!(size_and_count(9, &affine(2)).0, 5);
    assert_eq!(bose().len(), 35);
    assert_eq!(size_and_count(15, &bose()), (9, 315));
    assert_eq!(affine(3).len(), 117);
    assert_eq!(smallest(27, &affine(3), 1, SIZE).size(), 18);
    assert_eq!(smallest(27, &tripled(9, &affine(2)), 1, SIZE).at_least, 18);
}

/// The next larger system, with 45 points, takes 30. To prove it takes some hundred thousand steps;
/// what a few of them give must hold.
#[test]
fn out_of_steps_there_is_a_set_and_a_bound() {
    let triples = tripled(15, &bose());
    assert_eq!(triples.len(), 330);
    let hasty = smallest(45, &triples, 1, Effort { list: 10, steps: 2_000 });
    assert!(!hasty.is_proved() && hasty.count.is_none());
    assert!(triples.iter().all(|triple| triple.iter().any(|point| hasty.sets[0].contains(point))));
    assert!((15..=30).contains(&hasty.at_least) && hasty.size() >= 30, "{hasty:?}");
}

/// Bose & Burton 1966 (Journal of Combinatorial Theory 1:96–104): the fewest points that meet every
/// line of a finite projective space are those of a hyperplane, and only those. Over two elements the
/// points are the numbers above nought, and the third on the line of x and y is x xor y.
#[test]
fn lines_of_a_projective_space_are_met_by_its_hyperplanes() {
    for (points, size) in [(7, 3), (15, 7), (31, 15)] {
        let two = (1..=points).flat_map(|x| (x + 1..=points).map(move |y| (x, y)));
        let lines: Vec<_> = two
            .filter(|(x, y)| y < &(x ^ y))
            .map(|(x, y)| vec![x - 1, y - 1, (x ^ y) - 1])
            .collect();
        assert_eq!(lines.len(), points * (points - 1) / 6);
        assert_eq!(size_and_count(points, &lines), (size, points as u64));
    }
}

#[test]
fn five_characters_tell_the_types_of_the_zoo_apart() {
    let zoo = read(ZOO, 2);
    let pairs = zoo.pairs(|one, other| one.is != other.is);
    assert_eq!(pairs.len(), 3873);
    let all = smallest(16, &pairs, 1, ALL);
    assert_eq!((all.size(), all.count), (5, Some(7)));
    let named: Vec<_> = all.sets.iter().map(|set| zoo.names(set).join(" ")).collect();
    assert_eq!(
        named,
        [
            "eggs milk aquatic toothed legs",
            "eggs milk aquatic backbone legs",
            "eggs aquatic toothed breathes legs",
            "eggs aquatic toothed legs catsize",
            "eggs aquatic backbone legs catsize",
            "milk aquatic toothed fins legs",
            "milk aquatic backbone fins legs",
        ]
    );
}

#[test]
fn eleven_characters_tell_every_description_of_the_zoo_apart() {
    let zoo = read(ZOO, 2);
    let pairs = zoo.pairs(|one, other| one.shows != other.shows);
    assert_eq!(size_and_count(16, &pairs), (11, 5));
}

#[test]
fn four_characters_tell_poisonous_mushrooms_of_the_table_from_edible_ones() {
    let table = read(MUSHROOM, 1);
    let many = |row: &Row| row.shows.iter().map(|states| states.len()).product::<usize>();
    let of = |kind: &str| table.rows.iter().filter(|row| row.is == kind).map(many).sum::<usize>();
    assert_eq!((of("e"), of("p")), (4208, 3916));
    let pairs = table.pairs(|one, other| one.is != other.is);
    let all = smallest(22, &pairs, 1, ALL);
    assert_eq!((all.size(), all.count), (4, Some(13)));
    let no_smell = ["cap-color", "bruises", "stalk-root", "spore-print-color"];
    assert!(all.sets.iter().any(|set| table.names(set) == no_smell));
}

#[test]
fn seven_characters_tell_the_plantains_apart_eleven_twice_and_fifteen_thrice() {
    let table = read(PLANTAGO, 1);
    let pairs = table.pairs(|_, _| true);
    assert_eq!((pairs.len(), pairs.iter().map(Vec::len).min()), (171, Some(2)));
    assert_eq!(pairs.iter().map(Vec::len).sum::<usize>(), 2977);
    assert_eq!(size_and_count(61, &pairs), (7, 332));
    let twice = smallest(61, &pairs, 2, SIZE);
    assert_eq!((twice.size(), twice.at_least, twice.short.len()), (11, 11, 0));
    let thrice = smallest(61, &pairs, 3, SIZE);
    assert_eq!((thrice.size(), thrice.at_least), (15, 15));
    assert!(thrice.short.contains(&(arenaria_and_afra(&table.rows), 2)));
}

/// The number of the pair that fewest characters separate.
fn arenaria_and_afra(rows: &[Row]) -> usize {
    let at = |name: &str| rows.iter().position(|row| row.is == format!("Plantago {name}")).unwrap();
    let (one, other) = (at("arenaria").min(at("afra")), at("arenaria").max(at("afra")));
    (0..one).map(|before| rows.len() - 1 - before).sum::<usize>() + other - one - 1
}

#[test]
fn one_or_two_characters_tell_a_plantain_from_all_others() {
    let table = read(PLANTAGO, 1);
    let alone = ["altissima", "atrata", "coronopus", "arenaria", "sempervirens"];
    for row in &table.rows {
        let others = table.rows.iter().filter(|other| *other != row);
        let pairs: Vec<_> = others.map(|other| separating(row, other)).collect();
        let size = if alone.iter().any(|name| row.is.ends_with(name)) { 1 } else { 2 };
        assert_eq!(size_and_count(61, &pairs).0, size, "{}", row.is);
    }
}

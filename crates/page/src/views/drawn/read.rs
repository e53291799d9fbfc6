//! From what a sheet says of a plant to what is drawn of it.

use crate::svg::plant::{
    Arrangement, Build, ConeForm, Division, Edge, Emergence, FlowerStand, Foot, Fruit, FruitKind,
    FruitStand, Habit, Husk, Inflorescence, Leaf, LeafCut, LeafSection, Needle, NeedleFoot,
    NeedleSection, NeedleStand, NeedleTip, Petals, Shape, Sketch, Spray, Stand, StemCut,
    StemInterior, StemSection, Twig, Underground, VeinEnds, Veins, Whole, alone, outline_of,
};
use ground::Standing;
use identify::{Cell, Value};
use std::collections::{BTreeMap, BTreeSet};

/// What of a plant is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Part {
    Whole,
    Leaf,
    Stand,
    Twig,
    Needle,
    LeafCut,
    Stem,
    Flowers,
    Fruit,
    /// One sign by itself.
    Sign(&'static str),
}

/// A character as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Told {
    pub(super) character: &'static str,
    pub(super) state: String,
    /// Other states that are seen as a rule and are not drawn.
    pub(super) others: Vec<String>,
    /// How many are drawn, of what is counted.
    pub(super) number: Option<u8>,
    pub(super) remembered: bool,
    /// Everything that is ever seen of it, however seldom.
    ever: Ever,
}

/// Everything that is ever seen of a character.
#[derive(Clone, Debug, PartialEq)]
enum Ever {
    States(BTreeSet<String>),
    Range(f64, f64),
}

impl Told {
    /// Whether the two never look alike in this character, and both by published sources. A state and
    /// a kind of it are alike: `kinds` are such pairs.
    pub(super) fn tells_from(&self, other: &Self, kinds: &[(&str, &str)]) -> bool {
        let alike = |here: &String, there: &String| {
            here == there
                || kinds.contains(&(here.as_str(), there.as_str()))
                || kinds.contains(&(there.as_str(), here.as_str()))
        };
        let apart = match (&self.ever, &other.ever) {
            (Ever::States(here), Ever::States(there)) => {
                !here.iter().any(|here| there.iter().any(|there| alike(here, there)))
            }
            (Ever::Range(low, high), Ever::Range(least, most)) => high < least || most < low,
            _ => false,
        };
        apart && !self.remembered && !other.remembered
    }
}

/// A drawing with what it shows.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Seen {
    pub(super) part: Part,
    pub(super) sketch: Sketch,
    pub(super) told: Vec<Told>,
    /// Characters that are dashed because they are not told.
    pub(super) untold: Vec<&'static str>,
}

/// Everything of a plant that can be drawn.
pub(super) fn seen(cells: &BTreeMap<String, Cell>) -> Vec<Seen> {
    let reads = [whole, leaf, stand, twig, needle, leaf_cut, stem, flowers, fruit];
    reads.into_iter().filter_map(|read| read(&mut Reader { cells, told: Vec::new() })).collect()
}

/// One character by itself, where a state that is seen as a rule has a drawing.
pub(super) fn sign(cells: &BTreeMap<String, Cell>, character: &'static str) -> Option<Seen> {
    let mut reader = Reader { cells, told: Vec::new() };
    let sketch = reader.pick(character, |state| alone(character, state), |_| false)?;
    reader.seen(Part::Sign(character), sketch, &[character], &[])
}

/// Reads cells, and keeps what was read.
struct Reader<'a> {
    cells: &'a BTreeMap<String, Cell>,
    told: Vec<Told>,
}

impl Reader<'_> {
    /// The first state of a character that is seen as a rule and has a drawing.
    fn read<T>(&mut self, character: &'static str, of: fn(&str) -> Option<T>) -> Option<T> {
        self.read_not(character, of, |_| false)
    }

    /// The same, passing over some states where there is another.
    fn read_not<T>(
        &mut self,
        character: &'static str,
        of: fn(&str) -> Option<T>,
        pass: impl Fn(&T) -> bool,
    ) -> Option<T> {
        self.pick(character, of, pass)
    }

    fn pick<T>(
        &mut self,
        character: &'static str,
        of: impl Fn(&str) -> Option<T>,
        pass: impl Fn(&T) -> bool,
    ) -> Option<T> {
        let cell = self.cells.get(character).filter(|cell| drawable(cell))?;
        let states = usual(&cell.value);
        let known = |state: &&String| of(state).is_some();
        let better = states.iter().find(|state| of(state).is_some_and(|drawn| !pass(&drawn)));
        let state = better.or_else(|| states.iter().find(known))?.clone();
        let others = states.into_iter().filter(|other| *other != state).collect();
        let drawn = of(&state);
        let remembered = only_remembered(cell);
        self.told.push(Told {
            character,
            state,
            others,
            number: None,
            remembered,
            ever: ever(&cell.value),
        });
        drawn
    }

    /// How many of something: the middle of the ordinary range.
    fn count(&mut self, character: &'static str) -> Option<u8> {
        let cell = self.cells.get(character).filter(|cell| drawable(cell))?;
        let Value::Range { ordinary: (low, high), .. } = cell.value else { return None };
        let number = middle(low, high);
        let told = Told {
            character,
            state: number.to_string(),
            others: Vec::new(),
            number: Some(number),
            remembered: only_remembered(cell),
            ever: ever(&cell.value),
        };
        self.told.push(told);
        Some(number)
    }

    /// The drawing with those of the characters read that it shows.
    fn seen(
        &mut self,
        part: Part,
        sketch: Sketch,
        shows: &[&str],
        untold: &[&'static str],
    ) -> Option<Seen> {
        let mut told = std::mem::take(&mut self.told);
        told.retain(|told| shows.contains(&told.character));
        let untold = untold.iter().filter(|id| shows.contains(id)).copied().collect();
        (!told.is_empty()).then_some(Seen { part, sketch, told, untold })
    }
}

/// The middle of a range of counts. Where both odd and even ones lie in it, an odd one: leaves with
/// an end leaflet are the usual ones.
fn middle(low: f64, high: f64) -> u8 {
    let number = libm::floor((low + high) / 2.0).clamp(1.0, 99.0) as u8;
    let even = number.is_multiple_of(2);
    if even && f64::from(number) + 1.0 <= high { number + 1 } else { number }
}

/// A cell that may be drawn: published, or remembered and then said to be so. Nothing that is only
/// assumed, or a rule of makers or schools, is drawn.
fn drawable(cell: &Cell) -> bool {
    matches!(cell.standing, Standing::Published | Standing::Weak | Standing::Remembered)
}

fn only_remembered(cell: &Cell) -> bool {
    cell.standing == Standing::Remembered
}

/// The states that are seen as a rule.
fn usual(value: &Value) -> Vec<String> {
    match value {
        Value::States { always, usually, .. } => always.iter().chain(usually).cloned().collect(),
        Value::Shares(shares) => {
            let most = shares.iter().max_by(|a, b| a.1.total_cmp(b.1));
            most.map(|(state, _)| state.clone()).into_iter().collect()
        }
        Value::Range { .. } => Vec::new(),
    }
}

fn ever(value: &Value) -> Ever {
    match value {
        Value::States { always, usually, sometimes, rarely } => {
            let all = always.iter().chain(usually).chain(sometimes).chain(rarely);
            Ever::States(all.cloned().collect())
        }
        Value::Shares(shares) => Ever::States(shares.keys().cloned().collect()),
        Value::Range { ordinary: (low, high), extreme } => {
            let (least, most) = extreme.unwrap_or((*low, *high));
            Ever::Range(low.min(least), high.max(most))
        }
    }
}

/// What is told of the leaf. Of an outline with lobes the teeth on the lobes are drawn.
fn blade(reader: &mut Reader<'_>) -> Leaf {
    let build = reader.read(Build::CHARACTER, Build::of);
    let division = reader.read(Division::CHARACTER, Division::of);
    let shape = reader.read(Shape::CHARACTER, Shape::of);
    let lobed =
        division.is_some() || matches!(shape, Some(Shape::PinnatelyLobed | Shape::PalmatelyLobed));
    Leaf {
        build,
        division,
        shape,
        edge: reader.read_not(Edge::CHARACTER, Edge::of, |edge| lobed && *edge == Edge::Lobed),
        veins: reader.read_not(Veins::CHARACTER, Veins::of, |veins| *veins == Veins::Netted),
        ends: reader.read(VeinEnds::CHARACTER, VeinEnds::of),
        foot: reader.read(Foot::CHARACTER, Foot::of),
        leaflets: reader.count("leaflet_count"),
    }
}

fn leaf(reader: &mut Reader<'_>) -> Option<Seen> {
    let leaf = blade(reader);
    let untold: Vec<_> = [
        ("leaf_shape", leaf.shape.is_none()),
        ("leaf_margin", leaf.edge.is_none()),
        ("leaf_venation", leaf.veins.is_none()),
    ]
    .into_iter()
    .filter_map(|(id, missing)| missing.then_some(id))
    .collect();
    reader.seen(Part::Leaf, leaf.sketch()?, &leaf.shows(), &untold)
}

/// A herb from root to flower; of what is woody or climbs, its outline.
fn whole(reader: &mut Reader<'_>) -> Option<Seen> {
    if let Some(habit) = reader.read(Habit::CHARACTER, Habit::of)
        && habit != Habit::Herb
    {
        // The crown of a conifer has a form of its own, which no character tells.
        let conifer =
            matches!(reader.read(Build::CHARACTER, Build::of), Some(Build::Needle | Build::Scale));
        let sketch = (!conifer).then(|| outline_of(habit))?;
        return reader.seen(Part::Whole, sketch, &[Habit::CHARACTER], &[]);
    }
    let whole = Whole {
        stand: standing(reader),
        flowers: flowering(reader),
        underground: reader.read(Underground::CHARACTER, Underground::of),
    };
    reader.seen(Part::Whole, whole.sketch()?, &whole.shows(), &[])
}

fn standing(reader: &mut Reader<'_>) -> Stand {
    Stand {
        arrangement: reader.read(Arrangement::CHARACTER, Arrangement::of),
        emergence: reader.read(Emergence::CHARACTER, Emergence::of),
        in_ring: reader.count("leaves_per_whorl"),
        leaf: blade(reader),
    }
}

fn stand(reader: &mut Reader<'_>) -> Option<Seen> {
    let stand = standing(reader);
    reader.seen(Part::Stand, stand.sketch()?, stand.shows(), &[])
}

fn twig(reader: &mut Reader<'_>) -> Option<Seen> {
    let twig = Twig {
        build: reader.read(Build::CHARACTER, Build::of),
        spray: reader.read(Spray::CHARACTER, Spray::of),
        stand: reader.read(NeedleStand::CHARACTER, NeedleStand::of),
        in_bundle: reader.count("needles_per_bundle"),
    };
    let sketch = twig.sketch()?;
    reader.seen(Part::Twig, sketch, twig.shows(), &[])
}

fn needle(reader: &mut Reader<'_>) -> Option<Seen> {
    if reader.read(Build::CHARACTER, Build::of) != Some(Build::Needle) {
        return None;
    }
    let needle = Needle {
        foot: reader.read(NeedleFoot::CHARACTER, NeedleFoot::of),
        section: reader.read(NeedleSection::CHARACTER, NeedleSection::of),
        tip: reader.read(NeedleTip::CHARACTER, NeedleTip::of),
        in_bundle: reader.count("needles_per_bundle"),
    };
    let untold: Vec<_> = [
        (NeedleFoot::CHARACTER, needle.foot.is_none()),
        (NeedleTip::CHARACTER, needle.tip.is_none() && needle.section != Some(NeedleSection::Awl)),
    ]
    .into_iter()
    .filter_map(|(id, missing)| missing.then_some(id))
    .collect();
    let mut shows = vec![NeedleFoot::CHARACTER, NeedleSection::CHARACTER, NeedleTip::CHARACTER];
    if needle.foot == Some(NeedleFoot::SheathedBundle) {
        shows.push("needles_per_bundle");
    }
    reader.seen(Part::Needle, needle.sketch()?, &shows, &untold)
}

fn leaf_cut(reader: &mut Reader<'_>) -> Option<Seen> {
    let cut = LeafCut { section: reader.read(LeafSection::CHARACTER, LeafSection::of) };
    reader.seen(Part::LeafCut, cut.sketch()?, &[LeafSection::CHARACTER], &[])
}

fn stem(reader: &mut Reader<'_>) -> Option<Seen> {
    let cut = StemCut {
        section: reader.read(StemSection::CHARACTER, StemSection::of),
        interior: reader.read(StemInterior::CHARACTER, StemInterior::of),
    };
    if !cut.tells() {
        return None;
    }
    let shows = [StemSection::CHARACTER, StemInterior::CHARACTER];
    reader.seen(Part::Stem, cut.sketch()?, &shows, &[])
}

fn flowering(reader: &mut Reader<'_>) -> FlowerStand {
    FlowerStand {
        form: reader.read(Inflorescence::CHARACTER, Inflorescence::of),
        petals: reader.read(Petals::CHARACTER, Petals::of),
    }
}

fn flowers(reader: &mut Reader<'_>) -> Option<Seen> {
    let stand = flowering(reader);
    let untold: &[_] = if stand.petals.is_none() { &[Petals::CHARACTER] } else { &[] };
    reader.seen(Part::Flowers, stand.sketch()?, stand.shows(), untold)
}

fn fruit(reader: &mut Reader<'_>) -> Option<Seen> {
    let fruit = Fruit {
        kind: reader.read(FruitKind::CHARACTER, FruitKind::of),
        cone: reader.read(ConeForm::CHARACTER, ConeForm::of),
        stand: reader.read(FruitStand::CHARACTER, FruitStand::of),
        husk: reader.read(Husk::CHARACTER, Husk::of),
        flowers: reader.read(Inflorescence::CHARACTER, Inflorescence::of),
    };
    let sketch = fruit.sketch()?;
    reader.seen(Part::Fruit, sketch, &fruit.shows(), &[])
}

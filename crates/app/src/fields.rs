//! The tables that are filled in by hand, field by field: what a form asks, and how what it said
//! becomes a cell.

use desk::Cell;
use ground::Finite;
use jiff::civil::{self, Date, DateTime};
use std::str::FromStr;

/// A table that can be filled in.
pub(crate) struct Table {
    /// As the outing file names it.
    pub(crate) name: &'static str,
    /// What is asked, in this order.
    pub(crate) fields: &'static [Field],
}

/// A field of a table.
pub(crate) struct Field {
    pub(crate) name: &'static str,
    pub(crate) kind: Kind,
    pub(crate) needed: bool,
}

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Words, and amounts as people say them.
    Words,
    /// Several, one on a line.
    Lines,
    /// One word of a closed list.
    Choice(Choice),
    /// Several words of a closed list.
    Choices(Choice),
    /// A plant, by any of its names.
    Plant,
    /// Several plants, one on a line.
    Plants,
    Day,
    Time,
    Moment,
    Whole,
    /// Several whole numbers, one on a line.
    Wholes,
    /// What goes in, one on a line: what it is, then how much.
    Amounts,
    /// What was found among the pieces, one on a line: how many, then which plant.
    Found,
    /// A number with a point, such as degrees.
    Number,
    /// Somebody, a comma, and their telephone number.
    Contact,
    YesNo,
}

/// A closed list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Choice {
    Region,
    Purpose,
    Level,
    Land,
    Jurisdiction,
    /// What a stand must not be near.
    Hazard,
    Part,
    Recipe,
    Kitchen,
    /// Whom a number to call reaches.
    Reaches,
    /// How a group gets back that turns early.
    Early,
    /// Fresh or dried.
    State,
    /// The stages that the herbal tells apart, of plants of this outing.
    Stage,
    /// Whoever reads plants or comes along.
    Picker,
    /// The plants in hand that somebody looked at.
    Specimen,
    /// The rows of this table, by name.
    Of(&'static str),
}

const fn must(name: &'static str, kind: Kind) -> Field {
    Field { name, kind, needed: true }
}

const fn may(name: &'static str, kind: Kind) -> Field {
    Field { name, kind, needed: false }
}

use Choice::{
    Hazard, Jurisdiction, Land, Level, Of, Part, Picker, Purpose, Recipe, Region, Stage, State,
};
use Kind::{
    Amounts, Choices, Contact, Day, Found, Lines, Moment, Number, Plant, Plants, Time, Whole,
    Wholes, Words, YesNo,
};

/// A choice from one list.
const fn one(choice: Choice) -> Kind {
    Kind::Choice(choice)
}

/// Every table, in the order in which an outing comes about.
pub(crate) const TABLES: &[Table] = &[
    Table {
        name: "outing",
        fields: &[
            must("name", Words),
            must("date", Day),
            must("from", Time),
            must("to", Time),
            must("leader", one(Of("reader"))),
            must("region", one(Region)),
            must("purpose", one(Purpose)),
            must("zone", Words),
            may("kitchen", one(Choice::Kitchen)),
            may("records-since", Day),
            may("latitude", Number),
            may("longitude", Number),
        ],
    },
    Table {
        name: "emergency",
        fields: &[
            may("first-aider", Words),
            may("deputy", Words),
            may("base", Contact),
            may("overdue-after", Words),
            may("meeting-point", Words),
            may("second-way", Words),
        ],
    },
    Table {
        name: "number",
        fields: &[
            must("what", one(Choice::Reaches)),
            must("called", Words),
            must("number", Words),
            may("source", Words),
            may("looked-up", Day),
        ],
    },
    Table { name: "reader", fields: &[must("called", Words), must("level", one(Level))] },
    Table {
        name: "site",
        fields: &[
            must("called", Words),
            must("landholder", Words),
            must("land", one(Land)),
            must("jurisdiction", one(Jurisdiction)),
            may("grid", Words),
            may("road", Words),
            may("way-in", Words),
            may("public-right", YesNo),
        ],
    },
    Table {
        name: "permission",
        fields: &[
            must("site", one(Of("site"))),
            must("from", Words),
            must("given", Day),
            must("until", Day),
            must("purposes", Choices(Purpose)),
            must("plants", Plants),
            must("parts", Choices(Part)),
            may("at-most", Words),
        ],
    },
    Table {
        name: "stand",
        fields: &[
            must("name", Words),
            must("site", one(Of("site"))),
            must("plant", Plant),
            may("area", Words),
            may("without", Choices(Hazard)),
            may("in-water", YesNo),
        ],
    },
    Table {
        name: "survey",
        fields: &[
            must("stand", one(Of("stand"))),
            must("part", one(Part)),
            must("on", Day),
            must("by", Words),
            must("plots-in-stand", Whole),
            may("pieces", Wholes),
            may("piece-weights", Lines),
            may("weights", Lines),
        ],
    },
    Table {
        name: "stop",
        fields: &[
            must("site", one(Of("site"))),
            must("at", Time),
            must("lasts", Words),
            may("walk", Words),
            may("climb", Words),
            must("plants", Plants),
        ],
    },
    Table {
        name: "way-back",
        fields: &[
            may("walk", Words),
            may("climb", Words),
            may("early", one(Choice::Early)),
            may("in-an-hour", Words),
            may("before-sunset", Words),
        ],
    },
    Table {
        name: "make",
        fields: &[
            must("called", Words),
            must("recipe", one(Recipe)),
            must("plant", Plant),
            must("part", one(Part)),
            may("stands", Choices(Of("stand"))),
            may("lots", Choices(Of("lot"))),
            may("herb", one(State)),
            may("amounts", Amounts),
            may("moisture", Words),
            may("stage", one(Stage)),
            may("serving", Words),
            may("weighed", YesNo),
            must("servings-a-day", Whole),
            must("days", Whole),
            may("everybody", YesNo),
            may("people", Choices(Of("participant"))),
        ],
    },
    Table { name: "participant", fields: &[must("called", Words)] },
    Table {
        name: "take",
        fields: &[
            must("name", Words),
            must("stand", one(Of("stand"))),
            must("part", one(Part)),
            must("amount", Words),
            must("at", Moment),
            may("pattern", one(Choice::Specimen)),
            may("stages", Choices(Stage)),
            must("pickers", Choices(Picker)),
        ],
    },
    Table { name: "lot", fields: &[must("name", Words), must("takes", Choices(Of("take")))] },
    Table {
        name: "sorting",
        fields: &[
            must("lot", one(Of("lot"))),
            must("at", Moment),
            must("sorters", Choices(Of("reader"))),
            must("pieces", Whole),
            may("every-piece", YesNo),
            may("found", Found),
        ],
    },
    Table {
        name: "batch",
        fields: &[
            must("name", Words),
            must("make", one(Of("make"))),
            must("lots", Choices(Of("lot"))),
            may("stages", Choices(Stage)),
            must("at", Moment),
            must("cook", Words),
        ],
    },
    Table {
        name: "weighing",
        fields: &[
            must("of", one(Of("batch"))),
            must("what", Words),
            must("at", Moment),
            may("mass", Words),
            may("volume", Words),
        ],
    },
    Table {
        name: "confirmation",
        fields: &[
            must("make", one(Of("make"))),
            must("participants", Choices(Of("participant"))),
            must("by", Words),
            must("at", Moment),
            may("at-most", Whole),
        ],
    },
    Table {
        name: "serving",
        fields: &[
            must("batch", one(Of("batch"))),
            must("at", Moment),
            must("to", Choices(Of("participant"))),
            must("servings", Whole),
            may("taken-home", YesNo),
        ],
    },
];

/// The table of this name.
pub(crate) fn table(name: &str) -> Option<&'static Table> {
    TABLES.iter().find(|table| table.name == name)
}

impl Table {
    /// Whether an outing has one of it at most.
    pub(crate) fn is_single(&self) -> bool {
        ["outing", "emergency", "way-back"].contains(&self.name)
    }

    /// Whether the program makes a short name for a row, from what it is called.
    pub(crate) fn makes_name(&self) -> bool {
        let has = |name: &str| self.fields.iter().any(|field| field.name == name);
        // Numbers to call are known by nothing but themselves.
        self.name != "number" && has("called") && !has("name")
    }
}

/// What was said cannot be read as what the field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Unreadable;

impl Kind {
    /// The cell of what was said; none where nothing was.
    pub(crate) fn cell(self, said: &[&str]) -> Result<Option<Cell>, Unreadable> {
        let said: Vec<_> =
            said.iter().map(|one| one.trim()).filter(|one| !one.is_empty()).collect();
        let Some(first) = said.first() else { return Ok(None) };
        let lines = || said.iter().flat_map(|one| one.lines()).map(str::trim);
        let several = |all: &mut dyn Iterator<Item = &str>| {
            let words = all.filter(|one| !one.is_empty()).map(|one| Cell::Words(one.to_owned()));
            Cell::List(words.collect())
        };
        let cell = match self {
            Self::Words | Self::Choice(_) | Self::Plant => Cell::Words((*first).to_owned()),
            Self::Choices(_) | Self::Lines | Self::Plants => several(&mut lines()),
            Self::Day => Cell::Day(read::<Date>(first)?),
            Self::Time => Cell::Words(read::<civil::Time>(first)?.strftime("%H:%M").to_string()),
            Self::Moment => Cell::Moment(read::<DateTime>(first)?),
            Self::Whole => Cell::Whole(read(first)?),
            Self::Wholes => {
                let each = lines().flat_map(str::split_whitespace);
                Cell::List(each.map(|one| Ok(Cell::Whole(read(one)?))).collect::<Result<_, _>>()?)
            }
            Self::Found => {
                let each = lines().filter(|line| !line.is_empty());
                Cell::List(each.map(found).collect::<Result<_, _>>()?)
            }
            Self::Amounts => {
                let each = lines().filter(|line| !line.is_empty());
                Cell::Table(each.map(amount).collect::<Result<_, _>>()?)
            }
            Self::Number => Cell::Number(Finite::new(read(first)?).ok_or(Unreadable)?),
            Self::Contact => {
                let (name, phone) = first.rsplit_once(',').ok_or(Unreadable)?;
                let said = |words: &str| Cell::Words(words.trim().to_owned());
                let both = [("name", said(name)), ("phone", said(phone))];
                Cell::Table(both.map(|(field, cell)| (field.to_owned(), cell)).into())
            }
            Self::YesNo => Cell::YesNo(match *first {
                "yes" => true,
                "no" => false,
                _ => return Err(Unreadable),
            }),
        };
        Ok(Some(cell))
    }
}

/// `2 Lamium album`: so many pieces, and of what.
fn found(line: &str) -> Result<Cell, Unreadable> {
    let (pieces, what) = line.split_once(char::is_whitespace).ok_or(Unreadable)?;
    let (pieces, what) = (Cell::Whole(read(pieces)?), Cell::Words(what.trim().to_owned()));
    Ok(Cell::Table([("pieces".to_owned(), pieces), ("what".to_owned(), what)].into()))
}

/// `herb 800 g`: what goes in, and how much of it.
fn amount(line: &str) -> Result<(String, Cell), Unreadable> {
    let (what, amount) = line.split_once(char::is_whitespace).ok_or(Unreadable)?;
    Ok((what.to_owned(), Cell::Words(amount.trim().to_owned())))
}

fn read<T: FromStr>(said: &str) -> Result<T, Unreadable> {
    said.parse().map_err(|_| Unreadable)
}

/// What a field of a form says of a cell that is there.
pub(crate) fn said(cell: &Cell) -> Vec<String> {
    match cell {
        Cell::Words(words) => vec![words.clone()],
        Cell::Whole(number) => vec![number.to_string()],
        Cell::Number(number) => vec![number.get().to_string()],
        Cell::YesNo(yes) => vec![if *yes { "yes" } else { "no" }.to_owned()],
        Cell::Day(day) => vec![day.to_string()],
        // With its seconds: two looks, a take and a sorting within a minute stay in order.
        Cell::Moment(at) => vec![at.to_string()],
        Cell::List(all) => all.iter().flat_map(said).collect(),
        Cell::Table(table) => match (table.get("pieces"), table.get("what")) {
            (Some(pieces), Some(what)) => vec![[said(pieces), said(what)].concat().join(" ")],
            _ if table.contains_key("phone") => {
                vec![table.values().flat_map(said).collect::<Vec<_>>().join(", ")]
            }
            _ => table
                .iter()
                .map(|(what, cell)| format!("{what} {}", said(cell).join(" ")))
                .collect(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_form_says_of_a_cell_makes_the_same_cell() {
        let said_again = [
            (Words, "1½ cups"),
            (Day, "2027-05-13"),
            (Time, "09:05"),
            (Moment, "2027-05-13T10:40:07"),
            (Whole, "14"),
            (YesNo, "no"),
            (Lines, "railway\nbusy-road"),
            (Wholes, "41\n58\n36"),
            (Found, "2 Lamium album\n1 Arum maculatum"),
            (Amounts, "herb 56 g\nwater 2.2 l"),
        ];
        for (kind, words) in said_again {
            let cell = kind.cell(&[words]).unwrap().unwrap();
            assert_eq!(said(&cell).join("\n"), words);
        }
    }

    #[test]
    fn nothing_said_is_no_cell_and_nonsense_is_told() {
        for kind in [Words, Day, Whole, Lines] {
            assert_eq!(kind.cell(&["  "]), Ok(None));
            assert_eq!(kind.cell(&[]), Ok(None));
        }
        for (kind, words) in [
            (Day, "13 May"),
            (Time, "noon"),
            (Moment, "2027-05-13 at ten"),
            (Whole, "1.5"),
            (Wholes, "41 some"),
            (Found, "Lamium album"),
            (Amounts, "herb"),
            (YesNo, "si"),
        ] {
            assert_eq!(kind.cell(&[words]), Err(Unreadable), "{words}");
        }
    }
}

//! How the numbers about money came about, down to what the outing file says.

use super::{BreakEven, Money, Scale, Workings, formula as f, said};
use crate::outing::{Per, Rung};
use ground::{Cents, Formula, Place, Shown, Text, Unit, Working};

pub(super) fn workings(money: &Money) -> Workings {
    let made = Maker { money };
    let scale = money.scale.as_ref();
    Workings {
        a_head: money.full().and_then(|people| made.a_head(people)),
        break_even: made.break_even(),
        left: money.full().and_then(|people| made.left(people)),
        scale: scale.and_then(|scale| made.scale(scale)),
        lowest: scale.and_then(|scale| made.lowest(scale)),
    }
}

/// Makes workings of what is known.
struct Maker<'a> {
    money: &'a Money,
}

impl Maker<'_> {
    fn shown(&self, amount: Cents) -> Shown {
        Shown::Words(Text::new("money").with("amount", said(amount, self.money.currency)))
    }

    fn sum(&self, id: &str, amount: Cents, by: Formula, from: Vec<Working>) -> Working {
        Working::computed(Text::new(id), self.shown(amount), by, from)
    }

    /// What somebody wrote under `[money]`.
    fn written(&self, id: &str, amount: Cents, field: &str) -> Working {
        let place = Place::entry("money", "", field);
        Working::input(Text::new(id), self.shown(amount), place)
    }

    /// The costs that are paid this often, each as it was written.
    fn costs(&self, id: &str, per: Per, amount: Cents) -> Working {
        let own = self.money.costs.iter().filter(|cost| cost.per == per);
        let each = own.map(|cost| {
            let what = Text::new("money-working-cost").with("called", cost.called.as_str());
            let place = Place::entry("cost", &cost.called, "amount");
            Working::input(what, self.shown(cost.amount), place)
        });
        self.sum(id, amount, Formula::plain("money.sum", "Σ"), each.collect())
    }

    fn once(&self) -> Option<Working> {
        Some(self.costs("money-working-once", Per::Outing, self.money.once?))
    }

    fn each(&self) -> Option<Working> {
        Some(self.costs("money-working-each", Per::Person, self.money.each?))
    }

    fn people(&self, people: u32) -> Working {
        let what = Text::new("money-working-people");
        let shown = Shown::amount(f64::from(people), Unit::One);
        if self.money.places == Some(people) {
            return Working::input(what, shown, Place::entry("money", "", "places"));
        }
        let why = Text::new("money-working-signed-up");
        Working::assumed(what, shown, why)
    }

    /// What one payment costs; that none was said is an assumption that is told.
    fn fee(&self, price: Cents) -> Option<Working> {
        let what = Text::new("money-working-fee");
        let Some(fee) = self.money.fee else {
            let why = Text::new("money-open-fee");
            return Some(Working::assumed(what, self.shown(Cents::ZERO), why));
        };
        let share = Working::input(
            Text::new("money-working-share"),
            Shown::amount(f64::from(fee.share.get()) / 10_000.0, Unit::Percent),
            Place::entry("money", "", "card-fee"),
        );
        let fixed = self.written("money-working-fixed", fee.fixed, "card-fee");
        let by = Formula::plain("money.fee", "c = p·s + f");
        Some(Working::computed(what, self.shown(f::fee_on(fee, price)?), by, vec![share, fixed]))
    }

    fn a_head(&self, people: u32) -> Option<Working> {
        let a_head = f::a_head(self.money.once?, self.money.each?, people)?;
        let from = vec![self.once()?, self.each()?, self.people(people)];
        let by = Formula::plain("money.a-head", "F/n + v");
        Some(self.sum("money-working-a-head", a_head, by, from))
    }

    fn leaves(&self) -> Option<Working> {
        let price = self.money.price?;
        let from = vec![
            self.written("money-working-price", price, "price"),
            self.each()?,
            self.fee(price)?,
        ];
        let by = Formula::plain("money.leaves", "m = p − v − c");
        Some(self.sum("money-working-leaves", self.money.leaves()?, by, from))
    }

    fn break_even(&self) -> Option<Working> {
        let BreakEven::From { people, .. } = self.money.break_even? else { return None };
        let by = Formula::plain("money.break-even", "n = ⌈F/m⌉");
        Some(Working::computed(
            Text::new("money-working-break-even"),
            Shown::amount(f64::from(people), Unit::One),
            by,
            vec![self.once()?, self.leaves()?],
        ))
    }

    fn left(&self, people: u32) -> Option<Working> {
        let left = f::left(self.money.once?, self.money.leaves()?, people)?;
        let from = vec![self.people(people), self.leaves()?, self.once()?];
        let by = Formula::plain("money.left", "n·m − F");
        Some(self.sum("money-working-left", left, by, from))
    }

    /// What a rung brings, as it was written.
    fn rung(&self, rung: &Rung) -> Working {
        let what = Text::new("money-working-rung").with("people", rung.people);
        Working::input(what, self.shown(rung.price), Place::entry("money", "", "scale"))
    }

    fn scale(&self, scale: &Scale) -> Option<Working> {
        let taken = self.sum(
            "money-working-taken",
            scale.taken,
            Formula::plain("money.taken", "Σ p·n"),
            scale.rungs.iter().map(|rung| self.rung(rung)).collect(),
        );
        let fees = self.fees(scale);
        let costs = self.all_costs(scale)?;
        let by = Formula::plain("money.scale-left", "Σ p·n − Σ c·n − (F + n·v)");
        Some(self.sum("money-working-scale", scale.left?, by, vec![taken, fees, costs]))
    }

    fn fees(&self, scale: &Scale) -> Working {
        let what = Text::new("money-working-fees");
        match self.money.fee {
            None => {
                let why = Text::new("money-open-fee");
                Working::assumed(what, self.shown(scale.fees), why)
            }
            Some(_) => {
                let by = Formula::plain("money.fees", "Σ c·n, c = p·s + f");
                Working::computed(what, self.shown(scale.fees), by, Vec::new())
            }
        }
    }

    fn all_costs(&self, scale: &Scale) -> Option<Working> {
        let all = f::costs(self.money.once?, self.money.each?, scale.people)?;
        let by = Formula::plain("money.costs", "F + n·v");
        Some(self.sum("money-working-costs", all, by, vec![self.once()?, self.each()?]))
    }

    fn lowest(&self, scale: &Scale) -> Option<Working> {
        let (_, others) = scale.rungs.split_first()?;
        let brought = f::taken(others)?.minus(f::fees(others, self.money.fee())?)?;
        let by = Formula::plain("money.others", "Σ (p − c)·n");
        let rungs = others.iter().map(|rung| self.rung(rung)).collect();
        let brought = self.sum("money-working-others", brought, by, rungs);
        let from = vec![self.all_costs(scale)?, brought];
        let by = Formula::plain("money.lowest", "(p − c)·n ≥ F + n·v − Σ (p − c)·n");
        Some(self.sum("money-working-lowest", scale.lowest_must_be?, by, from))
    }
}

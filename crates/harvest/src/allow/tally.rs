//! What was taken before, in the measure that was asked.

use crate::{Asked, Estimate, Measure, Quantity, Survey, Taken};
use ground::{Refusal, Text};
use jiff::civil::Date;

/// Converts between pieces and grams, always to the side that allows less, and adds up takes.
pub(super) struct Tally<'a> {
    asked: &'a Asked,
    piece: Option<Estimate>,
}

impl<'a> Tally<'a> {
    pub(super) fn new(asked: &'a Asked) -> Self {
        let piece = asked.survey.as_ref().and_then(Survey::piece);
        Self { asked, piece }
    }

    /// What an amount surely comes to, in the measure that was asked.
    pub(super) fn at_least(&self, amount: Quantity) -> Result<f64, Refusal> {
        self.convert(amount, |piece| (piece.low.max(0.0), piece.high))
    }

    /// What an amount may come to at most, in the measure that was asked.
    pub(super) fn at_most(&self, amount: Quantity) -> Result<f64, Refusal> {
        self.convert(amount, |piece| (piece.high, piece.low.max(0.0)))
    }

    /// `ends` gives the grams of a piece by which pieces are multiplied, and by which grams are
    /// divided.
    fn convert(
        &self,
        amount: Quantity,
        ends: impl Fn(Estimate) -> (f64, f64),
    ) -> Result<f64, Refusal> {
        if amount.measure() == self.asked.measure {
            return Ok(amount.number());
        }
        let converted = self.piece.map(ends).map(|(times, over)| match amount {
            Quantity::Pieces(pieces) => pieces.0 * times,
            Quantity::Mass(mass) => mass.g() / over,
        });
        converted.filter(|n| n.is_finite()).ok_or_else(|| {
            Refusal::new(
                Text::new("harvest-piece-weight-unknown")
                    .with("stand", self.asked.stand.name.as_str()),
                Text::new("harvest-settle-weigh-ten")
                    .with("part", crate::crop::part_text(self.asked.part)),
            )
        })
    }

    /// The takes since a day; refused when nobody wrote them down from that day on.
    pub(super) fn takes_since(&self, day: Date) -> Result<Vec<&'a Taken>, Refusal> {
        let stand = self.asked.stand.name.as_str();
        let settle = || Text::new("harvest-settle-history").with("stand", stand).with("day", day);
        let Some(history) = &self.asked.history else {
            let why = Text::new("harvest-no-history").with("stand", stand);
            return Err(Refusal::new(why, settle()));
        };
        if history.since > day {
            let why = Text::new("harvest-short-history").with("stand", stand);
            return Err(Refusal::new(why.with("since", history.since), settle()));
        }
        Ok(history.takes.iter().filter(|take| take.on >= day).collect())
    }

    /// What these takes come to at most.
    pub(super) fn sum<'t>(
        &self,
        takes: impl IntoIterator<Item = &'t Taken>,
    ) -> Result<f64, Refusal> {
        takes.into_iter().try_fold(0.0, |sum, take| {
            // A take of another plant has other pieces.
            let same = take.taxon == self.asked.taxon || take.amount.measure() == Measure::Mass;
            let amount = self.at_most(take.amount)?;
            if same || take.amount.measure() == self.asked.measure {
                Ok(sum + amount.max(0.0))
            } else {
                Err(Refusal::new(
                    Text::new("harvest-pieces-of-another").taxon("taxon", take.taxon.as_str()),
                    Text::new("harvest-settle-weigh-take").with("stand", take.stand.as_str()),
                ))
            }
        })
    }

    /// A limit less what was already taken of it, as an amount to take.
    pub(super) fn left(&self, limit: Quantity, taken: f64) -> Result<Quantity, Refusal> {
        let left = self.at_least(limit)? - taken;
        Ok(self.amount(left))
    }

    /// So much, to take, in the measure that was asked.
    pub(super) fn amount(&self, number: f64) -> Quantity {
        Quantity::of(self.asked.measure, number).to_take()
    }

    pub(super) fn measure(&self) -> Measure {
        self.asked.measure
    }
}

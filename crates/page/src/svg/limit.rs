//! Spreads against limits: how far a doubtful amount reaches, and where the limit lies.

use super::{Drawing, Hold, LETTERS, Stroke, reach};
use crate::number::{Rounding, magnitude, numerals, ten_to};
use ground::{Finite, Spread, Unit};

const WIDTH: f64 = 360.0;
const MARGIN: f64 = 8.0;
const LEFT: f64 = MARGIN;
const RIGHT: f64 = WIDTH - MARGIN;

/// Spreads held against a limit, on one scale that begins at zero.
#[derive(Clone, Debug, PartialEq)]
pub struct AgainstLimit {
    /// What is shown.
    pub title: String,
    /// What it comes to, in words.
    pub describes: String,
    /// The spreads.
    pub bars: Vec<Bar>,
    /// The limit, with the words beside it; none where authorities set no value.
    pub limit: Option<(Finite, String)>,
    /// The unit of spreads and limit.
    pub unit: Unit,
    /// Words below the scale, such as its unit and what the marks mean.
    pub scale: String,
}

/// A spread with its words.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// What it is and how far it reaches, such as "Nettle tea: 25 to 49 mg".
    pub says: String,
    /// The spread.
    pub spread: Spread,
}

impl AgainstLimit {
    /// The drawing. A heavy bar reaches from the 5th to the 95th percentile, a ring marks the
    /// bound that is held against the limit, a dashed line the limit.
    #[must_use]
    pub fn draw(&self) -> Drawing {
        let mut drawing = Drawing::new(&self.title, &self.describes, WIDTH as u32, 0);
        let scale = Scale::up_to(self.most());
        let head = match &self.limit {
            Some((limit, says)) => name_limit(&mut drawing, scale.x(limit.get()), says),
            None => MARGIN,
        };
        let mut y = head;
        for bar in &self.bars {
            y = draw_bar(&mut drawing, scale, bar, y);
        }
        if let Some((limit, _)) = &self.limit {
            let x = scale.x(limit.get());
            drawing.line((x, head), (x, y), Stroke::Dashed);
        }
        let foot = self.draw_scale(&mut drawing, scale, y);
        drawing.size.1 = foot.ceil() as u32;
        drawing
    }

    fn most(&self) -> f64 {
        let ends = self.bars.iter().map(|bar| bar.spread.p95_bound);
        let limit = self.limit.iter().map(|(limit, _)| *limit);
        ends.chain(limit).max().map_or(0.0, Finite::get)
    }

    fn draw_scale(&self, drawing: &mut Drawing, scale: Scale, y: f64) -> f64 {
        drawing.line((scale.x(0.0), y), (scale.x(scale.end), y), Stroke::Thin);
        for tick in 0..=scale.ticks {
            let value = scale.step * f64::from(tick);
            let x = scale.x(value);
            drawing.line((x, y), (x, y + 5.0), Stroke::Thin);
            let hold = match tick {
                0 => Hold::Start,
                last if last == scale.ticks => Hold::End,
                _ => Hold::Middle,
            };
            let number = numerals(value, self.unit, Rounding::Nearest);
            drawing.words((x, y + 6.0 + LETTERS), hold, &number);
        }
        drawing.lines(LEFT, RIGHT, y + 14.0 + LETTERS, &self.scale) + MARGIN
    }
}

/// Words above the limit, beside its line where the middle would run over the edge.
fn name_limit(drawing: &mut Drawing, x: f64, says: &str) -> f64 {
    let room = (RIGHT - LEFT - reach(says)).max(0.0);
    let left = LEFT + (x - LEFT - reach(says) / 2.0).clamp(0.0, room);
    let right = (left + reach(says) + 1.0).min(RIGHT);
    drawing.lines(left, right, 2.0, says)
}

/// A bar below its words; gives where the next may begin.
fn draw_bar(drawing: &mut Drawing, scale: Scale, bar: &Bar, top: f64) -> f64 {
    let spread = &bar.spread;
    let [low, middle, high, bound] =
        [spread.p5, spread.p50, spread.p95, spread.p95_bound].map(|end| scale.x(end.get()));
    let y = drawing.lines(LEFT, RIGHT, top + 4.0, &bar.says) + 10.0;
    drawing.rect((low, y - 4.0), ((high - low).max(1.0), 8.0), true);
    drawing.line((middle, y - 9.0), (middle, y + 9.0), Stroke::Heavy);
    drawing.line((high, y), (bound, y), Stroke::Thin);
    drawing.ring((bound, y), 4.0);
    y + 20.0
}

/// A scale from zero to a round number.
#[derive(Clone, Copy)]
struct Scale {
    step: f64,
    ticks: u32,
    end: f64,
}

impl Scale {
    /// The scale in at most six steps of 1, 2 or 5 times a power of ten that holds `most`.
    fn up_to(most: f64) -> Self {
        let most = if most > 0.0 { most } else { 1.0 };
        let unit = ten_to(magnitude(most / 5.0));
        let step = [1.0, 2.0, 5.0, 10.0]
            .map(|times| times * unit)
            .into_iter()
            .find(|step| most <= step * 5.0)
            .unwrap_or(unit * 10.0);
        let ticks = (most / step).ceil().clamp(1.0, 6.0) as u32;
        let end = step * f64::from(ticks);
        Self { step, ticks, end }
    }

    fn x(self, value: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (value / self.end).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_scale_holds_everything_in_few_round_steps(most in 1e-9..1e9_f64) {
            let scale = Scale::up_to(most);
            prop_assert!(scale.end >= most && scale.ticks <= 6);
            // The last step is needed: no scale is half empty for want of a finer one.
            prop_assert!(scale.end - scale.step < most);
        }
    }

    #[test]
    fn nothing_to_show_still_has_a_scale() {
        let scale = Scale::up_to(0.0);
        assert!(scale.end >= 1.0 && scale.ticks >= 1);
    }
}

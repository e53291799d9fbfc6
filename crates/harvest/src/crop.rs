//! Surveys of a stand, and the crop that they find there.

use crate::{Confidence, Estimate, Measure, Quantity, Sample};
use ground::{Answer, Fault, Faults, Formula, Fresh, Mass, Part, Place, Shown, Text, Working};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Fewer plots than this give a warning: *common practice, no source*.
const FEW_PLOTS: usize = 10;
/// Fewer weighed pieces than this give a warning: *common practice, no source*.
const FEW_PIECES: usize = 10;

/// What was found in the plots.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Plots {
    /// Pieces counted in each.
    Pieces(Vec<u32>),
    /// Fresh mass clipped and weighed in each.
    Weights(Vec<Mass<Fresh>>),
}

impl Plots {
    fn len(&self) -> usize {
        match self {
            Self::Pieces(counts) => counts.len(),
            Self::Weights(weights) => weights.len(),
        }
    }

    fn values(&self) -> Vec<f64> {
        match self {
            Self::Pieces(counts) => counts.iter().copied().map(f64::from).collect(),
            Self::Weights(weights) => weights.iter().map(|mass| mass.g()).collect(),
        }
    }
}

/// A survey as it was written down: equal plots, drawn at random from all that the stand holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SurveyNotes {
    /// The day of the survey.
    pub on: Date,
    /// The stand it was made at, for workings.
    pub stand: String,
    /// The part that was counted or weighed.
    pub part: Part,
    /// How many plots of this size the stand holds in all.
    pub plots_in_stand: u32,
    /// What was found in each plot that was drawn.
    pub plots: Plots,
    /// Weights of single pieces, best of ten picked without choosing.
    #[serde(default)]
    pub piece_weights: Vec<Mass<Fresh>>,
}

/// A survey whose notes make sense.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "SurveyNotes", into = "SurveyNotes")]
pub struct Survey(SurveyNotes);

impl Survey {
    /// Takes the notes of a survey.
    ///
    /// # Errors
    /// No plot at all; more plots than the stand holds; a weight that is not a finite number or lies
    /// below zero; a piece that weighs nothing.
    pub fn new(notes: SurveyNotes) -> Result<Self, Faults> {
        let at = |field: &str| Place::entry("survey", &notes.stand, field);
        let mut faults = Faults::none();
        let drawn = notes.plots.len();
        if drawn == 0 {
            faults.add(Fault::new("survey-no-plots", at("plots"), "0"));
        }
        if drawn > notes.plots_in_stand as usize {
            let fault = Fault::new("survey-too-many-plots", at("plots"), drawn.to_string());
            faults.add(fault.with("all", notes.plots_in_stand));
        }
        let fits = |value: &f64| value.is_finite() && *value >= 0.0;
        for value in notes.plots.values().iter().filter(|value| !fits(value)) {
            faults.add(Fault::new("survey-weight", at("plots"), value.to_string()));
        }
        let pieces = notes.piece_weights.iter().map(|mass| mass.g());
        for value in pieces.filter(|value| !(value.is_finite() && *value > 0.0)) {
            faults.add(Fault::new("survey-piece-weight", at("piece_g"), value.to_string()));
        }
        faults.or(Self(notes))
    }

    /// The notes.
    #[must_use]
    pub fn notes(&self) -> &SurveyNotes {
        &self.0
    }

    /// What a piece weighs; nothing unless two or more were weighed.
    #[must_use]
    pub fn piece(&self) -> Option<Estimate> {
        let weights: Vec<_> = self.0.piece_weights.iter().map(|mass| mass.g()).collect();
        Sample::of(&weights).map(|sample| sample.mean_of(None, Confidence::NINETEEN_IN_TWENTY))
    }

    /// The crop of the stand, in grams or pieces.
    ///
    /// Refused for a single plot, whose spread nobody knows, and when pieces were counted and grams
    /// are asked without any piece having been weighed, or the other way round.
    pub fn crop(&self, measure: Measure) -> Answer<Crop> {
        let Some(sample) = Sample::of(&self.0.plots.values()) else {
            return Answer::refused(
                Text::new("harvest-one-plot").with("stand", self.0.stand.as_str()),
                Text::new("harvest-settle-more-plots").with("stand", self.0.stand.as_str()),
            );
        };
        match (&self.0.plots, measure, self.piece()) {
            (Plots::Pieces(_), Measure::Pieces, _) | (Plots::Weights(_), Measure::Mass, _) => {
                Answer::Known(self.plain(sample, measure))
            }
            (Plots::Pieces(_), Measure::Mass, Some(piece)) => {
                Answer::Known(self.weighed(sample, piece))
            }
            (Plots::Pieces(_), Measure::Mass, None) => Answer::refused(
                Text::new("harvest-piece-weight-unknown").with("stand", self.0.stand.as_str()),
                Text::new("harvest-settle-weigh-ten").with("part", part_text(self.0.part)),
            ),
            (Plots::Weights(_), Measure::Pieces, _) => Answer::refused(
                Text::new("harvest-pieces-not-counted").with("stand", self.0.stand.as_str()),
                Text::new("harvest-settle-count-pieces").with("stand", self.0.stand.as_str()),
            ),
        }
    }

    /// The crop in the measure in which the plots were taken.
    fn plain(&self, sample: Sample, measure: Measure) -> Crop {
        let total = sample.total_of(self.0.plots_in_stand, Confidence::NINETEEN_IN_TWENTY);
        let found = sample.mean() * f64::from(sample.n());
        let working = |at_least| self.working(at_least, Vec::new());
        self.found(measure, total, found, sample, working)
    }

    /// Pieces times the weight of a piece.
    fn weighed(&self, sample: Sample, piece: Estimate) -> Crop {
        let usual = Confidence::NINETEEN_IN_TWENTY;
        let count = sample.total_of(self.0.plots_in_stand, usual);
        let found = sample.mean() * f64::from(sample.n()) * piece.low.max(0.0);
        let weight = Working::input(
            Text::new("harvest-what-piece"),
            Quantity::of(Measure::Mass, piece.value).shown(),
            self.place("piece_g"),
        );
        let working = |at_least| self.working(at_least, vec![weight]);
        self.found(Measure::Mass, count.times(&piece, usual), found, sample, working)
    }

    fn found(
        &self,
        measure: Measure,
        total: Estimate,
        found: f64,
        sample: Sample,
        working: impl FnOnce(Shown) -> Working,
    ) -> Crop {
        let at_least = Quantity::of(measure, total.low.max(found));
        Crop {
            total,
            expected: Quantity::of(measure, total.value),
            at_least,
            warnings: self.warnings(total, sample),
            working: working(at_least.shown()),
        }
    }

    fn working(&self, at_least: Shown, mut from: Vec<Working>) -> Working {
        let n = self.0.plots.len();
        let plots = Text::new("harvest-what-plots").with("n", n);
        let value = Shown::Words(
            Text::new("harvest-plots-of").with("n", n).with("all", self.0.plots_in_stand),
        );
        from.insert(0, Working::input(plots, value, self.place("plots")));
        let formula = Formula::published(
            "harvest.crop",
            "max(N·mean − t·N·√((1 − n/N)·s²/n), what was counted)",
            "cochran77",
        );
        Working::computed(Text::new("harvest-what-at-least"), at_least, formula, from)
    }

    fn warnings(&self, total: Estimate, sample: Sample) -> Vec<Text> {
        let mut warnings = Vec::new();
        let plots = self.0.plots.len();
        if plots < FEW_PLOTS && plots < self.0.plots_in_stand as usize {
            warnings.push(Text::new("harvest-few-plots").with("n", plots));
        }
        if total.low < 0.0 {
            warnings.push(Text::new("harvest-reaches-below-zero"));
        }
        let counted = matches!(self.0.plots, Plots::Pieces(_));
        if counted && sample.dispersion().is_some_and(|d| d.is_clumped()) {
            warnings.push(Text::new("harvest-clumped"));
        }
        let weighed = self.0.piece_weights.len();
        if (1..FEW_PIECES).contains(&weighed) {
            warnings.push(Text::new("harvest-few-weighed").with("n", weighed));
        }
        warnings
    }

    fn place(&self, field: &str) -> Place {
        Place::entry("survey", &self.0.stand, field)
    }
}

impl TryFrom<SurveyNotes> for Survey {
    type Error = Faults;

    fn try_from(notes: SurveyNotes) -> Result<Self, Faults> {
        Self::new(notes)
    }
}

impl From<Survey> for SurveyNotes {
    fn from(survey: Survey) -> Self {
        survey.0
    }
}

/// What stands there, as far as a survey can tell.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Crop {
    /// The total, with standard error and interval, in grams or pieces.
    pub total: Estimate,
    /// The total in one number.
    pub expected: Quantity,
    /// What the stand holds at least, on which allowances rest: the lower end of the interval, or
    /// what was counted in the plots where that is more.
    pub at_least: Quantity,
    /// What to mind.
    pub warnings: Vec<Text>,
    /// How `at_least` came about.
    pub working: Working,
}

/// The word for a part, as a message.
pub(crate) fn part_text(part: Part) -> Text {
    Text::new(format!("part-{part}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn notes(plots: Plots, piece_g: &[f64]) -> SurveyNotes {
        SurveyNotes {
            on: jiff::civil::date(2027, 5, 1),
            stand: "bank".to_owned(),
            part: Part::Leaf,
            plots_in_stand: 50,
            plots,
            piece_weights: piece_g.iter().copied().map(Mass::from_g).collect(),
        }
    }

    fn survey(plots: &[u32], piece_g: &[f64]) -> Survey {
        Survey::new(notes(Plots::Pieces(plots.to_vec()), piece_g)).unwrap()
    }

    fn crop(survey: &Survey, measure: Measure) -> Crop {
        survey.crop(measure).ok().unwrap()
    }

    const PLOTS: [u32; 10] = [26, 18, 14, 25, 10, 20, 15, 42, 25, 8];

    #[test]
    fn notes_that_make_no_sense_give_all_their_faults() {
        let bad = SurveyNotes {
            plots_in_stand: 1,
            ..notes(Plots::Weights(vec![Mass::from_g(-1.0), Mass::from_g(f64::NAN)]), &[0.0])
        };
        let codes: Vec<_> =
            Survey::new(bad).unwrap_err().iter().map(|fault| fault.code.clone()).collect();
        let weights = codes.iter().filter(|code| *code == "survey-weight").count();
        assert_eq!((codes.len(), weights), (4, 2), "{codes:?}");
    }

    #[test]
    fn one_plot_and_an_unweighed_piece_are_questions() {
        assert!(survey(&[12], &[]).crop(Measure::Pieces).known().is_none());
        assert!(survey(&PLOTS, &[]).crop(Measure::Mass).known().is_none());
        assert!(survey(&PLOTS, &[2.0]).crop(Measure::Mass).known().is_none());
    }

    #[test]
    fn the_doubt_of_a_piece_widens_the_doubt_of_the_crop() {
        let exact = crop(&survey(&PLOTS, &[2.0; 10]), Measure::Mass);
        let weights = [1.0, 3.0, 1.5, 2.5, 2.0, 2.0, 1.2, 2.8, 1.8, 2.2];
        let doubtful = crop(&survey(&PLOTS, &weights), Measure::Mass);
        assert_eq!(exact.expected, Quantity::Mass(Mass::from_g(2030.0)));
        assert!((doubtful.expected.number() - 2030.0).abs() < 1e-9);
        assert!(doubtful.at_least.number() < exact.at_least.number());
    }

    /// A stand holds at least what was counted in it, whatever the interval says.
    #[test]
    fn what_was_counted_is_there() {
        let clump = [3, 4, 4, 4, 14, 23, 247, 63, 2, 10];
        let found = crop(&survey(&clump, &[]), Measure::Pieces);
        assert!(found.total.low < 0.0);
        assert!((found.at_least.number() - 374.0).abs() < 1e-9);
        let warned: Vec<_> = found.warnings.iter().map(|text| text.id.as_str()).collect();
        assert_eq!(warned, ["harvest-reaches-below-zero", "harvest-clumped"]);
    }

    #[test]
    fn a_full_count_has_no_doubt() {
        let all = Survey::new(SurveyNotes {
            plots_in_stand: 3,
            ..notes(Plots::Pieces(vec![5, 6, 10]), &[])
        })
        .unwrap();
        assert_eq!(crop(&all, Measure::Pieces).at_least.number(), 21.0);
    }
}

//! What the reader is used to, as it is said on the command line.

use clap::{Args, ValueEnum};
use page::{DateOrder, Habits, Measures};

/// In which measures and in which order of dates a reply is said. JSON and calendar files stay as they are.
#[derive(Args)]
#[command(next_help_heading = "Options of every command")]
pub(crate) struct HabitArgs {
    /// Measures to say beside the metric amounts
    #[arg(long, global = true, value_enum, value_name = "WHOSE", default_value = "metric")]
    measures: MeasuresArg,
    /// Order of dates; the month is always a word
    #[arg(long, global = true, value_enum, value_name = "ORDER", default_value = "day-month-year")]
    dates: DatesArg,
}

#[derive(Clone, Copy, ValueEnum)]
enum MeasuresArg {
    Metric,
    Us,
    Imperial,
}

#[derive(Clone, Copy, ValueEnum)]
enum DatesArg {
    DayMonthYear,
    MonthDayYear,
    YearMonthDay,
}

impl HabitArgs {
    /// The habits that were named.
    pub(crate) fn habits(&self) -> Habits {
        let measures = match self.measures {
            MeasuresArg::Metric => Measures::Metric,
            MeasuresArg::Us => Measures::Us,
            MeasuresArg::Imperial => Measures::Imperial,
        };
        let dates = match self.dates {
            DatesArg::DayMonthYear => DateOrder::DayMonthYear,
            DatesArg::MonthDayYear => DateOrder::MonthDayYear,
            DatesArg::YearMonthDay => DateOrder::YearMonthDay,
        };
        Habits { measures, dates }
    }
}

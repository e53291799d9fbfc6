//! How a reply is printed: as a page or as JSON, how wide, and with which letters.

use clap::Args;
use desk::Reply;
use page::{Style, Words, text, view};
use std::env;
use std::io::{self, IsTerminal as _};

/// The widest that a line is set on a terminal: beyond it the eye loses the next line.
const WIDEST: usize = 120;
/// Columns of a terminal that does not say how wide it is.
const USUAL: usize = 80;

/// How a reply is printed.
#[derive(Args)]
#[command(next_help_heading = "Options of every command")]
pub(crate) struct ScreenArgs {
    /// Print the reply as JSON, with every sentence beside its message
    #[arg(long, global = true)]
    json: bool,
    /// Columns to fill; the terminal's when left out, without end where there is none
    #[arg(long, global = true, value_name = "N", value_parser = clap::value_parser!(u16).range(20..))]
    width: Option<u16>,
    /// Open what opens on demand: workings, and what stands behind a line
    #[arg(long, global = true)]
    open: bool,
    /// Plain characters only, as when NO_COLOR is set
    #[arg(long, global = true)]
    no_color: bool,
}

/// What the reply is printed on.
pub(crate) struct Screen {
    json: bool,
    open: bool,
    width: Option<usize>,
    style: Style,
}

impl Screen {
    /// The screen that was asked for, or else the one there is.
    pub(crate) fn of(args: &ScreenArgs) -> Self {
        let on_terminal = io::stdout().is_terminal();
        let plain = args.no_color || !on_terminal || is_set("NO_COLOR") || is_dumb();
        let style = if plain { Style::Plain } else { Style::Ansi };
        let terminal = || on_terminal.then(terminal_width);
        let width = args.width.map(usize::from).or_else(terminal);
        Self { json: args.json, open: args.open, width, style }
    }

    /// The same, as wide as a terminal where there is none: for what is read line by line.
    pub(crate) fn of_a_dialogue(args: &ScreenArgs) -> Self {
        let screen = Self::of(args);
        Self { width: screen.width.or(Some(USUAL)), ..screen }
    }

    /// Whether a program reads it.
    pub(crate) fn is_json(&self) -> bool {
        self.json
    }

    /// A reply as it is printed.
    pub(crate) fn render(&self, reply: &Reply, words: &Words<'_>) -> io::Result<String> {
        if self.json {
            let document = words.catalogue.add_texts(serde_json::to_value(reply)?);
            return Ok(serde_json::to_string_pretty(&document)? + "\n");
        }
        let page = view(reply, words);
        let page = if self.open { page.opened() } else { page };
        Ok(text(&page, self.width, self.style))
    }
}

fn terminal_width() -> usize {
    let known = terminal_size::terminal_size();
    known.map_or(USUAL, |(width, _)| usize::from(width.0).min(WIDEST))
}

fn is_set(variable: &str) -> bool {
    env::var_os(variable).is_some_and(|value| !value.is_empty())
}

fn is_dumb() -> bool {
    env::var_os("TERM").is_some_and(|term| term == "dumb")
}

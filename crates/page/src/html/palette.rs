//! The colours: paper, ink and one accent. None of them tells anything that a word or a shape does
//! not tell.

use std::fmt::Write as _;

/// A colour with the name that the style sheet uses.
struct Colour {
    name: &'static str,
    rgb: [u8; 3],
}

/// Colours for one light, each light with the same names.
type Palette = [Colour; 7];

/// By day.
const DAY: Palette = [
    colour("paper", 0xfb_f9_f3),
    colour("shade", 0xf1_ed_e1),
    colour("ink", 0x1c_1e_19),
    colour("pale-ink", 0x45_45_3d),
    colour("line", 0x82_7d_6c),
    colour("accent", 0x5a_2a_4c),
    colour("white", 0xff_ff_ff),
];

/// For eyes that are used to dusk.
const DUSK: Palette = [
    colour("paper", 0x14_15_0f),
    colour("shade", 0x23_24_1d),
    colour("ink", 0xef_e9_d8),
    colour("pale-ink", 0xd5_cf_bd),
    colour("line", 0x8f_8a_78),
    colour("accent", 0xe3_b6_d6),
    colour("white", 0x1d_1e_17),
];

/// For weak eyes and full sun.
const CONTRAST: Palette = [
    colour("paper", 0xff_ff_ff),
    colour("shade", 0xff_ff_ff),
    colour("ink", 0x00_00_00),
    colour("pale-ink", 0x00_00_00),
    colour("line", 0x00_00_00),
    colour("accent", 0x00_00_00),
    colour("white", 0xff_ff_ff),
];

const fn colour(name: &'static str, rgb: u32) -> Colour {
    let [_, red, green, blue] = rgb.to_be_bytes();
    Colour { name, rgb: [red, green, blue] }
}

impl Colour {
    fn written(&self) -> String {
        let [red, green, blue] = self.rgb;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// The colour of the paper by day, as the style sheet writes it.
pub(super) fn paper() -> String {
    DAY.iter().find(|colour| colour.name == "paper").map(Colour::written).unwrap_or_default()
}

/// The colours by day as variables of the style sheet.
pub(super) fn variables() -> String {
    rule(":root", &DAY, "light")
}

/// The colours of the other lights, for a document that says in `data-looks` which one is meant.
pub(super) fn other_lights() -> String {
    rule("[data-looks=\"dusk\"]", &DUSK, "dark")
        + &rule("[data-looks=\"contrast\"]", &CONTRAST, "light")
}

fn rule(of: &str, palette: &Palette, scheme: &str) -> String {
    let mut style = format!("{of} {{ color-scheme: {scheme};");
    for colour in palette {
        // Writing to a string cannot fail.
        let _ = write!(style, " --{}: {};", colour.name, colour.written());
    }
    style + " }\n"
}

#[cfg(test)]
mod tests {
    use super::*;

    fn find(palette: &Palette, name: &str) -> [u8; 3] {
        palette.iter().find(|colour| colour.name == name).unwrap().rgb
    }

    /// Relative luminance (WCAG 2.2, definition of that term).
    fn luminance(rgb: [u8; 3]) -> f64 {
        let [red, green, blue] = rgb.map(|channel| {
            let share = f64::from(channel) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
        });
        0.2126 * red + 0.7152 * green + 0.0722 * blue
    }

    /// Contrast ratio (WCAG 2.2, definition of that term).
    fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    /// The extremes that WCAG 2.2 names: 1 to 21.
    #[test]
    fn black_on_white_is_21_to_1() {
        assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-12);
        assert_eq!(contrast([90; 3], [90; 3]), 1.0);
    }

    /// WCAG 2.2, success criterion 1.4.6 (AAA): 7 to 1.
    #[test]
    fn every_letter_stands_out_7_to_1_from_whatever_it_stands_on() {
        for palette in [DAY, DUSK, CONTRAST] {
            for ink in ["ink", "pale-ink", "accent"] {
                for ground in ["paper", "shade", "white"] {
                    let ratio = contrast(find(&palette, ink), find(&palette, ground));
                    assert!(ratio >= 7.0, "{ink} on {ground}: {ratio:.2}");
                }
            }
        }
    }

    /// WCAG 2.2, success criterion 1.4.11 (AA): 3 to 1.
    #[test]
    fn every_line_stands_out_3_to_1() {
        for palette in [DAY, DUSK, CONTRAST] {
            for ground in ["paper", "shade", "white"] {
                let ratio = contrast(find(&palette, "line"), find(&palette, ground));
                assert!(ratio >= 3.0, "{ground}: {ratio:.2}");
            }
        }
    }

    #[test]
    fn the_style_sheet_uses_no_colour_beside_the_palette() {
        let style = super::super::STYLE;
        let used = style.split("var(--").skip(1);
        for name in used.filter_map(|rest| rest.split(')').next()) {
            find(&DAY, name);
        }
        let colours = style.split('#').skip(1);
        let mut colours = colours.filter(|rest| rest.starts_with(|c: char| c.is_ascii_hexdigit()));
        assert!(colours.all(|rest| rest.starts_with("000;") || rest.starts_with("fff;")));
    }
}

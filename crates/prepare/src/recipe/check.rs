//! What makes a recipe workable: checked once when it is read, all faults at once.

use super::{Heat, Ingredient, Recipe, Step, What};
use ground::{Dimension, Fault, Faults, Place, SaidUnit, Spoken};
use std::collections::BTreeSet;

impl Recipe {
    /// The recipe itself, once its rows were found workable.
    ///
    /// # Errors
    /// Every row that cannot be worked, each with its place: amounts in the wrong unit, a count of
    /// herbs that is not one, spirit or sugar on the fire, a step out of order.
    pub fn checked(self) -> Result<Self, Faults> {
        let mut check = Check { recipe: &self, faults: Faults::none() };
        check.serving();
        check.ingredients();
        check.steps();
        check.order();
        let faults = check.faults;
        faults.or(self)
    }
}

struct Check<'a> {
    recipe: &'a Recipe,
    faults: Faults,
}

impl Check<'_> {
    fn fault(&mut self, code: &str, field: &str, got: &str) {
        let at = Place::entry("recipe", &self.recipe.id, field);
        self.faults.add(Fault::new(code, at, got));
    }

    /// An amount above nothing in one of these dimensions.
    fn amount(&mut self, field: &str, said: &Spoken, fits: &[Dimension]) {
        if !fits.contains(&dimension(said)) {
            self.fault("recipe-unit", field, &said.written);
        }
        if said.amount.low <= 0.0 {
            self.fault("recipe-nothing", field, &said.written);
        }
    }

    fn serving(&mut self) {
        let serving = &self.recipe.serving;
        self.amount("serving", serving, &[Dimension::Volume, Dimension::Mass]);
        if self.recipe.times_a_day == Some(0) {
            self.fault("recipe-nothing", "times_a_day", "0");
        }
    }

    fn ingredients(&mut self) {
        let mut seen = BTreeSet::new();
        for (at, step) in self.recipe.steps.iter().enumerate() {
            let Some(ingredient) = step.ingredient() else {
                continue;
            };
            let field = format!("step {}", at + 1);
            self.ingredient(&field, ingredient);
            if ingredient.what != What::Other && !seen.insert(ingredient.what) {
                self.fault("recipe-twice", &field, ingredient.what.word());
            }
        }
        if !seen.contains(&What::Herb) {
            self.fault("recipe-no-herb", "step", "");
        }
    }

    fn ingredient(&mut self, field: &str, ingredient: &Ingredient) {
        let fits: &[Dimension] = match ingredient.what {
            What::Herb => &[Dimension::Mass, Dimension::Volume],
            What::Water | What::Spirit => &[Dimension::Volume],
            What::Sugar | What::Other => &[Dimension::Mass],
        };
        self.amount(field, &ingredient.amount, fits);
        if let Some(strength) = &ingredient.strength {
            self.amount(field, strength, &[Dimension::AlcoholShare]);
        }
        if ingredient.strength.is_some() != (ingredient.what == What::Spirit) {
            self.fault("recipe-strength", field, ingredient.what.word());
        }
    }

    fn steps(&mut self) {
        for (at, step) in self.recipe.steps.iter().enumerate() {
            let field = format!("step {}", at + 1);
            match step {
                Step::Steep { time, .. } | Step::Simmer { time, .. } | Step::Rest { time } => {
                    self.amount(&field, time, &[Dimension::Duration]);
                }
                Step::Reduce { to } => self.share(&field, to),
                Step::Dissolve { to, of } => {
                    self.amount(&field, to, &[Dimension::Sweetness, Dimension::MassShare]);
                    of.iter().for_each(|of| self.share(&field, of));
                }
                Step::Dry { to } => self.share(&field, to),
                Step::Add(_) | Step::Mix(_) | Step::Strain { .. } | Step::Press { .. } => {}
            }
        }
    }

    /// A share above nothing and below, or at, one.
    fn share(&mut self, field: &str, said: &Spoken) {
        self.amount(field, said, &[Dimension::Number]);
        if let SaidUnit::Fixed(unit) = said.unit
            && unit.to_base(said.amount.high) > 1.0
        {
            self.fault("recipe-share", field, &said.written);
        }
    }

    /// Spirit and syrup stay off the fire, and only what was strained is sweetened.
    fn order(&mut self) {
        let mut inside = BTreeSet::new();
        let (mut hot, mut strained, mut finished) = (false, false, false);
        for (at, step) in self.recipe.steps.iter().enumerate() {
            let field = format!("step {}", at + 1);
            inside.extend(step.ingredient().map(|ingredient| ingredient.what));
            hot |= step.heats()
                || step.ingredient().is_some_and(|one| one.heat == Some(Heat::Boiling));
            // What was left alone is cold.
            hot &= !matches!(step, Step::Rest { .. });
            match step {
                _ if hot && inside.contains(&What::Spirit) => {
                    self.fault("recipe-heats-spirit", &field, step.word());
                }
                Step::Dissolve { .. } | Step::Mix(_) if !strained => {
                    self.fault("recipe-before-straining", &field, step.word());
                }
                Step::Strain { .. } | Step::Press { .. } if finished => {
                    self.fault("recipe-after-straining", &field, step.word());
                }
                Step::Strain { .. } | Step::Press { .. } => strained = true,
                Step::Dissolve { .. } | Step::Mix(_) => finished = true,
                Step::Dry { .. } if self.recipe.holds().next().is_some() => {
                    self.fault("recipe-dries-and-strains", &field, step.word());
                }
                Step::Simmer { .. } | Step::Reduce { .. } if strained => {
                    self.fault("recipe-after-straining", &field, step.word());
                }
                Step::Add(_) if strained => {
                    self.fault("recipe-after-straining", &field, step.word());
                }
                _ => {}
            }
        }
    }
}

/// What an amount measures; kitchen measures are volumes.
fn dimension(said: &Spoken) -> Dimension {
    match said.unit {
        SaidUnit::Fixed(unit) => unit.dimension(),
        SaidUnit::Kitchen(_) => Dimension::Volume,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::{Sourcing, Standing};

    fn recipe(steps: &str) -> Recipe {
        let steps = serde_json::from_str(steps).unwrap();
        Recipe {
            id: "test".to_owned(),
            name: "test".to_owned(),
            form: ground::Form::Infusion,
            serving: "1 cup".parse().unwrap(),
            times_a_day: None,
            steps,
            from: Sourcing::bare(Standing::Practice),
        }
    }

    fn codes(steps: &str) -> Vec<String> {
        let faults = recipe(steps).checked().unwrap_err();
        faults.into_iter().map(|fault| fault.code).collect()
    }

    #[test]
    fn a_plain_tea_is_workable() {
        let tea = r#"[
            {"add": {"what": "herb", "amount": "1 tbsp"}},
            {"add": {"what": "water", "amount": "1 cup", "heat": "boiling"}},
            {"steep": {"time": "5 min", "lid": "on"}},
            {"strain": {"holds": "open-pot"}}
        ]"#;
        assert!(recipe(tea).checked().is_ok());
    }

    #[test]
    fn spirit_never_goes_on_the_fire() {
        let hot = r#"[
            {"add": {"what": "herb", "amount": "10 g"}},
            {"add": {"what": "spirit", "amount": "100 ml", "strength": "60 % vol"}},
            {"simmer": {"time": "5 min", "lid": "off"}}
        ]"#;
        assert_eq!(codes(hot), ["recipe-heats-spirit"]);
        let poured = r#"[
            {"add": {"what": "herb", "amount": "10 g"}},
            {"add": {"what": "water", "amount": "100 ml", "heat": "boiling"}},
            {"add": {"what": "spirit", "amount": "100 ml", "strength": "96 % vol"}}
        ]"#;
        assert_eq!(codes(poured), ["recipe-heats-spirit"]);
    }

    #[test]
    fn all_faults_of_a_recipe_come_at_once() {
        let wrong = r#"[
            {"add": {"what": "water", "amount": "5 g"}},
            {"add": {"what": "water", "amount": "0 ml"}},
            {"dissolve": {"to": "60 ml", "of": "2"}},
            {"reduce": {"to": "5 min"}}
        ]"#;
        let mut got = codes(wrong);
        got.sort();
        let mut want = [
            "recipe-before-straining",
            "recipe-no-herb",
            "recipe-nothing",
            "recipe-share",
            "recipe-twice",
            "recipe-unit",
            "recipe-unit",
            "recipe-unit",
        ];
        want.sort_unstable();
        // 5 minutes are a share of five as well as a wrong unit.
        got.dedup();
        let mut want = want.to_vec();
        want.dedup();
        assert_eq!(got, want);
    }

    #[test]
    fn a_field_that_no_operation_has_is_refused() {
        let odd = r#"[{"rest": {"time": "5 min", "with": "care"}}]"#;
        assert!(serde_json::from_str::<Vec<Step>>(odd).is_err());
        let odd = r#"[{"add": {"what": "herb", "amount": "1 g", "colour": "green"}}]"#;
        assert!(serde_json::from_str::<Vec<Step>>(odd).is_err());
    }
}

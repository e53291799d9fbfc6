//! Mix-ups that were told: whether the sheets of the two plants know of them.

use super::{Lack, Notes};
use crate::Flora;
use crate::flora::MIX_UP_TABLE;
use ground::Text;

/// A sheet that does not warn of what has happened.
pub(super) fn check(flora: &Flora, notes: &mut Notes<'_>) {
    for mix_up in flora.mix_ups() {
        for (plant, other) in [(&mix_up.was, &mix_up.taken_for), (&mix_up.taken_for, &mix_up.was)] {
            let row = flora.sheet(plant).and_then(|sheet| sheet.look_alikes.get(other));
            if !row.is_some_and(|row| row.confirmed) {
                let text = Text::new("herbal-mix-up-unconfirmed")
                    .taxon("plant", plant)
                    .taxon("other", other)
                    .with("mix_up", mix_up.id.as_str());
                notes.add(Lack::Contradictory, (MIX_UP_TABLE, &mix_up.id, ""), text);
            }
        }
    }
}

//! A school's own files, laid over the herbal.

use crate::file::{Leavings, Reader};
use crate::{Account, Herbal, TextFile};
use ground::Faults;

impl Herbal {
    /// This herbal with further files laid over it.
    ///
    /// The files have the same format and may be partial: what they give replaces what is known, all
    /// else stays. Characters, months and look-alikes are replaced one by one; `use`, `relatives` and
    /// lists of names whole; sources are added, never replaced, since facts lean on them. A species,
    /// character or group that the herbal does not know must be complete.
    ///
    /// # Errors
    /// Every fault in the files, with its line and column.
    pub fn overlay(&self, files: &[TextFile]) -> Result<Self, Faults> {
        let over = self.overlay_with_account(files, &Account::default());
        over.map(|(herbal, _)| herbal)
    }

    /// The same, and the account of the two readings; `account` is that of this herbal.
    ///
    /// # Errors
    /// Every fault in the files, with its line and column.
    pub fn overlay_with_account(
        &self,
        files: &[TextFile],
        account: &Account,
    ) -> Result<(Self, Account), Faults> {
        let mut reader = Reader::over(files, &self.sources);
        let flora = self.flora.overlaid(&mut reader);
        let kitchen = self.kitchen.overlaid(&mut reader);
        let uses = self.uses.overlaid(&mut reader, &flora);
        let land = self.land.overlaid(&mut reader);
        let day = self.day.overlaid(&mut reader);
        let Leavings { sources, account: later, faults } = reader.finish();
        let herbal = Self { sources, flora, uses, kitchen, land, day };
        faults.or((herbal, account.clone().overlaid(&later)))
    }
}

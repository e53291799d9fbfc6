//! Money as people read it: units, a point, cents, with the sign where one sign means one currency.

use crate::number::spaced;
use crate::{Catalogue, Prose, Words};
use ground::{Cents, Currency};

impl Catalogue {
    /// An amount of money; below zero, with a true minus.
    ///
    /// ```
    /// use ground::Cents;
    /// let catalogue = page::Catalogue::english();
    /// let said = |cents, code: &str| catalogue.money(Cents::new(cents), code.parse().unwrap());
    /// assert_eq!(said(2650, "GBP"), "£26.50");
    /// assert_eq!(said(-5, "EUR"), "−€0.05");
    /// assert_eq!(said(1_234_500, "USD"), "USD\u{a0}12\u{202F}345.00");
    /// ```
    #[must_use]
    pub fn money(&self, amount: Cents, currency: Currency) -> String {
        let size = amount.get().unsigned_abs();
        let number = spaced(&format!("{}.{:02}", size / 100, size % 100));
        let number = ("number", number.into());
        let said = match currency.code() {
            "GBP" => self.assemble("money-gbp", &[number]),
            "EUR" => self.assemble("money-eur", &[number]),
            code => self.assemble("money-other", &[number, ("code", code.into())]),
        };
        let said = if amount < Cents::ZERO { format!("−{said}") } else { said };
        self.messages.direction.isolated(&said)
    }
}

impl Words<'_> {
    /// An amount of money.
    #[must_use]
    pub fn money(&self, amount: Cents, currency: Currency) -> Prose {
        Prose::new().number(&self.catalogue.money(amount, currency))
    }
}

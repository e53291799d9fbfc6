//! Will it keep, and how strong is it? Recipes worked forwards and backwards.

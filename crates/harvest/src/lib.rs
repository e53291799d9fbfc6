//! May we take it, and how much? Surveys, allowances, land rules, daylight.

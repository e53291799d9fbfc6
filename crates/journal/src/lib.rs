//! What happened: entries, their fold into the state of the school, merging.

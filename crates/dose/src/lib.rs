//! Who may have it, and how much? Exposure, limits, cautions, decisions.

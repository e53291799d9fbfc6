//! Replies become pages: text, HTML and drawings, with every sentence from one catalogue.

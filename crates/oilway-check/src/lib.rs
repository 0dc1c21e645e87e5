//! The independent checker of a finished design: one rule, one file.

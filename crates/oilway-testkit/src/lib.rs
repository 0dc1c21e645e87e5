//! For tests only: published check values and worked jobs.

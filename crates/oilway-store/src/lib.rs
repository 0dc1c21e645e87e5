//! Job files, lock files and survey spreadsheets: reading, writing, old formats.

mod asked;
pub mod assumptions;
mod job;

pub use assumptions::Assumption;
pub use job::{read_job, write_job};

//! Job files, lock files and survey spreadsheets: reading, writing, old formats.
//!
//! [`read_job`] and [`write_job`] turn the text of a job file into a job and back; [`change::set_value`] changes one value of the text and
//! keeps its comments. [`read_lock`] and [`apply_lock`] keep what an earlier run chose. [`files`] saves and loads. What the tool
//! takes where nobody said stands in [`assumptions`].

mod asked;
pub mod assumptions;
mod catalogue_files;
mod catalogue_sheets;
pub mod change;
pub mod files;
mod job;
mod lock;
mod metering;
mod sheets;
mod survey;

pub use assumptions::Assumption;
pub use catalogue_files::{CatalogueFolder, read_catalogue};
pub use catalogue_sheets::{CatalogueSheets, read_catalogue_sheets, write_catalogue_sheets};
pub use job::{lubricant_of_class, lubricant_of_library, read_job, write_job};
pub use lock::{Lock, apply_lock, read_lock, write_lock};
pub use metering::{MeteringInstance, MeteringModel, read_metering};
pub use sheets::SheetMistake;
pub use survey::{Survey, read_survey, survey_template};

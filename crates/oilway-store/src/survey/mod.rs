//! The survey: a workbook that a fitter fills at the machine, and the job file that comes of it.
//!
//! [`survey_template`] makes the empty workbook. [`read_survey`] reads it back, or a table of points as text parted by semicolons,
//! commas or tabs, and names every mistake by sheet, row and column. What was not filled in stays unknown; nothing is guessed.

mod assemble;
mod columns;
mod template;

use oilway_catalogue::Catalogue;
use oilway_catalogue::lubricants::LubricantData;

use crate::job::read_job;
use crate::sheets::{CellPlace, SheetMistake, read_grid};
pub use template::survey_template;

/// A survey as read.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    /// The text of the job file, if nothing is wrong.
    pub job_text: Option<String>,
    /// What is wrong, by sheet, row and column.
    pub mistakes: Vec<SheetMistake>,
}

/// Reads a filled survey.
pub fn read_survey(file: &str, bytes: &[u8], catalogue: &Catalogue, library: &[LubricantData]) -> Survey {
    let (grid, mut mistakes) = read_grid(file, bytes);
    if grid.sheets.is_empty() {
        return Survey { job_text: None, mistakes };
    }
    let (assembly, unread) = assemble::job_text(file, &grid);
    mistakes.extend(unread);
    let wrong = read_job(file, &assembly.text, catalogue, library).1;
    let first = CellPlace { sheet: grid.sheets[0].name.clone(), row: 1, column: 0 };
    mistakes.extend(assembly.in_cells(file, wrong, &first));
    let job_text = mistakes.is_empty().then_some(assembly.text);
    Survey { job_text, mistakes }
}

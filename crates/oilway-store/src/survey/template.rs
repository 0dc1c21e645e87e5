//! The empty workbook of a survey.

use oilway_catalogue::lubricants;
use oilway_physics::points::{KINDS, Wanted};
use oilway_text::{Message, message};
use rust_xlsxwriter::{
    Color, DataValidation, DocProperties, ExcelDateTime, Format, FormatAlign, Formula, Workbook, Worksheet,
    XlsxError,
};

use super::assemble::HINT;
use super::columns::{self, Column, Form};

/// Rows that are prepared with choices.
const PREPARED_ROWS: u32 = 500;

/// The workbook as a file; the same bytes each time.
///
/// # Errors
/// The reason that the writer of workbooks names. Nothing that a user can enter leads there.
pub fn survey_template() -> Result<Vec<u8>, Message> {
    workbook().map_err(|error| message!("store-cannot-make-workbook", reason = error.to_string()))
}

fn workbook() -> Result<Vec<u8>, XlsxError> {
    let mut workbook = Workbook::new();
    // A fixed date, so that the same survey has the same bytes.
    let date = ExcelDateTime::from_ymd(2000, 1, 1)?;
    workbook.set_properties(
        &DocProperties::new().set_title("Survey of lubrication points").set_creation_datetime(&date),
    );
    let look = Look::new();
    let lists = Lists::new();
    site(workbook.add_worksheet(), &look, &lists)?;
    table(workbook.add_worksheet(), "Places", &columns::places(), &look, &lists)?;
    table(workbook.add_worksheet(), "Dividers", &columns::dividers(), &look, &lists)?;
    table(workbook.add_worksheet(), "Points", &columns::points(), &look, &lists)?;
    kinds(workbook.add_worksheet(), &look)?;
    notes(workbook.add_worksheet(), &look)?;
    lists.write(workbook.add_worksheet())?;
    workbook.save_to_buffer()
}

/// How the cells look.
struct Look {
    header: Format,
    hint: Format,
    example: Format,
    answer: Format,
    plain: Format,
}

impl Look {
    fn new() -> Self {
        let wrapped = Format::new().set_text_wrap().set_align(FormatAlign::Top);
        Look {
            header: wrapped.clone().set_bold().set_background_color(Color::RGB(0xD9_E2_EC)),
            hint: wrapped.clone().set_italic().set_font_color(Color::RGB(0x55_55_55)),
            example: wrapped.clone().set_font_color(Color::RGB(0x80_80_80)),
            // Text, so that 6-8 does not become a date.
            answer: Format::new().set_num_format("@").set_background_color(Color::RGB(0xFF_FB_E6)),
            plain: wrapped,
        }
    }
}

/// Choices too long to stand in a cell's rule stand in a sheet of their own.
struct Lists {
    columns: Vec<(String, Vec<String>)>,
}

/// The bound of the file format for choices written into the rule itself.
const INLINE_CHOICES: usize = 255;

impl Lists {
    fn new() -> Self {
        let kinds = KINDS.iter().map(|kind| kind.id().to_owned()).collect();
        let library = lubricants::library().iter().map(|lubricant| lubricant.name.clone()).collect();
        Lists { columns: vec![("kind".to_owned(), kinds), ("lubricant.library".to_owned(), library)] }
    }

    fn rule(&self, column: &Column) -> Result<Option<DataValidation>, XlsxError> {
        if column.choices.is_empty() {
            return Ok(None);
        }
        let length: usize = column.choices.iter().map(|choice| choice.chars().count() + 1).sum();
        let long = self.columns.iter().position(|(key, _)| *key == column.key);
        let rule = match long {
            Some(index) => {
                let letter = char::from(b'A' + u8::try_from(index).unwrap_or(0));
                let last = column.choices.len() + 1;
                DataValidation::new()
                    .allow_list_formula(Formula::new(format!("=Lists!${letter}$2:${letter}${last}")))
            }
            None if length > INLINE_CHOICES => return Ok(None),
            None => DataValidation::new().allow_list_strings(&column.choices)?,
        };
        let rule = rule.set_error_title("Not in the list")?;
        Ok(Some(rule.set_error_message("Choose from the list, or leave the cell empty if nobody knows.")?))
    }

    fn write(&self, sheet: &mut Worksheet) -> Result<(), XlsxError> {
        sheet.set_name("Lists")?;
        for (column, (key, choices)) in (0u16..).zip(&self.columns) {
            sheet.write(0, column, key)?;
            for (row, choice) in (1u32..).zip(choices) {
                sheet.write(row, column, choice)?;
            }
        }
        sheet.set_hidden(true);
        Ok(())
    }
}

fn site(sheet: &mut Worksheet, look: &Look, lists: &Lists) -> Result<(), XlsxError> {
    sheet.set_name("Site")?;
    for (column, (title, width)) in
        (0u16..).zip([("What", 45.0), ("Answer", 40.0), ("How to write it", 50.0), ("Key", 22.0)])
    {
        sheet.write_with_format(0, column, title, &look.header)?;
        sheet.set_column_width(column, width)?;
    }
    for (row, (label, column)) in (1u32..).zip(columns::site()) {
        let label =
            if column.unit.is_empty() { label.to_owned() } else { format!("{label} [{}]", column.unit) };
        sheet.write_with_format(row, 0, label, &look.plain)?;
        sheet.write_blank(row, 1, &look.answer)?;
        sheet.write_with_format(row, 2, &column.hint, &look.hint)?;
        sheet.write_with_format(row, 3, &column.key, &look.hint)?;
        if let Some(rule) = lists.rule(&column)? {
            sheet.add_data_validation(row, 1, row, 1, &rule)?;
        }
    }
    sheet.set_freeze_panes(1, 0)?;
    Ok(())
}

fn table(
    sheet: &mut Worksheet,
    name: &str,
    columns: &[Column],
    look: &Look,
    lists: &Lists,
) -> Result<(), XlsxError> {
    sheet.set_name(name)?;
    for (index, column) in (0u16..).zip(columns) {
        let hint = if index == 0 { format!("{HINT} {}", column.hint) } else { column.hint.clone() };
        sheet.write_with_format(0, index, column.header(), &look.header)?;
        sheet.write_with_format(1, index, hint, &look.hint)?;
        sheet.write_with_format(2, index, column.example, &look.example)?;
        let width = if index == 0 { 30.0 } else { 18.0 };
        sheet.set_column_format(index, &look.answer)?.set_column_width(index, width)?;
        // A list of words cannot be chosen from a list of single words.
        if let Some(rule) = lists.rule(column)?.filter(|_| column.form != Form::Words) {
            sheet.add_data_validation(3, index, 2 + PREPARED_ROWS, index, &rule)?;
        }
    }
    sheet.set_row_height(1, 90.0)?.set_freeze_panes(3, 1)?;
    Ok(())
}

/// What each kind is and what it asks for.
fn kinds(sheet: &mut Worksheet, look: &Look) -> Result<(), XlsxError> {
    sheet.set_name("Kinds")?;
    for (column, (title, width)) in (0u16..).zip([("Kind", 22.0), ("Fill in", 22.0), ("What it means", 90.0)])
    {
        sheet.write_with_format(0, column, title, &look.header)?;
        sheet.set_column_width(column, width)?;
    }
    let mut row = 1;
    for kind in KINDS {
        sheet.write_with_format(row, 0, kind.id(), &look.header)?;
        sheet.write_with_format(row, 2, kind.title(), &look.plain)?;
        row += 1;
        for field in kind.fields() {
            let words = match field.wanted {
                Wanted::Word(words) => format!(" One of: {}.", words.join(", ")),
                Wanted::Quantity { .. } => String::new(),
            };
            let needed = if field.needed { "" } else { " Leave empty where it does not apply." };
            sheet.write_with_format(row, 1, field.name, &look.plain)?;
            sheet.write_with_format(row, 2, format!("{}{words}{needed}", field.meaning), &look.plain)?;
            row += 1;
        }
    }
    Ok(())
}

const NOTES: &[&str] = &[
    "Start with the sheet Site, then Places, Dividers and Points. Rows that begin with EXAMPLE are passed over.",
    "A bare number has the unit that stands above the column. Any other unit may be written behind it: 3/4 in, 60 psi.",
    "A range will do: 6..8. If nobody knows, write unknown; the program goes on with a range and says what it took.",
    "Leave a cell empty where it does not apply to that kind of point; the sheet Kinds tells what each kind asks for.",
    "Before you touch a line or a fitting: stop the machine, lock it against starting, and let down every pressure. Grease \
     at pressure goes through gloves and skin; an injury of that sort is an emergency even if it looks small.",
    "Measure threads with a caliper and a pitch gauge, outside and inside. Do not screw anything in by force to try it.",
    "Photograph each point with a rule beside it, and each nameplate straight from the front.",
];

fn notes(sheet: &mut Worksheet, look: &Look) -> Result<(), XlsxError> {
    sheet.set_name("Notes")?;
    sheet.set_column_width(0, 110.0)?;
    for (row, note) in (0u32..).zip(NOTES) {
        sheet.write_with_format(row, 0, *note, &look.plain)?;
    }
    Ok(())
}

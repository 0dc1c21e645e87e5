//! The catalogue as a workbook and back.

mod common;

use common::told_in_sheets;
use oilway_catalogue::{Catalogue, Part, house};
use oilway_store::{read_catalogue_sheets, write_catalogue_sheets};
use rust_xlsxwriter::Workbook;

/// A part in every detail but the unit in which a quantity was written.
fn detail(part: &Part) -> String {
    format!("{part:?}")
}

#[test]
fn the_house_range_comes_back_from_its_workbook_part_by_part() {
    let bytes = write_catalogue_sheets(house::catalogue()).unwrap();
    assert!(bytes == write_catalogue_sheets(house::catalogue()).unwrap());
    let read = read_catalogue_sheets("parts.xlsx", &bytes, &Catalogue::default());
    assert!(read.mistakes.is_empty(), "{}", told_in_sheets(&read.mistakes));
    let again = Catalogue::new(read.parts);
    assert_eq!(again.parts().count(), house::catalogue().parts().count());
    for part in house::catalogue().parts() {
        assert_eq!(again.part(&part.id).map(|p| detail(p)), Some(detail(part)));
    }
    // The catalogue file that comes of it says the same.
    let text = read.file_text.unwrap();
    let (parts, mistakes) = oilway_catalogue::catalogue_from(&[("parts.toml", &text)]);
    assert_eq!((parts.len(), mistakes.len()), (again.parts().count(), 0));
}

#[test]
fn bad_cells_are_told_by_sheet_row_and_column() {
    let mut workbook = Workbook::new();
    let rows = |workbook: &mut Workbook, name: &str, rows: &[&[&str]]| {
        let sheet = workbook.add_worksheet();
        sheet.set_name(name).unwrap();
        for (row, cells) in (0u32..).zip(rows) {
            for (column, cell) in (0u16..).zip(*cells) {
                sheet.write_string(row, column, *cell).unwrap();
            }
        }
    };
    rows(
        &mut workbook,
        "gauge",
        &[
            &["id", "description", "source", "full_scale", "colour"],
            &["g1", "Gauge.", "dial", "100 bar"],
            &["g2", "Gauge.", "dial", "100"],
            &["g1", "Gauge.", "dial", "250 bar"],
            &["g4", "Gauge.", "dial", "160 bar", "red"],
        ],
    );
    rows(&mut workbook, "toothbrush", &[&["id"], &["t1"]]);
    rows(
        &mut workbook,
        "ports",
        &[
            &["part", "mark", "role", "thread", "sex", "internal"],
            &["g1", "stem", "joint", "G 1/4", "male", "pressure"],
            &["g2", "stem", "joint", "G 1/4", "male", "pressure"],
            &["g4", "stem", "joint", "G 1/7", "male", "pressure"],
            &["g9", "stem", "joint", "G 1/4", "male", "pressure"],
        ],
    );
    let read =
        read_catalogue_sheets("parts.xlsx", &workbook.save_to_buffer().unwrap(), &Catalogue::default());
    assert_eq!(read.parts.iter().map(|p| p.id.as_str()).collect::<Vec<_>>(), ["g1"]);
    assert_eq!(read.file_text, None);
    insta::assert_snapshot!(told_in_sheets(&read.mistakes));
}

//! The survey: the empty workbook, a filled one, and what is told of bad cells.

mod common;

use std::io::Cursor;

use calamine::{Data, Reader, Xlsx, open_workbook_from_rs};
use common::{sound, told_in_sheets};
use oilway_catalogue::{house, lubricants};
use oilway_store::{Survey, read_survey, survey_template};
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook};

fn read(file: &str, bytes: &[u8]) -> Survey {
    read_survey(file, bytes, house::catalogue(), lubricants::library())
}

/// A workbook of these sheets, each a list of rows.
fn workbook(sheets: &[(&str, Vec<Vec<&str>>)]) -> Vec<u8> {
    let mut workbook = Workbook::new();
    for (name, rows) in sheets {
        let sheet = workbook.add_worksheet();
        sheet.set_name(*name).expect("a small workbook");
        for (row, cells) in (0u32..).zip(rows) {
            for (column, cell) in (0u16..).zip(cells).filter(|(_, cell)| !cell.is_empty()) {
                match cell.parse::<f64>() {
                    Ok(number) => sheet.write_number(row, column, number).expect("a small workbook"),
                    Err(_) => sheet.write_string(row, column, *cell).expect("a small workbook"),
                };
            }
        }
    }
    workbook.save_to_buffer().expect("a small workbook")
}

/// A filled survey of two points.
fn filled() -> Vec<(&'static str, Vec<Vec<&'static str>>)> {
    vec![
        (
            "Site",
            vec![
                vec!["What", "Answer", "How", "Key"],
                vec!["Name", "Packing line", "", "name"],
                vec!["Height above the sea [m]", "350", "", "site.altitude"],
                vec!["Lowest air pressure [bar]", "5.5", "", "air.lowest"],
                vec!["Blocked line", "yes", "", "limits.blockage_noticed"],
                vec!["Lubricant", "grease F1", "", "lubricant.library"],
                vec!["Place of the pump", "hall", "", "package.place"],
            ],
        ),
        (
            "Places",
            vec![
                vec!["name", "temperature [°C]", "coldest [°C]", "outdoors", "surroundings"],
                vec!["hall", "", "5", "no", "dust, splash"],
                vec!["cold room", "4", "", "", ""],
            ],
        ),
        (
            "Dividers",
            vec![
                vec!["name", "place", "fed_by", "tube length [m]", "tube rise [m]"],
                vec!["post", "hall", "pump", "6..8", "-1"],
            ],
        ),
        (
            "Points",
            vec![
                vec![
                    "name",
                    "count",
                    "kind",
                    "place",
                    "on",
                    "bore [mm]",
                    "length [mm]",
                    "given quantity",
                    "given interval [h]",
                    "hose length [m]",
                    "thread",
                    "remark",
                ],
                vec!["EXAMPLE", "", "nonsense", "", "", "", "", "", "", "", "", ""],
                vec![
                    "gripper pin",
                    "4",
                    "pin",
                    "hall",
                    "post",
                    "20",
                    "25",
                    "",
                    "",
                    "4",
                    "M6x1",
                    "hard to reach",
                ],
                vec!["ring", "", "as told", "cold room", "post", "", "", "40 g", "200", "", "unknown", ""],
            ],
        ),
    ]
}

#[test]
fn the_empty_workbook_is_the_same_each_time_and_has_its_sheets() {
    let (first, second) = (survey_template().unwrap(), survey_template().unwrap());
    assert!(first == second);
    let book: Xlsx<_> = open_workbook_from_rs(Cursor::new(first)).unwrap();
    assert_eq!(book.sheet_names(), ["Site", "Places", "Dividers", "Points", "Kinds", "Notes", "Lists"]);
}

#[test]
fn the_empty_workbook_reads_as_a_job_without_anything_in_it() {
    let survey = read("survey.xlsx", &survey_template().unwrap());
    let mut keys: Vec<&str> = survey.mistakes.iter().map(|m| m.what.key).collect();
    keys.sort_unstable();
    assert_eq!(
        keys,
        ["store-no-divider", "store-no-place", "store-no-point"],
        "{}",
        told_in_sheets(&survey.mistakes)
    );
}

#[test]
fn the_examples_of_the_empty_workbook_make_a_sound_job() {
    let mut book: Xlsx<_> = open_workbook_from_rs(Cursor::new(survey_template().unwrap())).unwrap();
    let mut sheet = |name: &str| -> Vec<Vec<String>> {
        let range = book.worksheet_range(name).unwrap();
        range.rows().map(|row| row.iter().map(Data::to_string).collect()).collect()
    };
    let mut tables: Vec<(&str, Vec<Vec<String>>)> =
        ["Places", "Dividers", "Points"].into_iter().map(|name| (name, sheet(name))).collect();
    for (_, rows) in &mut tables {
        rows[2][0] = rows[2][0].replace("EXAMPLE ", "");
    }
    // The example of a divider hangs on a junction post, which is fed by the pump.
    let mut junction = tables[1].1[2].clone();
    (junction[0], junction[2]) = ("junction post".to_owned(), "pump".to_owned());
    tables[1].1.push(junction);
    let sheets: Vec<(&str, Vec<Vec<&str>>)> = tables
        .iter()
        .map(|(name, rows)| {
            (*name, rows.iter().map(|row| row.iter().map(String::as_str).collect()).collect())
        })
        .collect();
    let survey = read("survey.xlsx", &workbook(&sheets));
    assert!(survey.mistakes.is_empty(), "{}", told_in_sheets(&survey.mistakes));
    assert_eq!(sound(&survey.job_text.unwrap()).points.len(), 4);
}

#[test]
fn a_filled_workbook_becomes_a_job() {
    let survey = read("survey.xlsx", &workbook(&filled()));
    assert!(survey.mistakes.is_empty(), "{}", told_in_sheets(&survey.mistakes));
    let job = sound(&survey.job_text.unwrap());
    assert_eq!((job.name.as_str(), job.points.len()), ("Packing line", 5));
    assert_eq!(job.conditions.site.altitude.get().metres(), 350.0);
    assert!(job.conditions.limits.blockage_noticed);
    assert_eq!(job.conditions.places[0].surroundings.words, ["dust", "splash"]);
    let run = &job.dividers[0].route[0];
    assert_eq!(
        (run.length.low().metres(), run.length.high().metres(), run.rise.get().metres()),
        (6.0, 8.0, -1.0)
    );
    assert!(job.points[0].route[0].flexible && job.points[0].route[0].length.get().metres() == 4.0);
    let ring = job.points[4].given.as_ref().unwrap();
    // 40 g at 0.89 g/cm³.
    assert!(
        (ring.quantity.get().cubic_centimetres() - 44.94).abs() < 0.01
            && ring.interval.get().hours() == 200.0
    );
}

#[test]
fn bad_cells_are_told_by_sheet_row_and_column() {
    let mut sheets = filled();
    sheets[0].1[3][1] = "55"; // 55 bar of air
    sheets[1].1[1][2] = "warm";
    sheets[2].1[1][2] = "pimp";
    sheets[3].1[2][2] = "pinn";
    sheets[3].1[3][4] = "pots";
    sheets[3].1[3][5] = "20"; // a bore, which this kind does not have
    let survey = read("survey.xlsx", &workbook(&sheets));
    assert_eq!(survey.job_text, None);
    insta::assert_snapshot!(told_in_sheets(&survey.mistakes));
}

#[test]
fn a_table_of_points_as_text_becomes_a_job_with_its_gaps_marked() {
    let text = "name;kind;place;on;bore [mm];length [mm];duty [%]\nchain pin;pin;yard;post;20,5;25;50\ngate pin;pin;yard;post;unknown;30;\n";
    let survey = read("points.csv", text.as_bytes());
    assert!(survey.mistakes.is_empty(), "{}", told_in_sheets(&survey.mistakes));
    let job_text = survey.job_text.unwrap();
    assert!(job_text.contains("does not say what is to be pumped"));
    let job = sound(&job_text);
    assert_eq!((job.name.as_str(), job.points.len(), job.dividers.len()), ("points", 2, 1));
    assert_eq!(job.points[0].duty.get().percent(), 50.0);
    insta::assert_snapshot!(job_text);
}

#[test]
fn mistakes_in_text_are_told_by_row_and_column_too() {
    let survey = read("points.csv", b"name,kind,bore [mm]\na,pin,1.2.3\nb,pinn,4\n");
    let places: Vec<(u32, &str)> = survey.mistakes.iter().map(|m| (m.row, m.column.as_str())).collect();
    assert!(places.contains(&(2, "C")) && places.contains(&(3, "B")), "{}", told_in_sheets(&survey.mistakes));
    // A wrong kind hides no other wrong cell of its row.
    let survey = read("points.csv", b"name,kind,bore [mm],duty [%]\na,pinn,1.2.3,400\n");
    let places: Vec<(u32, &str)> = survey.mistakes.iter().map(|m| (m.row, m.column.as_str())).collect();
    for place in [(2, "B"), (2, "C"), (2, "D")] {
        assert!(places.contains(&place), "{}", told_in_sheets(&survey.mistakes));
    }
    let survey = read("points.csv", b"tag,kind\na,pin\n");
    assert_eq!(survey.mistakes[0].what.key, "store-no-headers");
}

#[test]
fn dates_errors_and_far_off_cells_are_told_and_cost_nothing() {
    let mut workbook = Workbook::new();
    let sheet = workbook.add_worksheet();
    sheet.set_name("Points").unwrap();
    sheet.write_string(0, 0, "name").unwrap().write_string(0, 1, "tube length [m]").unwrap();
    let date = Format::new().set_num_format("d. m.");
    sheet.write_datetime_with_format(1, 1, ExcelDateTime::from_ymd(2000, 8, 6).unwrap(), &date).unwrap();
    sheet.write_formula(2, 1, Formula::new("=1/0").set_result("#DIV/0!")).unwrap();
    sheet.write_string(1_048_575, 16_383, "far off").unwrap();
    let survey = read("survey.xlsx", &workbook.save_to_buffer().unwrap());
    let told: Vec<(&str, u32, &str)> =
        survey.mistakes.iter().take(3).map(|m| (m.what.key, m.row, m.column.as_str())).collect();
    assert_eq!(
        told,
        [
            ("store-cell-date", 2, "B"),
            ("store-cell-error", 3, "B"),
            ("store-cell-too-large", 1_048_576, "XFD")
        ]
    );
}

#[test]
fn a_file_that_unpacks_to_more_than_any_survey_is_refused_before_it_is_read() {
    use std::io::Write;
    let mut bomb = zip::ZipWriter::new(Cursor::new(Vec::new()));
    bomb.start_file("xl/worksheets/sheet1.xml", zip::write::SimpleFileOptions::default()).unwrap();
    let zeros = vec![b' '; 1024 * 1024];
    for _ in 0..65 {
        bomb.write_all(&zeros).unwrap();
    }
    let bytes = bomb.finish().unwrap().into_inner();
    assert!(bytes.len() < 1024 * 1024);
    assert_eq!(read("bomb.xlsx", &bytes).mistakes[0].what.key, "store-unpacks-too-large");
    assert_eq!(read("half.xlsx", &workbook(&filled())[..2000]).mistakes[0].what.key, "store-no-workbook");
}

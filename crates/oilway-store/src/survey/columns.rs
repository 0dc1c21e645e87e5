//! What a survey asks for: its sheets, their columns and how each is to be filled.

use oilway_catalogue::lubricants;
use oilway_physics::points::{KINDS, PointField, Wanted};
use oilway_units::{Dimension, Unit};

use crate::job::SURROUNDINGS;

/// How a cell becomes a value of the job file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// A text, or a quantity in text.
    Text,
    /// Yes or no.
    Flag,
    /// A whole number.
    Whole,
    /// Words parted by commas.
    Words,
}

/// A column of a table, or a row of the sheet of the site.
#[derive(Clone, Debug)]
pub(super) struct Column {
    /// The key in the job file.
    pub(super) key: String,
    /// The unit of a bare number; empty if none.
    pub(super) unit: &'static str,
    /// How to fill it.
    pub(super) hint: String,
    /// What may be chosen; empty if anything.
    pub(super) choices: Vec<String>,
    /// The example.
    pub(super) example: &'static str,
    pub(super) form: Form,
}

impl Column {
    /// What stands above the column: the key and the unit of bare numbers.
    pub(super) fn header(&self) -> String {
        if self.unit.is_empty() { self.key.clone() } else { format!("{} [{}]", self.key, self.unit) }
    }
}

fn column(key: &str, unit: &'static str, example: &'static str, hint: &str) -> Column {
    Column {
        key: key.to_owned(),
        unit,
        hint: hint.to_owned(),
        choices: Vec::new(),
        example,
        form: Form::Text,
    }
}

fn choice(key: &str, choices: &[&str], example: &'static str, hint: &str) -> Column {
    let choices = choices.iter().map(|choice| (*choice).to_owned()).collect();
    Column { choices, ..column(key, "", example, hint) }
}

fn flag(key: &str, example: &'static str, hint: &str) -> Column {
    Column { form: Form::Flag, ..choice(key, &["yes", "no"], example, hint) }
}

fn whole(key: &str, example: &'static str, hint: &str) -> Column {
    Column { form: Form::Whole, ..column(key, "", example, hint) }
}

fn surroundings(example: &'static str) -> Column {
    let words: Vec<&str> = SURROUNDINGS.iter().map(|(word, _)| *word).collect();
    let hint = format!("Parted by commas: {}.", words.join(", "));
    Column { form: Form::Words, ..column("surroundings", "", example, &hint) }
}

/// The sheet of the places.
pub(super) fn places() -> Vec<Column> {
    vec![
        column("name", "", "EXAMPLE washer", "A hall, a cold room, the wall outside."),
        column(
            "temperature",
            "°C",
            "60",
            "Only for a place that is always the same; otherwise the three next.",
        ),
        column("coldest", "°C", "", "Coldest day, or unknown."),
        column("normal", "°C", "", "Usual day, or unknown."),
        column("hottest", "°C", "", "Hottest day, or unknown."),
        flag("outdoors", "no", "Whether the weather cools it."),
        surroundings("hot spray"),
        column("remark", "", "", "For people; the program passes it over."),
    ]
}

/// Columns that become a stretch of line.
pub(super) const TUBE_LENGTH: &str = "tube length";
pub(super) const TUBE_PLACE: &str = "tube place";
pub(super) const TUBE_RISE: &str = "tube rise";
pub(super) const HOSE_LENGTH: &str = "hose length";

fn line() -> Vec<Column> {
    vec![
        column(TUBE_LENGTH, "m", "3", "Fixed line to it, as laid; 6..8 or unknown will do."),
        column(TUBE_PLACE, "", "", "If most of the line runs through another place."),
        column(TUBE_RISE, "m", "", "How much it rises on the way; negative where it falls."),
        column(HOSE_LENGTH, "m", "0.8", "Hose at the end, where something moves."),
    ]
}

/// The sheet of the dividers.
pub(super) fn dividers() -> Vec<Column> {
    let mut columns = vec![
        column("name", "", "EXAMPLE washer post", "A post on the machine from which lines go to points."),
        column("place", "", "washer", "Where it sits: a name of the sheet Places."),
        column("fed_by", "", "junction post", "pump, or the divider before it."),
    ];
    columns.extend(line());
    columns.push(column("remark", "", "", "For people; the program passes it over."));
    columns
}

/// Columns that become what the machine builder states.
pub(super) const GIVEN_QUANTITY: &str = "given quantity";
pub(super) const GIVEN_INTERVAL: &str = "given interval";
pub(super) const GIVEN_FROM: &str = "given from";

/// The sheet of the points: what every point has, then the fields of all kinds, each once.
pub(super) fn points() -> Vec<Column> {
    let kinds: Vec<&str> = KINDS.iter().map(|kind| kind.id()).collect();
    let mut columns = vec![
        column("name", "", "EXAMPLE spray arm pivot", "A tag that nobody else has."),
        whole("count", "4", "Several alike: they are numbered."),
        column("part", "", "spray arm pivot", "What it is on the machine."),
        choice("kind", &kinds, "plain bearing", "See the sheet Kinds."),
        column("place", "", "washer", "A name of the sheet Places."),
        column("on", "", "washer post", "A name of the sheet Dividers."),
        surroundings("hot spray"),
        column(
            "bearing",
            "",
            "",
            "Designation of a rolling bearing: 6210. It fills bore, outside and width.",
        ),
    ];
    columns.extend(fields());
    columns.extend([
        column("duty", "%", "", "Share of the machine's running time in which it moves."),
        column(GIVEN_QUANTITY, "", "", "What the manual asks for each time: 5 g, 2 cm³."),
        column(GIVEN_INTERVAL, "h", "", "Running hours between two times."),
        column(GIVEN_FROM, "", "", "Where that stands: manual, page 12."),
        whole("share", "", "If that is for several ports together: how many."),
        column("back_pressure", "bar", "", "Pressure that it holds against its line, if known."),
        column("thread", "", "M8x1", "As measured or written; unknown will do."),
        flag("critical", "no", "Whether a person or a product is hurt if it leaks or starves."),
        column("at_least_every", "h", "", "If it must be reached at least so often."),
    ]);
    columns.extend(line());
    columns.push(column("remark", "", "", "For people; the program passes it over."));
    columns
}

/// The fields of all kinds, each key once, in the order of the kinds.
fn fields() -> Vec<Column> {
    let mut columns: Vec<Column> = Vec::new();
    for field in KINDS.iter().flat_map(|kind| kind.fields()) {
        let known = columns.iter_mut().find(|column| column.key == field.name);
        match known {
            // A key that measures different things in different kinds needs its unit written.
            Some(column) if column.unit != unit_of(field) => column.unit = "",
            Some(_) => {}
            None => columns.push(field_column(field)),
        }
    }
    columns
}

fn unit_of(field: &PointField) -> &'static str {
    match field.wanted {
        // A share may be meant as 0.6 or as 60 %.
        Wanted::Quantity { dimension: Dimension::Ratio | Dimension::Count, .. } | Wanted::Word(_) => "",
        Wanted::Quantity { dimension, .. } => Unit::main(dimension).symbol(),
    }
}

fn field_column(field: &PointField) -> Column {
    match field.wanted {
        Wanted::Quantity { .. } => column(field.name, unit_of(field), "", field.meaning),
        Wanted::Word(words) => choice(field.name, words, "", field.meaning),
    }
}

/// A row of the sheet of the site: what is asked, and its column.
pub(super) type SiteRow = (&'static str, Column);

/// The sheet of the site, row by row; the key holds the table before the point.
pub(super) fn site() -> Vec<SiteRow> {
    let library: Vec<&str> = lubricants::library().iter().map(|lubricant| lubricant.name.as_str()).collect();
    vec![
        ("Name of the job", column("name", "", "", "Machine and customer.")),
        ("Units in which you like to read", choice("units", &["metric", "us"], "", "")),
        ("The request in the customer's words", column("note", "", "", "")),
        ("Height above the sea", column("site.altitude", "m", "", "Thin air feeds a pump worse.")),
        ("Where in the world", column("site.region", "", "", "Thread customs and papers depend on it.")),
        ("Thread family of the customer", choice("site.threads", &["G", "NPT", "metric", "R"], "", "")),
        (
            "Lowest air pressure while the machine runs",
            column("air.lowest", "bar", "", "Leave all four empty if there is no air."),
        ),
        ("Highest air pressure on an ordinary day", column("air.highest", "bar", "", "")),
        (
            "Highest air pressure that can ever come",
            column("air.possible", "bar", "", "At the compressor's relief; no regulator counts."),
        ),
        ("Pressure dew point of the air", column("air.dew_point", "°C", "", "")),
        ("Electric supply", column("electric.supply", "", "", "24 V DC, 230 V AC")),
        (
            "Free inputs of the controller",
            Column { form: Form::Whole, ..column("electric.inputs", "", "", "") },
        ),
        (
            "Free outputs of the controller",
            Column { form: Form::Whole, ..column("electric.outputs", "", "", "") },
        ),
        ("Running hours of a working day", column("duty.hours_per_day", "h", "", "")),
        ("Working days of a week", column("duty.days_per_week", "", "", "")),
        ("Shortest time between refills that is accepted", column("limits.refill_at_least", "weeks", "", "")),
        ("Oldest grease that is accepted at a point", column("limits.age", "weeks", "", "")),
        ("Must a blocked line be noticed?", flag("limits.blockage_noticed", "", "")),
        ("Only lubricant that may touch food?", flag("limits.food", "", "")),
        ("Lubricant of the library", choice("lubricant.library", &library, "", "Or the rows below.")),
        ("Its name", column("lubricant.name", "", "", "As on the pail.")),
        ("Grease or oil", choice("lubricant.kind", &["grease", "oil"], "", "")),
        (
            "NLGI class of a grease",
            choice("lubricant.class", &["000", "00", "0", "1", "2", "3", "unknown"], "", ""),
        ),
        ("Thickener of a grease", column("lubricant.thickener", "", "", "")),
        ("Base oil of a grease", column("lubricant.base_oil", "", "", "ISO VG 150, or unknown")),
        ("Viscosity grade of an oil", column("lubricant.grade", "", "", "ISO VG 68")),
        ("Place of the pump", column("package.place", "", "", "A name of the sheet Places.")),
    ]
}

//! Kinds of point with random data, as a survey would hold them: invented, in the range of light machinery.

use super::Dice;

pub(super) const THREADS: &[&str] = &["M6x1", "M8x1", "M10x1", "G 1/8"];

/// What the manual of a machine states.
pub(super) fn given(dice: &mut Dice, oil: bool) -> String {
    let quantity =
        if oil { format!("{} cm³", dice.tenths(10, 60)) } else { format!("{} g", dice.tenths(20, 80)) };
    let interval = dice.whole(3, 12) * 8;
    format!("given = {{ quantity = \"{quantity}\", interval = \"{interval} h\", from = \"manual\" }}")
}

/// A kind of point with what is known of it.
pub(super) struct Kind {
    pub(super) id: &'static str,
    pub(super) part: &'static str,
    pub(super) fields: fn(&mut Dice) -> String,
}

pub(super) const KINDS: &[Kind] = &[
    Kind {
        id: "rolling bearing",
        part: "roller",
        fields: |dice| {
            let family = "family = \"ball\"";
            let bearing = dice.one_of(&["6205", "6206", "6207", "6004", "6010", "6014", "6020"]);
            format!("{family}\nbearing = \"{bearing}\"\nspeed = \"{} per min\"", dice.whole(20, 600))
        },
    },
    Kind {
        id: "insert bearing",
        part: "conveyor shaft",
        fields: |dice| {
            let bearing = dice.one_of(&["6206", "6207", "6208", "6209"]);
            format!("bearing = \"{bearing}\"\nspeed = \"{} per min\"", dice.whole(10, 200))
        },
    },
    Kind {
        id: "plain bearing",
        part: "bush",
        fields: |dice| {
            let bore = dice.whole(4, 12) * 5;
            let length = bore + dice.whole(0, 4) * 5;
            let speed = dice.whole(10, 120);
            format!(
                "bore = \"{bore} mm\"\nlength = \"{length} mm\"\nmotion = \"turns\"\nspeed = \"{speed} per min\""
            )
        },
    },
    Kind {
        id: "pin",
        part: "lever pin",
        fields: |dice| {
            let bore = dice.whole(3, 10) * 5;
            let (swing, rate) = (dice.whole(10, 90), dice.whole(2, 20));
            let size = format!("bore = \"{bore} mm\"\nlength = \"{} mm\"", bore + 10);
            format!("{size}\nmotion = \"swings\"\nswing = \"{swing} °\"\nswing_rate = \"{rate} per min\"")
        },
    },
    Kind {
        id: "linear guide",
        part: "carriage",
        fields: |dice| {
            let size = dice.one_of(&[20, 25, 30, 35, 45]);
            let travel = format!("travel_per_cycle = \"{} m\"", dice.tenths(2, 20));
            format!("size = \"{size} mm\"\n{travel}\ncycles = \"{} per min\"", dice.whole(2, 20))
        },
    },
    Kind {
        id: "slideway",
        part: "slide",
        fields: |dice| {
            let (width, length) = (dice.whole(3, 8) * 10, dice.whole(15, 50) * 10);
            format!("width = \"{width} mm\"\nlength = \"{length} mm\"\nfaces = 1")
        },
    },
];

//! From the boxes to the question: lubricant and tube as spoken, and what is taken for every empty box.

use oilway_catalogue::Catalogue;
use oilway_catalogue::kinds::{Medium, MeteringValve, Tube};
use oilway_catalogue::lubricants::library;
use oilway_catalogue::reading::nearest;
use oilway_model::{FlowCurve, Grease, Lubricant, Substance};
use oilway_solve::cold_start::{ColdStart, Push, Stiffness};
use oilway_store::assumptions as assume;
use oilway_store::{lubricant_of_class, lubricant_of_library};
use oilway_text::message;
use oilway_units::{Entry, Length, Pressure, Ratio, Temperature, TemperatureDifference};

use super::boxes::{Boxes, Problem};

const KINDS: [&str; 3] = ["one line", "progressive", "parallel"];
/// A lubricant of which nothing is known.
const UNKNOWN_CLASS: &str = "unknown";
/// One step of the R10 series, where the parts at hand hold no wider tube.
const NEXT: f64 = 1.25;

/// The question, or everything that is wrong with it.
pub(super) fn read(texts: &[String], catalogue: &Catalogue) -> Result<ColdStart, Vec<Problem>> {
    let mut boxes = Boxes::new(texts);
    let outdoors = (Temperature::from_celsius(-50.0), Temperature::from_celsius(60.0));
    let temperature = boxes.entry("temperature", outdoors, &assume::COLDEST_OUTDOORS);
    let grease = stiffness(&mut boxes, outdoors);
    let told = matches!(grease, Some(Stiffness::Told { .. }));
    let rest = rest(&mut boxes, told);
    let metres = (Length::from_metres(0.1), Length::from_metres(1000.0));
    let length = boxes.entry("length", metres, &assume::COLD_LENGTH);
    let bore = bore(&mut boxes);
    let push = push(&mut boxes);
    let (end, reset) = far_end(&mut boxes, catalogue);
    let Some(grease) = grease.filter(|_| boxes.problems.is_empty()) else { return Err(boxes.problems) };
    let wider = next_wider(bore.typical(), catalogue);
    let use_share = Ratio::from_fraction(assume::STALL_USE.typical);
    Ok(ColdStart { temperature, grease, rest, length, bore, wider, push, end, reset, use_share })
}

fn stiffness(boxes: &mut Boxes<'_>, outdoors: (Temperature, Temperature)) -> Option<Stiffness> {
    let halves = (TemperatureDifference::from_kelvins(2.0), TemperatureDifference::from_kelvins(200.0));
    let stress = (Pressure::from_pascals(0.1), Pressure::from_pascals(1e5));
    boxes.either("lubricant", "yield");
    let yield_stress = boxes.said("yield", stress.0, stress.1);
    let at = boxes.said("yield_at", outdoors.0, outdoors.1);
    let halving = boxes.said("halving", halves.0, halves.1);
    if let Some(yield_stress) = yield_stress {
        let halving = halving.unwrap_or_else(|| assume::HALVING.entry());
        return Some(Stiffness::Told { yield_stress, at, halving });
    }
    let mut lubricant = lubricant(boxes)?;
    if let (Some(halving), Substance::Grease(Grease { curve: FlowCurve::Span(span), .. })) =
        (halving, &mut lubricant.substance)
    {
        span.halving = halving;
    }
    Some(Stiffness::Of(lubricant))
}

/// A grease of the library by its name, or one of a class.
fn lubricant(boxes: &mut Boxes<'_>) -> Option<Lubricant> {
    let text = boxes.text("lubricant").unwrap_or(UNKNOWN_CLASS);
    let small = text.to_lowercase();
    let named = library().iter().find(|known| known.name.to_lowercase() == small).map(lubricant_of_library);
    let class = || lubricant_of_class(small.trim_start_matches("nlgi").trim());
    let found = named.or_else(class);
    let oil = found.as_ref().is_some_and(|lubricant| !lubricant.is_grease());
    if let Some(found) = found.filter(|_| !oil) {
        return Some(found);
    }
    if oil {
        let what = message!("oilway-cold-oil", name = text);
        boxes.wrong(what, message!("oilway-cold-oil-cure"));
    } else {
        let cure = match nearest(text, library().iter().map(|known| known.name.as_str())) {
            Some(near) => message!("oilway-perhaps", word = near),
            None => message!("oilway-cold-no-lubricant-cure"),
        };
        boxes.wrong(message!("oilway-cold-no-lubricant", name = text), cure);
    }
    None
}

/// A yield stress that was measured at a filled line holds its rest already.
fn rest(boxes: &mut Boxes<'_>, told: bool) -> Entry<Ratio> {
    let said = boxes.said("rest", Ratio::from_fraction(1.0), Ratio::from_fraction(5.0));
    let taken = || if told { Entry::known(Ratio::from_fraction(1.0)) } else { assume::REST_FACTOR.entry() };
    said.unwrap_or_else(taken)
}

const BORES: (Length, Length) = (Length::from_millimetres(0.5), Length::from_millimetres(200.0));

fn bore(boxes: &mut Boxes<'_>) -> Entry<Length> {
    boxes.either("bore", "tube");
    let said = boxes.said("bore", BORES.0, BORES.1);
    said.or_else(|| tube(boxes)).unwrap_or_else(|| assume::COLD_BORE.entry())
}

/// `10 x 1` in millimetres, `12 mm x 1.5 mm`, or an outside diameter alone: `half inch tube`.
fn tube(boxes: &mut Boxes<'_>) -> Option<Entry<Length>> {
    let text = boxes.text("tube")?.trim_end_matches("tube").trim().replace('×', "x");
    let metric = |text: &str| {
        let bare = text.trim().replace(',', ".").parse::<f64>().is_ok();
        if bare { format!("{} mm", text.trim()) } else { text.trim().to_owned() }
    };
    let Some((outside, wall)) = text.split_once('x') else {
        let outside = boxes.read("tube", &metric(&text), Length::from_millimetres(4.0), BORES.1)?;
        // A small tube has no wall that leaves it less than half its diameter.
        let wall = |si: f64| Length::from_metres(si).min(outside.low() * 0.25);
        let bore = |outside: Length, si: f64| outside - wall(si) * 2.0;
        let walls = &assume::TUBE_WALL;
        return Some(Entry::assumed(
            bore(outside.low(), walls.high),
            bore(outside.typical(), walls.typical),
            bore(outside.high(), walls.low),
            walls.key,
        ));
    };
    let outside = boxes.read("tube", &metric(outside), Length::from_millimetres(1.0), BORES.1)?;
    let wall =
        boxes.read("tube", &metric(wall), Length::from_millimetres(0.1), Length::from_millimetres(50.0))?;
    let (narrow, wide) = (outside.low() - wall.high() * 2.0, outside.high() - wall.low() * 2.0);
    if narrow < BORES.0 {
        let what = message!("oilway-cold-no-bore", outside = outside.low(), wall = wall.high());
        boxes.wrong(what, message!("oilway-cold-no-bore-cure"));
        return None;
    }
    Some(if narrow == wide { Entry::known(narrow) } else { Entry::range(narrow, wide) })
}

fn push(boxes: &mut Boxes<'_>) -> Push {
    boxes.either("pressure", "ratio");
    boxes.either("pressure", "air");
    let bar = Pressure::from_bar;
    if let Some(pressure) = boxes.said("pressure", bar(1.0), bar(2000.0)) {
        return Push::Told(pressure);
    }
    let share = Ratio::from_fraction;
    Push::Air {
        ratio: boxes.entry("ratio", (share(1.0), share(300.0)), &assume::PUMP_RATIO),
        air: boxes.entry("air", (bar(0.2), bar(20.0)), &assume::AIR_LOWEST),
        efficiency: boxes.entry("efficiency", (share(0.1), share(1.0)), &assume::STALL_EFFICIENCY),
    }
}

/// What the far end asks, and below what it recharges.
fn far_end(boxes: &mut Boxes<'_>, catalogue: &Catalogue) -> (Entry<Pressure>, Option<Entry<Pressure>>) {
    let (none, most) = (Pressure::ZERO, Pressure::from_bar(1000.0));
    let (end, reset) = (boxes.said("end", none, most), boxes.said("reset", Pressure::from_bar(0.1), most));
    let kind = boxes.text("kind").unwrap_or(KINDS[0]);
    match kind {
        "one line" => (end.unwrap_or_else(|| Entry::known(none)), reset),
        "progressive" => (end.unwrap_or_else(|| assume::COLD_END.entry()), reset),
        "parallel" => {
            let all = catalogue.of_kind("metering valve").filter_map(|part| MeteringValve::of(part));
            let valves: Vec<_> = all.filter(|valve| valve.lubricants.contains(&Medium::Grease)).collect();
            let of = |pressure: fn(&MeteringValve) -> Pressure| {
                at_valves(&valves.iter().map(pressure).collect::<Vec<_>>())
            };
            let (fires, resets) = (of(|valve| valve.fires_at), of(|valve| valve.resets_below));
            (end.or(fires).unwrap_or_else(|| assume::COLD_END.entry()), reset.or(resets))
        }
        other => {
            let cure = message!("oilway-cold-kind-cure");
            boxes.wrong(message!("oilway-cold-kind", name = other), cure);
            (Entry::known(none), None)
        }
    }
}

/// The span over the valves at hand; none without any.
fn at_valves(pressures: &[Pressure]) -> Option<Entry<Pressure>> {
    let low = pressures.iter().copied().reduce(Pressure::min)?;
    let high = pressures.iter().copied().reduce(Pressure::max)?;
    let middle = Entry::range(low, high).typical();
    Some(Entry::assumed(low, middle, high, "assume-cold-valves"))
}

/// The next wider bore among the tubes at hand.
fn next_wider(bore: Length, catalogue: &Catalogue) -> Length {
    // A hair wider is no remedy.
    let bores = catalogue.of_kind("tube").filter_map(|part| Tube::of(part)).map(|tube| tube.bore());
    bores.filter(|wider| *wider > bore * 1.1).reduce(Length::min).unwrap_or(bore * NEXT)
}

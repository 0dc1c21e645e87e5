//! Who gets what: doses, shares, mean flows, contents, ages, consumption.

use oilway_catalogue::kinds::Reservoir;
use oilway_model::{Divider, End, Side};
use oilway_physics::{How, Term, pipe_flow, progressive, pump};
use oilway_text::message;
use oilway_units::{Count, Flow, Time, Volume};

use super::{Book, named, value};
use crate::hydraulics::bore_of;
use crate::shares::{section_volume, target};

pub(super) fn trace(book: &mut Book<'_>) {
    control(book);
    for (number, node) in book.known.design.network.nodes.iter().enumerate() {
        contents(book, number);
        if let End::Divider(divider) = node.end {
            divider_lines(book, number, divider);
        }
    }
    fed(book);
    for point in 0..book.known.design.points.len() {
        ages(book, point);
    }
    totals(book);
    supply(book);
}

/// The first divider, where the pump's flow arrives.
fn first_divider(book: &Book<'_>) -> Option<usize> {
    let nodes = &book.known.design.network.nodes;
    let first = |n: &&oilway_model::Node| {
        matches!(n.end, End::Divider(_)) && n.parent.is_none_or(|p| nodes[p].end == End::Pump)
    };
    nodes.iter().filter(first).find_map(|n| if let End::Divider(d) = n.end { Some(d) } else { None })
}

fn control(book: &mut Book<'_>) {
    let (design, shares) = (book.known.design, book.known.shares);
    let control = &design.control;
    let considered = design.points.iter().map(|p| named(format!("point.{}.required", p.name))).collect();
    book.choice("pause", control.pause, considered);
    let cycles = Count::from_number(f64::from(control.cycles));
    book.solved("control.cycles", cycles, message!("solve-how-cycles"), vec![named("pause")]);
    let terms = vec![named("pause"), named("control.cycles")];
    book.solved("control.period", shares.period, message!("solve-how-period"), terms);
    let first = first_divider(book).map_or(String::new(), |d| design.dividers[d].name.clone());
    let event = shares.first_cycle * f64::from(control.cycles);
    let terms = vec![named(format!("divider.{first}.cycle")), named("control.cycles")];
    book.solved("event.volume", event, message!("solve-how-event"), terms);
    let terms = vec![named("event.volume"), named("limits.event_time")];
    book.formula("event.flow", &oilway_physics::demand::MEAN_RATE, book.known.flow, terms);
}

/// The content of the line to a node.
fn contents(book: &mut Book<'_>, number: usize) {
    let design = book.known.design;
    let node = &design.network.nodes[number];
    let mut terms = Vec::with_capacity(node.legs.len());
    for (leg_number, leg) in node.legs.iter().enumerate() {
        let Some(conduit) = design.conduits.get(leg.conduit) else { continue };
        let at = format!("line.{}.{}", node.name, leg_number + 1);
        let content = pipe_flow::line_content(bore_of(conduit).unwrap_or_default(), leg.length.get());
        let of = vec![named(format!("part.{}.bore", conduit.id)), named(format!("{at}.length"))];
        book.formula(format!("{at}.content"), &pipe_flow::LINE_CONTENT, content, of);
        terms.push(named(format!("{at}.content")));
    }
    book.sum(format!("line.{}.content", node.name), book.known.contents[number], terms);
}

/// The cycle of a divider and the flow into it.
fn divider_lines(book: &mut Book<'_>, node: usize, number: usize) {
    let (design, shares) = (book.known.design, book.known.shares);
    let divider = &design.dividers[number];
    let at = format!("divider.{}", divider.name);
    let volumes: Vec<Term> =
        divider.sections.iter().map(|s| book.part_or(&s.part, "volume", Volume::ZERO)).collect();
    let sum: Volume = divider.sections.iter().map(section_volume).sum();
    book.sum(format!("{at}.sections"), sum, volumes);
    let cycle = progressive::cycle_volume(sum);
    book.formula(
        format!("{at}.cycle"),
        &progressive::CYCLE_VOLUME,
        cycle,
        vec![named(format!("{at}.sections"))],
    );
    if first_divider(book) == Some(number) {
        let terms = vec![named(format!("{at}.cycle")), named("control.period")];
        book.formula(format!("{at}.inflow"), &oilway_physics::demand::MEAN_RATE, shares.flow[node], terms);
    }
}

/// What each divider gives to what hangs on it.
fn fed(book: &mut Book<'_>) {
    for divider in &book.known.design.dividers {
        for (node, outlets) in outlets_by_node(divider) {
            let terms = outlets
                .into_iter()
                .map(|section| book.part_or(&divider.sections[section].part, "volume", Volume::ZERO))
                .collect();
            let (dose_name, flow_name) = names_of(book, node);
            book.sum(dose_name.clone(), book.known.shares.dose[node], terms);
            let at = format!("divider.{}", divider.name);
            let terms = vec![named(format!("{at}.inflow")), named(dose_name), named(format!("{at}.cycle"))];
            book.formula(flow_name, &progressive::DELIVERED, book.known.shares.flow[node], terms);
        }
    }
}

/// How the dose and the mean flow of a node are called.
fn names_of(book: &Book<'_>, node: usize) -> (String, String) {
    let node = &book.known.design.network.nodes[node];
    match node.end {
        End::Divider(_) => (format!("divider.{}.dose", node.name), format!("divider.{}.inflow", node.name)),
        _ => (format!("point.{}.dose", node.name), format!("point.{}.delivered", node.name)),
    }
}

/// For each node that a divider feeds, the sections whose outlets lead to it, one entry for each outlet.
fn outlets_by_node(divider: &Divider) -> Vec<(usize, Vec<usize>)> {
    let sides =
        (0..divider.sections.len()).flat_map(|section| [(section, Side::Left), (section, Side::Right)]);
    let mut led: Vec<(usize, usize)> =
        sides.filter_map(|(section, side)| Some((target(divider, section, side)?, section))).collect();
    led.sort_unstable();
    let mut found: Vec<(usize, Vec<usize>)> = Vec::new();
    for (node, section) in led {
        match found.last_mut().filter(|(last, _)| *last == node) {
            Some((_, sections)) => sections.push(section),
            None => found.push((node, vec![section])),
        }
    }
    found
}

/// How long the lubricant is on its way to a point.
fn ages(book: &mut Book<'_>, point: usize) {
    let design = book.known.design;
    let node = book.known.nodes[point];
    let at = format!("point.{}", design.points[point].name);
    let mut terms = Vec::new();
    for number in design.network.upstream(node) {
        let (content, flow) = (book.known.contents[number], book.known.shares.flow[number]);
        if content <= Volume::ZERO || flow <= Flow::ZERO {
            continue;
        }
        let name = &design.network.nodes[number].name;
        let of = vec![named(format!("line.{name}.content")), named(names_of(book, number).1)];
        let running = pump::age_at_point(content, flow);
        book.formula(format!("line.{name}.age.running"), &pump::AGE, running, of);
        calendar(book, format!("line.{name}.age"), running);
        terms.push(named(format!("line.{name}.age")));
    }
    let delivery = &book.known.answer.deliveries[point];
    book.sum(format!("{at}.age_in_tail"), delivery.age_in_tail, terms.first().cloned().into_iter().collect());
    terms.push(named("supply.refill"));
    book.sum(format!("{at}.age"), delivery.age, terms);
}

/// A running time on the calendar; the running time stands under the same name with `.running`.
fn calendar(book: &mut Book<'_>, name: String, running: Time) {
    let duty = &book.known.design.conditions.duty;
    let found = pump::calendar_interval(running, duty.hours_per_day.get(), duty.days_per_week.get());
    let terms =
        vec![named(format!("{name}.running")), named("duty.hours_per_day"), named("duty.days_per_week")];
    book.formula(name, &pump::CALENDAR_INTERVAL, found, terms);
}

fn totals(book: &mut Book<'_>) {
    let deliveries = &book.known.answer.deliveries;
    let all = |what: &str| -> Vec<Term> {
        book.known.design.points.iter().map(|p| named(format!("point.{}.{what}", p.name))).collect()
    };
    let (demand, delivered) = (all("required"), all("delivered"));
    book.sum("demand.total", deliveries.iter().map(|d| d.required).sum::<Flow>(), demand);
    book.sum("delivered.total", deliveries.iter().map(|d| d.delivered).sum::<Flow>(), delivered);
}

fn supply(book: &mut Book<'_>) {
    let (design, supply) = (book.known.design, &book.known.answer.supply);
    let first = first_divider(book).map_or(String::new(), |d| design.dividers[d].name.clone());
    book.sum("supply.use", supply.use_rate, vec![named(format!("divider.{first}.inflow"))]);
    let vessel = &design.package.reservoir;
    if let Some(data) = Reservoir::of(vessel) {
        let [gross, usable] = ["gross", "usable"].map(|field| book.part_or(vessel, field, Volume::ZERO));
        let running = pump::refill_interval(data.gross, data.usable, supply.use_rate);
        let terms = vec![gross, usable, named("supply.use")];
        book.formula("supply.refill.running", &pump::REFILL_INTERVAL, running, terms);
        calendar(book, "supply.refill".to_owned(), running);
        let reserve = book.part_or(vessel, "reserve", Volume::ZERO);
        let running = pump::age_at_point(data.reserve, supply.use_rate);
        book.formula("supply.reserve.running", &pump::AGE, running, vec![reserve, named("supply.use")]);
        calendar(book, "supply.reserve".to_owned(), running);
    }
    // An electric pump takes no air.
    if design.package.pump.value("air_swept").is_some() {
        let per_cycle = book.part_or(&design.package.pump, "per_cycle", Volume::ZERO);
        let terms = vec![named("supply.use"), named("pump.free_air"), per_cycle];
        book.solved("supply.air_per_hour", supply.air_per_hour, message!("solve-how-air-per-hour"), terms);
    }
    for season in &book.known.answer.seasons {
        event_time(book, season);
    }
}

/// The time of an event: each point in turn at the flow that its own path allows.
fn event_time(book: &mut Book<'_>, season: &oilway_model::SeasonResult) {
    let Some(time) = season.event_time else { return };
    let word = crate::evaluate::season_word(season.season);
    let shares = book.known.shares;
    let event = shares.first_cycle * f64::from(book.known.design.control.cycles);
    let total = shares.first_cycle / shares.period;
    let parts = book.known.nodes.iter().zip(&season.paths);
    let terms = parts.map(|(&node, path)| value(event * (shares.flow[node] / total) / path.flow)).collect();
    book.line(format!("event.{word}.time"), time, How::Sum(terms));
}

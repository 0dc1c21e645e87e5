//! The dairy, designed and then broken in one place at a time: the checker must name each break by its rule, and the design as it came
//! from the designer must not show it.

#![allow(clippy::unwrap_used, reason = "a test: what cannot be read must fail it")]

use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

use oilway_catalogue::kinds::{DiscHolder, Plug};
use oilway_catalogue::{Part, Role, Value, house, lubricants};
use oilway_check::{check, compare};
use oilway_model::{
    Answer, Choice, Design, Device, End, Filling, Leg, Mounting, OutletUse, Season, Severity, Side,
};
use oilway_physics::Ledger;
use oilway_solve::{design, evaluate};
use oilway_store::read_job;
use oilway_units::{Conductance, Entry, Frequency, Length, Pressure, Ratio, Temperature, Time, Voltage};

/// The dairy as the designer leaves it, with pump, disc and air setting given (twenty to one at 5 bar, 130 bar): the breaks lean on them.
fn dairy() -> Design {
    static DAIRY: OnceLock<Design> = OnceLock::new();
    let made = DAIRY.get_or_init(|| {
        let text = std::fs::read_to_string(oilway_testkit::root().join("jobs/dairy/job.toml")).unwrap();
        let (job, mistakes) = read_job("job.toml", &text, house::catalogue(), lubricants::library());
        assert!(mistakes.is_empty(), "{mistakes:#?}");
        let mut job = job.unwrap();
        job.package.pump = Choice::Given("10029".to_owned());
        job.package.disc = Choice::Given("10019".to_owned());
        job.package.regulator = Choice::Given(Pressure::from_bar(5.0));
        design(&job, house::catalogue()).unwrap()
    });
    made.clone()
}

/// The rules that object to a design, notes apart.
fn objections(design: &Design) -> BTreeSet<&'static str> {
    check(design).findings.iter().filter(|f| f.severity != Severity::Note).map(|f| f.rule).collect()
}

fn part(id: &str) -> Arc<Part> {
    Arc::clone(house::catalogue().part(id).unwrap_or_else(|| panic!("the house range has no part {id}")))
}

/// A part with another value in a field, or with none.
fn put(part: &mut Arc<Part>, field: &str, value: Option<Value>) {
    let at = part.kind.fields().iter().position(|f| f.name == field).unwrap();
    let mut changed = Part::clone(part);
    changed.values[at] = value;
    *part = Arc::new(changed);
}

fn bar(value: f64) -> Option<Value> {
    Some(Value::Quantity(Pressure::from_bar(value).into()))
}

fn celsius(value: f64) -> Entry<Temperature> {
    Entry::known(Temperature::from_celsius(value))
}

fn metres(value: f64) -> Entry<Length> {
    Entry::known(Length::from_metres(value))
}

/// The device at the first port of a role that a part has.
fn device<'a>(design: &'a mut Design, of: &Arc<Part>, role: Role) -> &'a mut Device {
    let mark = of.ports.iter().find(|port| port.role == role).unwrap().mark.clone();
    design.package.devices.iter_mut().find(|device| device.of.id == of.id && device.mark == mark).unwrap()
}

fn on_block(design: &mut Design, role: Role) -> &mut Device {
    let block = Arc::clone(&design.package.block);
    device(design, &block, role)
}

fn plug() -> Vec<Filling> {
    let plug = house::catalogue().of_kind("plug").find(|part| Plug::of(part).is_some()).unwrap();
    vec![Filling::Part(Arc::clone(plug))]
}

/// The node of a point.
fn node_of(design: &Design, point: usize) -> usize {
    design.network.nodes.iter().position(|node| node.end == End::Point(point)).unwrap()
}

/// A leg like the first of the tree, so long, in the pump's place.
fn leg_here(design: &Design, long: f64) -> Leg {
    let mut leg = design.network.nodes[1].legs[0];
    (leg.place, leg.length) = (design.package.place, metres(long));
    leg
}

/// A hose or tube that hangs on the last leg of some point.
fn last_conduit(design: &Design) -> usize {
    design.network.nodes.iter().rev().find_map(|node| Some(node.legs.last()?.conduit)).unwrap()
}

/// The first divider that hangs on another one, and one of its outlets that leads to a line.
fn secondary(design: &mut Design) -> &mut oilway_model::Divider {
    &mut design.dividers[1]
}

type Break = (&'static str, &'static str, fn(&mut Design));

/// What is broken, the rule that must name it, and the breaking.
const BREAKS: &[Break] = &[
    // Metering.
    ("a plug in an outlet", "outlet-plugged", |d| secondary(d).sections[0].left = OutletUse::Plugged),
    ("an outlet left open", "outlet-open", |d| secondary(d).sections[0].left = OutletUse::Open),
    ("both outlets joined to each other", "outlet-goes-nowhere", |d| {
        secondary(d).sections[0].left = OutletUse::WithOpposite;
        secondary(d).sections[0].right = OutletUse::WithOpposite;
    }),
    ("a bridge to a section that is not there", "outlet-goes-nowhere", |d| {
        secondary(d).sections[0].left = OutletUse::Bridged(99, Side::Left);
    }),
    ("an outlet led to the pump", "outlet-goes-nowhere", |d| {
        secondary(d).sections[0].left = OutletUse::To(0)
    }),
    ("an outlet given to its neighbour", "point-not-served", |d| {
        let point = node_of(d, 0);
        let divider = d.points[0].divider;
        for section in &mut d.dividers[divider].sections {
            for outlet in [&mut section.left, &mut section.right] {
                if *outlet == OutletUse::To(point) {
                    *outlet = OutletUse::To(point + 1);
                }
            }
        }
    }),
    ("a line that is not drawn", "point-not-served", |d| {
        d.network.nodes.pop();
    }),
    ("a tee to two points", "line-splits-unmetered", |d| {
        let (one, other) = (node_of(d, 0), node_of(d, 1));
        let mut copy = d.network.nodes[one].clone();
        d.network.nodes[one].end = End::Junction;
        d.network.nodes[other].parent = Some(one);
        copy.parent = Some(one);
        d.network.nodes.push(copy);
    }),
    ("two sections left of a divider", "sections-too-few", |d| secondary(d).sections.truncate(2)),
    ("forty sections", "sections-too-many", |d| {
        let section = secondary(d).sections[0].clone();
        secondary(d).sections.resize(40, section);
    }),
    ("a section of another range", "section-does-not-fit", |d| secondary(d).sections[0].part = part("10063")),
    ("a gauge among the sections", "section-does-not-fit", |d| secondary(d).sections[0].part = part("10074")),
    ("sections that cannot be joined", "section-does-not-fit", |d| {
        for section in d.dividers.iter_mut().flat_map(|d| &mut d.sections) {
            put(&mut section.part, "joinable", Some(Value::Flag(false)));
        }
    }),
    ("dividers that may hardly turn", "divider-too-fast", |d| {
        let slow = Value::Quantity(Frequency::from_per_minute(0.01).into());
        d.dividers.iter_mut().for_each(|divider| put(&mut divider.body, "cycles_max", Some(slow.clone())));
    }),
    ("a tail of two hundred metres", "back-pressure-difference", |d| {
        let node = node_of(d, 10);
        d.network.nodes[node].legs[0].length = metres(200.0);
    }),
    ("no cycle switch", "no-cycle-switch", |d| d.dividers.iter_mut().for_each(|d| d.cycle_switch = false)),
    ("an event without cycles", "event-gives-no-full-cycle", |d| d.control.cycles = 0),
    // Demand and lubricant.
    ("a pause twice as long", "dose-below-band", |d| d.control.pause = d.control.pause * 2.0),
    ("a pause of a fifth", "dose-above-band", |d| d.control.pause = d.control.pause * 0.2),
    ("a grease that is not food grade", "lubricant-not-food-grade", |d| d.conditions.lubricant.food = false),
    ("a grease for summer", "lubricant-below-its-limit", |d| {
        d.conditions.lubricant.coldest = Some(Temperature::from_celsius(5.0));
    }),
    ("a grease that melts in the washer", "lubricant-above-its-limit", |d| {
        d.conditions.lubricant.hottest = Some(Temperature::from_celsius(55.0));
    }),
    ("a freezer in the place of the cold room", "grease-curve-extended", |d| {
        d.conditions.places.iter_mut().for_each(|place| place.coldest = celsius(-20.0));
    }),
    ("a tail of three kilometres", "grease-too-old-in-tail", |d| {
        d.network.nodes.last_mut().unwrap().legs[0].length = metres(3000.0);
    }),
    // Pressure and time.
    ("a grease that sets like wax", "stall-below-start", |d| {
        d.conditions.practice.rest_factor = Entry::known(Ratio::from_fraction(12.0));
    }),
    ("a bearing that is shut", "stall-below-moving", |d| {
        d.points[3].back_pressure = Some(Entry::known(Pressure::from_bar(250.0)));
    }),
    ("a practice that wants half the stall in hand", "stall-margin-thin", |d| {
        d.conditions.practice.stall_use = Entry::known(Ratio::from_fraction(0.3));
    }),
    ("a hose of sixty bar", "line-underrated", |d| {
        let conduit = last_conduit(d);
        put(&mut d.conduits[conduit], "rated", bar(60.0));
    }),
    ("a weak divider", "line-underrated", |d| put(&mut d.dividers[2].body, "rated", bar(60.0))),
    ("a hose that cracks in the hall", "hose-out-of-temperature", |d| {
        let warm = Value::Quantity(Temperature::from_celsius(90.0).into());
        d.conduits.iter_mut().for_each(|conduit| put(conduit, "coldest", Some(warm.clone())));
    }),
    ("a hose that softens in the hall", "hose-out-of-temperature", |d| {
        let cool = Value::Quantity(Temperature::from_celsius(0.0).into());
        d.conduits.iter_mut().for_each(|conduit| put(conduit, "hottest", Some(cool.clone())));
    }),
    ("a tube without a rating", "tube-without-rating", |d| {
        let tube = d.conduits.iter_mut().find(|part| part.kind.id() == "tube").unwrap();
        put(tube, "rated", None);
    }),
    ("an alarm after a second", "time-out-too-short", |d| d.control.time_out = Time::from_milliseconds(10.0)),
    ("a pause shorter than the event", "pause-shorter-than-event", |d| {
        d.control.pause = Time::from_milliseconds(10.0);
    }),
    ("an event that must end at once", "event-longer-than-allowed", |d| {
        d.conditions.limits.event_time = Entry::known(Time::from_milliseconds(10.0));
    }),
    // Protection.
    ("no disc on a pump that can burst a hose", "disc-missing", |d| {
        d.conditions.air.as_mut().unwrap().possible = Entry::known(Pressure::from_bar(30.0));
        d.package.disc = None;
    }),
    ("a disc in no port", "disc-missing", |d| {
        let block = Arc::clone(&d.package.block);
        let relief = block.ports.iter().find(|port| port.role == Role::Relief).unwrap();
        d.package.devices.retain(|device| device.of.id != block.id || device.mark != relief.mark);
    }),
    ("a disc one step low", "disc-wears-out", |d| {
        put(d.package.disc.as_mut().unwrap(), "nominal", bar(90.0))
    }),
    ("a regulator turned up", "disc-wears-out", |d| d.package.air_setting = Some(Pressure::from_bar(8.0))),
    ("a disc two steps high", "disc-too-strong", |d| {
        put(d.package.disc.as_mut().unwrap(), "nominal", bar(200.0))
    }),
    ("a solid disc that tires", "disc-window-shut", |d| {
        let tired = Value::Quantity(Ratio::from_percent(40.0).into());
        put(d.package.disc.as_mut().unwrap(), "ratio", Some(tired));
    }),
    ("a divider just above the disc", "disc-margin-thin", |d| {
        put(d.package.disc.as_mut().unwrap(), "nominal", bar(130.0));
        put(&mut d.dividers[0].body, "rated", bar(139.0));
    }),
    ("the oil disc left in", "disc-for-other-lubricant", |d| d.package.disc = Some(part("10016"))),
    ("a disc for gas", "disc-not-for-liquid", |d| {
        put(d.package.disc.as_mut().unwrap(), "liquid", Some(Value::Flag(false)));
    }),
    ("a holder with another hole", "disc-holder-mismatch", |d| d.package.holder = Some(part("10010"))),
    ("a disc without a holder", "disc-holder-mismatch", |d| d.package.holder = None),
    ("a discharge line across the yard", "relief-path-too-tight", |d| {
        d.package.discharge = vec![leg_here(d, 2000.0)];
    }),
    ("a shut-off below the disc", "relief-behind-shut-off", |d| {
        on_block(d, Role::Relief).behind_shut_off = true
    }),
    ("a regulator taken for protection", "regulator-not-protection", |d| {
        d.conditions.air.as_mut().unwrap().possible = Entry::known(Pressure::from_bar(30.0));
        d.package.disc = None;
    }),
    // Package.
    ("a valve that is open at rest", "valve-wrong-for-drive", |d| d.package.valve = Some(part("10286"))),
    ("no valve", "valve-wrong-for-drive", |d| d.package.valve = None),
    ("a valve like a pinhole", "valve-throttles", |d| {
        let small = Value::Quantity(Conductance::from_litres_per_second_bar(0.02).into());
        put(d.package.valve.as_mut().unwrap(), "conductance", Some(small));
    }),
    ("a plug in the breather", "breather-plugged", |d| {
        let reservoir = Arc::clone(&d.package.reservoir);
        device(d, &reservoir, Role::Breather).holds = plug();
    }),
    ("a plug in the exhaust", "exhaust-plugged", |d| {
        let valve = d.package.valve.clone().unwrap();
        device(d, &valve, Role::Exhaust).holds = plug();
    }),
    ("a port under pressure left open", "pressure-port-open", |d| on_block(d, Role::Sensor).holds.clear()),
    ("a filling port that nobody thought of", "port-undecided", |d| {
        let reservoir = Arc::clone(&d.package.reservoir);
        device(d, &reservoir, Role::Fill).holds = vec![Filling::Nothing];
    }),
    ("a check valve the wrong way round", "one-way-part-reversed", |d| {
        on_block(d, Role::Outlet).flows_out = Some(false);
    }),
    ("no gauge", "gauge-range", |d| d.package.gauge = None),
    ("a gauge to forty bar", "gauge-underrated", |d| {
        put(d.package.gauge.as_mut().unwrap(), "full_scale", bar(40.0));
    }),
    ("a pump in the frost", "pump-temperature", |d| {
        let place = d.package.place;
        d.conditions.places[place].coldest = celsius(-30.0);
    }),
    ("an oil pump", "pump-lubricant", |d| d.package.pump = part("10037")),
    ("a reservoir for oil", "pump-lubricant", |d| d.package.reservoir = part("10049")),
    ("a pump weaker than its disc", "pump-underrated", |d| put(&mut d.package.pump, "rated", bar(60.0))),
    ("a setting above the supply", "regulator-above-supply", |d| {
        d.package.air_setting = Some(Pressure::from_bar(5.6));
    }),
    ("a setting that the regulator does not reach", "regulator-out-of-range", |d| {
        d.package.air_setting = Some(Pressure::from_bar(9.0));
    }),
    ("no compressed air", "supply-missing", |d| d.conditions.air = None),
    ("a cabinet of 230 volts", "voltage-mismatch", |d| {
        d.conditions.electric.as_mut().unwrap().voltage = Voltage::from_volts(230.0);
    }),
    ("a controller without inputs", "controller-inputs", |d| {
        d.package.controller = None;
        d.conditions.electric.as_mut().unwrap().inputs = Some(0);
    }),
    ("an inlet like a needle", "inlet-starves", |d| {
        put(&mut d.package.pump, "inlet_bore", Some(Value::Quantity(Length::from_millimetres(2.0).into())));
    }),
    ("a pump next door", "inlet-line-never-moves", |d| {
        d.package.mounting = Mounting::Remote(vec![leg_here(d, 30.0)]);
    }),
    ("a reservoir without a plate", "follower-missing", |d| {
        put(&mut d.package.reservoir, "follower", Some(Value::Flag(false)));
        let place = d.package.place;
        d.conditions.places[place].coldest = celsius(-40.0);
    }),
    ("a cup for a reservoir", "refill-too-short", |d| {
        let cup = Value::Quantity(oilway_units::Volume::from_litres(0.1).into());
        put(&mut d.package.reservoir, "gross", Some(cup));
    }),
    ("a drum for a reservoir", "reservoir-too-large", |d| d.package.reservoir = part("10047")),
    ("a reserve of a thimble", "reserve-too-short", |d| {
        let thimble = Value::Quantity(oilway_units::Volume::from_cubic_centimetres(1.0).into());
        put(&mut d.package.reservoir, "reserve", Some(thimble));
    }),
    ("plugs in all outlets of the block", "port-leads-nowhere", |d| {
        let block = Arc::clone(&d.package.block);
        for port in block.ports.iter().filter(|port| port.role == Role::Outlet) {
            let on_it = |device: &&mut Device| device.of.id == block.id && device.mark == port.mark;
            d.package.devices.iter_mut().find(on_it).unwrap().holds = plug();
        }
    }),
    ("a plug between reservoir and block", "port-leads-nowhere", |d| on_block(d, Role::Inlet).holds = plug()),
    ("a plug in the air of the motor", "port-leads-nowhere", |d| {
        let pump = Arc::clone(&d.package.pump);
        device(d, &pump, Role::AirIn).holds = plug();
    }),
    ("a regulator that lets nothing out", "port-leads-nowhere", |d| {
        let regulator = d.package.regulator.clone().unwrap();
        device(d, &regulator, Role::AirOut).holds = vec![Filling::Nothing];
    }),
    ("a gauge without its port", "port-leads-nowhere", |d| on_block(d, Role::Gauge).holds = plug()),
    ("a pump away from its reservoir without a line", "port-leads-nowhere", |d| {
        d.package.mounting = Mounting::Remote(Vec::new());
    }),
    // Joints and the design itself.
    ("a joint without its fitting", "joint-without-fitting", |d| {
        d.joints.iter_mut().find(|joint| !joint.parts.is_empty()).unwrap().parts.clear();
    }),
    ("a point with a taper thread", "joint-mismatch", |d| {
        let joint = d.joints.iter_mut().find(|j| j.at.starts_with("point.") && !j.parts.is_empty()).unwrap();
        joint.to.thread = Some("1/2-14 NPT".to_owned());
    }),
    ("a joint on no list", "joint-missing", |d| {
        d.joints.pop();
    }),
    ("a joint between tube and hose on no list", "joint-missing", |d| {
        let inside = |at: &str| at.starts_with("line.") && !at.ends_with(".1");
        let number = d.joints.iter().position(|joint| inside(&joint.at)).unwrap();
        d.joints.remove(number);
    }),
    ("a point whose thread was measured after the design", "joint-mismatch", |d| {
        d.points[0].thread = Some("R 1/2".to_owned());
    }),
    ("a taper gauge in a parallel port", "joint-mismatch", |d| {
        on_block(d, Role::Gauge).holds = vec![Filling::Part(part("10080"))];
    }),
    ("an inch tube in a metric fitting", "tube-in-wrong-fitting", |d| {
        let is_tube = |text: &Option<String>| text.as_deref().is_some_and(|text| text.starts_with("tube "));
        let joint = d.joints.iter_mut().find(|j| is_tube(&j.from.thread) && !j.parts.is_empty()).unwrap();
        joint.from.thread = Some("tube 7.94".to_owned());
    }),
    ("a taper block", "two-thread-families", |d| d.package.block = part("10053")),
    ("a leg of nothing", "number-not-sound", |d| d.network.nodes[1].legs[0].length = metres(0.0)),
    ("a main that is not drawn", "number-not-sound", |d| d.network.nodes[1].legs.clear()),
    ("a pause that is no number", "number-not-sound", |d| d.control.pause = Time::from_seconds(f64::NAN)),
    ("a coldest day that is no number", "number-not-sound", |d| {
        d.conditions.places[0].coldest = celsius(f64::NAN);
    }),
    ("a day of 25 hours", "number-not-sound", |d| {
        d.conditions.duty.hours_per_day = Entry::known(Time::from_hours(25.0));
    }),
    ("air that is lowest at its highest", "number-not-sound", |d| {
        d.conditions.air.as_mut().unwrap().lowest = Entry::known(Pressure::from_bar(50.0));
    }),
    ("a line of a tube that is not listed", "broken-reference", |d| d.network.nodes[1].legs[0].conduit = 999),
    ("a pump that is a gauge", "broken-reference", |d| d.package.pump = part("10074")),
];

#[test]
fn each_single_break_is_named_by_its_rule_and_the_unbroken_design_does_not_show_it() {
    let whole = objections(&dairy());
    let mut missed = Vec::new();
    for (what, rule, break_it) in BREAKS {
        assert!(oilway_check::rule(rule).is_some(), "there is no rule {rule}");
        if whole.contains(rule) {
            missed.push(format!("{what}: the unbroken design already shows {rule}"));
        }
        let mut broken = dairy();
        break_it(&mut broken);
        let found = objections(&broken);
        if !found.contains(rule) {
            missed.push(format!("{what}: {rule} is not among {found:?}"));
        }
    }
    assert!(missed.is_empty(), "{} of {} missed:\n{}", missed.len(), BREAKS.len(), missed.join("\n"));
    assert!(BREAKS.len() >= 40);
}

#[test]
fn a_holder_of_the_house_still_fits_the_disc_of_the_dairy() {
    // The breaks above lean on it: a mismatch must come from the break.
    let dairy = dairy();
    assert!(DiscHolder::of(dairy.package.holder.as_ref().unwrap()).is_some());
}

// ------------------------------------------------------------------------------------- designer against checker

/// A number of the designer's and the slip that is made in it.
type Slip = (&'static str, fn(&mut Answer));

/// What a designer could get wrong, one number at a time.
const SLIPS: &[Slip] = &[
    ("a delivery", |a| a.deliveries[5].delivered = a.deliveries[5].delivered * 1.01),
    ("a need", |a| a.deliveries[5].required = a.deliveries[5].required * 0.99),
    ("a dose", |a| a.deliveries[5].dose = a.deliveries[5].dose * 2.0),
    ("an age", |a| a.deliveries[5].age = a.deliveries[5].age * 1.01),
    ("an upper edge", |a| a.deliveries.iter_mut().for_each(|d| d.band_high = None)),
    ("a point left out", |a| {
        a.deliveries.pop();
    }),
    ("a start pressure", |a| a.seasons[0].paths[5].start_rested = a.seasons[0].paths[5].start_rested * 1.01),
    ("a pressure in motion", |a| a.seasons[0].paths[5].moving = a.seasons[0].paths[5].moving * 0.99),
    ("a residual pressure", |a| a.seasons[2].paths[5].residual = a.seasons[2].paths[5].residual * 1.01),
    ("a flow", |a| a.seasons[0].paths[5].flow = a.seasons[0].paths[5].flow * 1.02),
    ("the stall", |a| a.seasons[0].pump.stall = a.seasons[0].pump.stall * 1.01),
    ("the possible stall", |a| a.seasons[0].pump.stall_possible = a.seasons[0].pump.stall_possible * 0.9),
    ("the event", |a| a.seasons[0].event_time = a.seasons[0].event_time.map(|t| t * 1.02)),
    ("a season left out", |a| a.seasons.retain(|s| s.season != Season::Hot)),
    ("the lowest burst", |a| a.protection.lowest_burst = a.protection.lowest_burst.map(|p| p * 1.01)),
    ("the steady maximum", |a| a.protection.steady_maximum = None),
    ("the window", |a| a.protection.window_high = a.protection.window_high * 1.01),
    ("the weakest part", |a| a.protection.weakest.1 = a.protection.weakest.1 * 1.1),
    ("the relief path", |a| a.protection.relieving = a.protection.relieving.map(|p| p * 0.5)),
    ("the refill", |a| a.supply.refill = a.supply.refill * 1.01),
    ("the use", |a| a.supply.use_rate = a.supply.use_rate * 1.01),
    ("the coldest day", |a| {
        let limit = a.cold_limit.as_mut().unwrap();
        limit.reserve = limit.reserve * 1.1;
    }),
    ("a number that is none", |a| a.supply.feed = Pressure::from_pascals(f64::NAN)),
];

#[test]
fn each_slip_of_the_designer_is_told_and_an_honest_answer_is_not() {
    let design = dairy();
    let honest = evaluate(&design, &mut Ledger::off());
    assert_eq!(compare(&design, &honest).len(), 0);
    for (what, slip) in SLIPS {
        let mut claimed = honest.clone();
        slip(&mut claimed);
        let found = compare(&design, &claimed);
        assert!(
            found.iter().any(|f| f.rule == "designer-disagrees" && f.severity == Severity::Stop),
            "{what}"
        );
    }
}

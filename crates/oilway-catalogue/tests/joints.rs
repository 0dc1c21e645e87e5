//! The house range goes together: every port has something that goes into it, every line reaches every port, and the parts of the
//! air line reach one another. No thread is converted in the head of the fitter.

use std::collections::BTreeSet;

use oilway_catalogue::kinds::{BurstDisc, DiscHolder, Discharge, Fitting, Hose, Tube};
use oilway_catalogue::{Internal, Part, Port, Role, Sex, Thread, ThreadFamily, house};

/// A thread or a line end, and whether it is male.
type End = (String, Sex);

fn parts(kind: &str) -> impl Iterator<Item = &Part> {
    house::catalogue().of_kind(kind).map(AsRef::as_ref)
}

fn end(port: &Port) -> End {
    (port.thread.clone(), port.sex)
}

fn mates(a: &End, b: &End) -> bool {
    a.0 == b.0 && a.1 != b.1
}

/// The other end of a part with two, once it sits on this one.
fn beyond(part: &Part, near: &End) -> Option<End> {
    let [one, two] = part.ports.as_slice() else { return None };
    let ends = [(one, two), (two, one)];
    ends.into_iter().find(|(own, _)| mates(&end(own), near)).map(|(_, far)| end(far))
}

/// Whether one fitting or adapter joins two ends. A part with two equal ends is looked at from both.
fn one_part_joins(a: &End, b: &End, air: bool) -> bool {
    let fittings = parts("fitting").filter(|part| part.flag("air") == air);
    let adapters = parts("adapter").filter(|_| !air);
    fittings.chain(adapters).any(|part| beyond(part, a).is_some_and(|far| mates(&far, b)))
}

/// Whether two ends can be joined: by themselves, by one part, or by an adapter on the second and one part more.
fn join(a: &End, b: &End) -> bool {
    mates(a, b)
        || one_part_joins(a, b, false)
        || parts("adapter").filter_map(|part| beyond(part, b)).any(|far| one_part_joins(a, &far, false))
}

/// The ends of all tubes of the range, and of all hoses, each once.
fn conduits(kind: &str) -> Vec<End> {
    let named = |part: &Part| {
        Tube::of(part).map(|tube| format!("tube {}", tube.outside.millimetres().round())).or_else(|| {
            Hose::of(part).map(|h| format!("hose {}", (h.bore.millimetres() * 10.0).round() / 10.0))
        })
    };
    let names: BTreeSet<String> = parts(kind).filter_map(named).collect();
    names.into_iter().map(|name| (name, Sex::Male)).collect()
}

/// Size of a line end in tenths of a millimetre.
fn tenths(end: &End) -> f64 {
    Thread::read(&end.0).ok().and_then(|thread| thread.line()).map_or(0.0, |size| size.millimetres() * 10.0)
}

/// Whether the range has something for this port of this part.
fn can_be_filled(host: &Part, port: &Port) -> bool {
    let strength = |part: &Part| part.kind.rating(part);
    // A pump may be weaker than its block, and a block weaker than the holder on it; what shuts a port must not be.
    let must_stand =
        port.internal == Internal::Pressure && port.sex == Sex::Female && port.role != Role::Joint;
    let goes_in = |kind: &str, suits: &dyn Fn(&Part, &Port) -> bool| {
        parts(kind).any(|part| {
            let strong = !must_stand || strength(part) >= strength(host);
            strong && part.ports.iter().any(|own| mates(&end(own), &end(port)) && suits(part, own))
        })
    };
    let any = |kind: &str| goes_in(kind, &|_, _| true);
    let of_role = |kind: &str, role: Role| goes_in(kind, &|_, own| own.role == role);
    let line = || goes_in("fitting", &|part, _| !part.flag("air"));
    let section = || parts("section").any(|s| s.text("outlet_thread") == Some(port.thread.as_str()));
    match (port.role, port.sex, port.internal) {
        (Role::AirIn | Role::AirOut, ..) => goes_in("fitting", &|part, _| part.flag("air")),
        (Role::Outlet, Sex::Male, Internal::Suction) => of_role("port block", Role::Inlet),
        (Role::Inlet, Sex::Female, Internal::Suction) => of_role("reservoir", Role::Outlet),
        (Role::Outlet, Sex::Male, _) => of_role("port block", Role::Joint) || section(),
        (Role::Inlet, Sex::Male, _) => of_role("port block", Role::Relief),
        (Role::Joint, Sex::Female, _) => of_role("pump", Role::Outlet) || line(),
        (Role::Joint, Sex::Male, _) => goes_in("port block", &|_, own| own.internal == Internal::Pressure),
        (Role::Outlet | Role::Inlet, Sex::Female, _) => line(),
        (Role::Relief, ..) => of_role("disc holder", Role::Inlet),
        (Role::Gauge, ..) => any("gauge"),
        (Role::Sensor, ..) => any("pressure switch") && any("plug"),
        (Role::Return | Role::Drain, ..) => any("plug") && line(),
        (Role::Vent, ..) => any("shut-off valve") && any("plug"),
        (Role::Fill, ..) => any("filling coupling") && any("plug"),
        (Role::Breather, ..) => any("breather"),
        (Role::Exhaust, ..) => any("silencer"),
        (Role::Level, ..) => goes_in("level switch", &|switch, _| {
            host.texts("lubricants").iter().all(|word| switch.texts("lubricants").contains(word))
        }),
    }
}

/// Parts into whose ports others go.
const HOSTS: [&str; 12] = [
    "port block",
    "pump",
    "reservoir",
    "disc holder",
    "divider",
    "metering valve",
    "check valve",
    "shut-off valve",
    "lubricant filter",
    "air valve",
    "air regulator",
    "air filter",
];

#[test]
fn every_port_of_the_range_can_be_filled_by_a_part_of_the_range() {
    let mut empty = Vec::new();
    for kind in HOSTS {
        for host in parts(kind) {
            let lacking = host.ports.iter().filter(|port| !can_be_filled(host, port));
            empty.extend(lacking.map(|port| format!("{} of {} {}", port.mark, host.id, host.description)));
        }
    }
    assert_eq!(empty, Vec::<String>::new());
}

#[test]
fn a_port_of_a_thread_that_nothing_has_cannot_be_filled() {
    let block = parts("port block").next().unwrap();
    for port in &block.ports {
        let odd = Port { thread: "G 2".to_owned(), ..port.clone() };
        assert!(!can_be_filled(block, &odd), "{}", port.mark);
    }
}

/// A thread onto which lines go: those of the parts, and those that bearings' housings have (common practice).
fn line_threads() -> BTreeSet<String> {
    let of_points = ["M6x1", "M8x1", "M10x1", "G 1/8", "G 1/4", "1/8-27 NPT", "1/4-18 NPT"];
    let mut threads: BTreeSet<String> = of_points.into_iter().map(str::to_owned).collect();
    for kind in HOSTS {
        let ends = parts(kind).flat_map(|host| &host.ports).filter(|port| {
            matches!(port.role, Role::Outlet | Role::Inlet)
                && port.sex == Sex::Female
                && matches!(port.internal, Internal::Pressure | Internal::Open)
        });
        threads.extend(ends.map(|port| port.thread.clone()));
    }
    threads.extend(parts("section").filter_map(|section| section.text("outlet_thread").map(str::to_owned)));
    threads
}

#[test]
fn every_line_reaches_every_port_that_lines_leave_or_enter() {
    let threads = line_threads();
    assert!(threads.len() > 10, "{threads:?}");
    let mut open = Vec::new();
    for line in conduits("tube").into_iter().chain(conduits("hose")) {
        for thread in &threads {
            if !join(&line, &(thread.clone(), Sex::Female)) {
                open.push(format!("{} to {thread}", line.0));
            }
        }
    }
    assert_eq!(open, Vec::<String>::new());
}

#[test]
fn every_line_goes_on_in_the_sizes_around_its_own() {
    let mut open = Vec::new();
    let (mut tubes, mut hoses) = (conduits("tube"), conduits("hose"));
    tubes.sort_by(|a, b| tenths(a).total_cmp(&tenths(b)));
    hoses.sort_by(|a, b| tenths(a).total_cmp(&tenths(b)));
    let steps = |list: &[End], reach: usize| -> Vec<(End, End)> {
        let pairs = list
            .iter()
            .enumerate()
            .flat_map(|(i, a)| list.iter().skip(i).take(reach + 1).map(move |b| (a, b)));
        pairs.map(|(a, b)| (a.clone(), b.clone())).collect()
    };
    // A tube goes on two sizes smaller and a hose in its neighbour; a hose goes on in every tube from its bore to about twice that.
    let mixed = hoses.iter().flat_map(|hose| tubes.iter().map(move |tube| (hose.clone(), tube.clone())));
    let mixed = mixed.filter(|(hose, tube)| (1.0..2.0).contains(&(tenths(tube) / tenths(hose))));
    for (a, b) in steps(&tubes, 2).into_iter().chain(steps(&hoses, 1)).chain(mixed) {
        if !one_part_joins(&a, &b, false) {
            open.push(format!("{} to {}", a.0, b.0));
        }
    }
    assert_eq!(open, Vec::<String>::new());
}

#[test]
fn ends_that_do_not_belong_together_are_not_joined() {
    let tube = ("tube 8".to_owned(), Sex::Male);
    assert!(!join(&tube, &("tube 9".to_owned(), Sex::Male)));
    assert!(!join(&tube, &("M33x2".to_owned(), Sex::Female)));
    assert!(!one_part_joins(&("G 1/4".to_owned(), Sex::Female), &("G 1/4".to_owned(), Sex::Female), false));
}

/// Ports of the air side are female: between any two goes one nipple.
#[test]
fn every_two_parts_of_the_air_line_are_joined_by_one_nipple() {
    let ports = |role: Role| -> BTreeSet<String> {
        let kinds = ["air filter", "air regulator", "air valve", "pump"];
        let ports = kinds.into_iter().flat_map(parts).flat_map(|part| &part.ports);
        ports.filter(|port| port.role == role).map(|port| port.thread.clone()).collect()
    };
    let (outs, ins) = (ports(Role::AirOut), ports(Role::AirIn));
    assert!(outs.len() > 3 && ins.len() > 3);
    for out in &outs {
        for into in &ins {
            let [a, b] = [out, into].map(|thread| (thread.clone(), Sex::Female));
            assert!(one_part_joins(&a, &b, true), "{out} to {into}");
        }
    }
}

/// An air fitting is weak: none may look like a fitting for lubricant.
#[test]
fn air_fittings_say_so_at_every_end() {
    let mut seen = 0;
    for part in parts("fitting") {
        let air = Fitting::of(part).unwrap().air;
        assert!(part.ports.iter().all(|port| (port.internal == Internal::Air) == air), "{}", part.id);
        assert_eq!(part.description.contains("air") || part.description.contains("Air"), air, "{}", part.id);
        seen += usize::from(air);
    }
    assert!(seen > 20);
}

#[test]
fn every_relief_port_takes_every_kind_of_disc_holder_with_every_disc_of_its_size() {
    let kinds = [Discharge::Open, Discharge::Piped, Discharge::Indicator, Discharge::Switch];
    let threads: BTreeSet<&str> = parts("port block")
        .flat_map(|block| &block.ports)
        .filter(|port| port.role == Role::Relief)
        .map(|port| port.thread.as_str())
        .collect();
    assert_eq!(threads.len(), 4);
    let inlet = |holder: &Part| holder.ports.iter().find(|p| p.role == Role::Inlet).map(|p| p.thread.clone());
    for &thread in &threads {
        for discharge in kinds {
            let fits = |h: &Part| DiscHolder::of(h).is_some_and(|d| d.discharge == discharge);
            assert!(
                parts("disc holder").any(|h| fits(h) && inlet(h).as_deref() == Some(thread)),
                "{thread} {discharge:?}"
            );
        }
    }
    let hole = |holder: &Part| DiscHolder::of(holder).map(|h| (h.hole.millimetres() * 100.0).round() as i64);
    for disc in parts("burst disc") {
        let named = BurstDisc::of(disc).unwrap().holder;
        let holes: BTreeSet<_> =
            named.iter().filter_map(|id| house::catalogue().part(id)).map(|holder| hole(holder)).collect();
        assert_eq!(holes.len(), 1, "{} goes into holders of one size", disc.id);
        let same_size = parts("disc holder").filter(|holder| holes.contains(&hole(holder)));
        assert_eq!(same_size.count(), named.len(), "{}", disc.id);
    }
}

/// What screws into an instrument port: gauges of every scale and switches of every range in either family.
#[test]
fn gauges_and_pressure_switches_come_in_both_families() {
    let family =
        |part: &Part, wanted: ThreadFamily| Thread::read(&part.ports[0].thread).unwrap().family() == wanted;
    for kind in ["gauge", "pressure switch"] {
        let range = |part: &Part| {
            ["full_scale", "lowest", "highest"]
                .map(|f| part.quantity(f).map(|p: oilway_units::Pressure| p.bar().round() as i64))
        };
        let of = |wanted| parts(kind).filter(|part| family(part, wanted)).map(range).collect::<BTreeSet<_>>();
        assert_eq!(of(ThreadFamily::G), of(ThreadFamily::Npt), "{kind}");
    }
}

/// What only keeps dirt out on the way is named so: a plug that were a real one would come out and go in again on the build sheet.
#[test]
fn what_a_part_is_shipped_with_is_for_transport_only() {
    for part in house::catalogue().parts() {
        for port in &part.ports {
            assert!(
                ["", "transport plug", "dust cap"].contains(&port.shipped_with.as_str()),
                "{} of {}: {}",
                port.mark,
                part.id,
                port.shipped_with
            );
        }
    }
}

/// Straight fittings, unions and adapters pass no more than their narrowest end, and hold no more than their weakest.
#[test]
fn threads_bound_the_bore_and_the_rating_of_what_sits_on_them() {
    // Passages that the threads leave, and what the finest stand, own: chosen for the house range.
    let passage = |thread: &str| match thread {
        "M5x0.8" | "M6x1" => Some(2.5),
        "M8x1" => Some(4.0),
        "M10x1" => Some(5.0),
        "G 1/8" | "1/8-27 NPT" => Some(6.0),
        "G 1/4" | "1/4-18 NPT" => Some(8.0),
        "G 3/8" | "3/8-18 NPT" => Some(10.0),
        "G 1/2" | "1/2-14 NPT" => Some(14.0),
        "G 3/4" => Some(18.0),
        "G 1" => Some(23.0),
        _ => None,
    };
    for part in parts("fitting").chain(parts("adapter")) {
        let bore: oilway_units::Length = part.quantity("bore").unwrap();
        let rated = part.kind.rating(part).unwrap().bar();
        for port in &part.ports {
            let line = Thread::read(&port.thread).unwrap().line().map(|length| length.millimetres());
            let most = passage(&port.thread).or(line).unwrap();
            assert!(bore.millimetres() <= most, "{} {}", part.id, port.thread);
            let most = if ["M6x1", "M8x1"].contains(&port.thread.as_str()) { 250.0 } else { 400.0 };
            assert!(rated <= most, "{} {}", part.id, port.thread);
        }
    }
}

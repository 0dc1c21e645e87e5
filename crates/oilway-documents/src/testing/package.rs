//! The package of the small design and its ports.

use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_model::*;
use oilway_text::message;
use oilway_units::*;

use super::house_part;

pub(super) fn package() -> Package {
    let mut package = Package {
        place: 0,
        pump: house_part("pump", "self-reversing, twenty to one"),
        reservoir: house_part("reservoir", "Grease reservoir of 4 L"),
        block: house_part("port block", "parallel threads, on the reservoir."),
        mounting: Mounting::OnReservoir,
        valve: Some(house_part("air valve", "Three-port solenoid valve, closed at rest, G 1/4, 24 V")),
        regulator: Some(house_part("air regulator", "G 1/4")),
        air_setting: Some(Pressure::from_bar(4.9)),
        disc: Some(house_part("burst disc", "marked 130 bar")),
        holder: Some(house_part("disc holder", "indicator pin")),
        discharge: Vec::new(),
        gauge: Some(house_part("gauge", "0 to 160 bar, dial of 63 mm, parallel")),
        controller: Some(house_part("controller", "2 inputs")),
        devices: Vec::new(),
        spare_discs: 3,
    };
    package.devices = devices(&package);
    package
}

fn devices(package: &Package) -> Vec<Device> {
    let hosts = [
        Some(&package.block),
        Some(&package.pump),
        Some(&package.reservoir),
        package.valve.as_ref(),
        package.regulator.as_ref(),
        package.holder.as_ref(),
    ];
    let ports = hosts.into_iter().flatten().flat_map(|host| host.ports.iter().map(move |port| (host, port)));
    let device = |(host, port): (&Arc<Part>, &oilway_catalogue::Port)| Device {
        of: host.clone(),
        mark: port.mark.clone(),
        holds: holds(package, host.kind.id(), &port.mark),
        behind_shut_off: false,
        flows_out: None,
    };
    ports.map(device).collect()
}

fn holds(package: &Package, host: &str, mark: &str) -> Vec<Filling> {
    let part = |part: &Arc<Part>| vec![Filling::Part(part.clone())];
    let optional = |part: &Option<Arc<Part>>| part.iter().cloned().map(Filling::Part).collect();
    match (host, mark) {
        ("port block", "from reservoir") => part(&package.reservoir),
        ("port block", "pump") => part(&package.pump),
        ("port block", "to line") => part(&house_part("fitting", "Straight fitting, tube 8 mm to G 1/4")),
        ("port block", "burst disc") => optional(&package.holder),
        ("port block", "gauge") => optional(&package.gauge),
        ("pump", "foot") | ("reservoir", "to block") | ("disc holder", "inlet") => part(&package.block),
        ("pump", "air") | ("air regulator", "2") => optional(&package.valve),
        ("air valve", "1") => optional(&package.regulator),
        ("air valve", "2") => part(&package.pump),
        ("pump", "exhaust") | ("air valve", "3") => part(&house_part("silencer", "G 1/4")),
        ("air regulator", "1") => vec![Filling::OpenByIntent(message!("documents-none"))],
        ("reservoir", "fill") => part(&house_part("filling coupling", "G 1/2")),
        ("reservoir", "breather") => part(&house_part("breather", "G 1/4")),
        _ => part(&house_part("plug", "Plug, G 1/4")),
    }
}

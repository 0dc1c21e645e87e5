//! Parts for another voltage than the supply.

use oilway_catalogue::Part;
use oilway_model::{Filling, Finding};
use oilway_text::message;
use oilway_units::Voltage;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::port_name;
use crate::{Facts, Rule};

rule! {
    VoltageMismatch = "voltage-mismatch",
    title: "A part is made for another voltage",
    finds: "A pump, valve, controller or switch whose voltage is not that of the job's supply; or one that needs a voltage where the job has no supply, which for a mere switch is a caution.",
    why: "A coil for 230 V on 24 V never pulls; one for 24 V on 230 V burns.",
    source: "own-derivation", "voltage of each part against the supply", Own,
    example: "A 230 V valve in a cabinet of 24 V: take the same valve for 24 V.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let package = &facts.design.package;
    let supply = facts.design.conditions.electric.as_ref().map(|electric| electric.voltage);
    let mut parts: Vec<(String, &Part)> = vec![("package.pump".to_owned(), &package.pump)];
    let named = [("package.valve", &package.valve), ("package.controller", &package.controller)];
    parts.extend(named.into_iter().filter_map(|(at, part)| Some((at.to_owned(), part.as_deref()?))));
    for device in &package.devices {
        for filling in &device.holds {
            if let Filling::Part(part) = filling
                && !super::is_host(facts.design, part)
            {
                parts.push((port_name(device), part));
            }
        }
    }
    let judge = |(at, part): (String, &Part)| {
        let wants: Voltage = part.quantity("voltage")?;
        let cure = message!("check-voltage-mismatch-cure");
        let draft = match supply {
            Some(has) if has == wants => return None,
            Some(has) => {
                Draft::stop(rule, at, message!("check-voltage-mismatch", wants = wants, has = has), cure)
            }
            None => {
                // Without current a pump or a coil does nothing at all; a switch merely tells nobody.
                let make = if at.starts_with("port.") { Draft::caution } else { Draft::stop };
                make(rule, at, message!("check-voltage-without-supply", wants = wants), cure)
            }
        };
        Some(draft.number(message!("check-number-voltage"), wants).cautions(&["S73"]).done())
    };
    parts.into_iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, part, refuses, severity, swap};
    use oilway_catalogue::house;
    use oilway_model::{Filling, Severity};
    use oilway_units::Voltage;

    #[test]
    fn each_coil_is_made_for_the_supply() {
        accepts("voltage-mismatch", |_| {});
        refuses("voltage-mismatch", |d| swap(d.package.valve.as_mut().unwrap(), "10287"));
        refuses("voltage-mismatch", |d| {
            d.conditions.electric.as_mut().unwrap().voltage = Voltage::from_volts(230.0)
        });
        refuses("voltage-mismatch", |d| d.conditions.electric = None);
    }

    #[test]
    fn a_switch_without_current_tells_nobody_and_a_coil_without_it_does_nothing() {
        let without = |valve: bool| {
            severity("voltage-mismatch", |d| {
                d.conditions.electric = None;
                if !valve {
                    d.package.valve = None;
                }
                let switch = house::catalogue().of_kind("level switch").next().unwrap().id.clone();
                device(d, "fill").holds = vec![Filling::Part(part(&switch))];
            })
        };
        assert_eq!(without(true), Some(Severity::Stop));
        assert_eq!(without(false), Some(Severity::Caution));
    }
}

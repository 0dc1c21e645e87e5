//! The rules: one file each, one line here.
//!
//! A rule reads [`Facts`](crate::Facts) and writes findings; it works nothing out that another rule needs too. What several of them
//! say in the same words stands below.

mod air_dew_point;
mod back_pressure_difference;
mod base_oil_too_thick;
mod base_oil_too_thin;
mod bearing_speed_for_grease;
mod breather_plugged;
mod broken_reference;
mod controller_inputs;
mod designer_disagrees;
mod disc_for_other_lubricant;
mod disc_holder_mismatch;
mod disc_margin_thin;
mod disc_missing;
mod disc_not_for_liquid;
mod disc_too_strong;
mod disc_wears_out;
mod disc_window_shut;
mod divider_too_fast;
mod dose_above_band;
mod dose_below_band;
mod event_gives_no_full_cycle;
mod event_longer_than_allowed;
mod exhaust_plugged;
mod follower_missing;
mod gauge_range;
mod gauge_underrated;
mod grease_curve_extended;
mod grease_too_old_in_tail;
mod grease_too_old_on_arrival;
mod hose_out_of_temperature;
mod idle_side_plugged;
mod indicator_cannot_move;
mod inlet_line_never_moves;
mod inlet_starves;
mod joint_mismatch;
mod joint_missing;
mod joint_without_fitting;
mod line_not_for_food;
mod line_splits_unmetered;
mod line_underrated;
mod lubricant_above_its_limit;
mod lubricant_below_its_limit;
mod lubricant_not_food_grade;
mod no_cycle_switch;
mod no_demand_known;
mod number_not_sound;
mod oil_near_pour_point;
mod one_way_part_reversed;
mod outlet_goes_nowhere;
mod outlet_open;
mod outlet_plugged;
mod pause_shorter_than_event;
mod point_not_served;
mod port_leads_nowhere;
mod port_undecided;
mod pressure_port_open;
mod pressure_stays_after_burst;
mod pump_lubricant;
mod pump_temperature;
mod pump_underrated;
mod refill_too_short;
mod regulator_above_supply;
mod regulator_not_protection;
mod regulator_out_of_range;
mod relief_behind_shut_off;
mod relief_path_too_tight;
mod reserve_too_short;
mod reservoir_too_large;
mod residual_pressure;
mod section_does_not_fit;
mod sections_too_few;
mod sections_too_many;
mod source_safe;
mod spare_discs;
mod stall_below_moving;
mod stall_below_start;
mod stall_margin_thin;
mod supplied_disc_must_come_out;
mod supply_missing;
mod thread_unknown;
mod time_out_too_short;
mod tube_in_wrong_fitting;
mod tube_without_rating;
mod two_thread_families;
mod valve_throttles;
mod valve_wrong_for_drive;
mod vent_plugged;
mod viscosity_unknown;
mod voltage_mismatch;

use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_model::{Design, Season, Side};
use oilway_text::{Message, message};
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::{Facts, Rule};

/// The rule under which [`crate::compare`] reports.
pub(crate) static DESIGNER_DISAGREES: designer_disagrees::DesignerDisagrees =
    designer_disagrees::DesignerDisagrees;

/// Every rule, in the order of the report.
pub(crate) static RULES: &[&dyn Rule] = &[
    // The design itself.
    &broken_reference::BrokenReference,
    &number_not_sound::NumberNotSound,
    // Demand and lubricant.
    &dose_below_band::DoseBelowBand,
    &dose_above_band::DoseAboveBand,
    &no_demand_known::NoDemandKnown,
    &bearing_speed_for_grease::BearingSpeedForGrease,
    &base_oil_too_thin::BaseOilTooThin,
    &base_oil_too_thick::BaseOilTooThick,
    &grease_too_old_in_tail::GreaseTooOldInTail,
    &grease_too_old_on_arrival::GreaseTooOldOnArrival,
    &lubricant_not_food_grade::LubricantNotFoodGrade,
    &line_not_for_food::LineNotForFood,
    &lubricant_below_its_limit::LubricantBelowItsLimit,
    &lubricant_above_its_limit::LubricantAboveItsLimit,
    &oil_near_pour_point::OilNearPourPoint,
    &grease_curve_extended::GreaseCurveExtended,
    // Metering.
    &outlet_plugged::OutletPlugged,
    &outlet_open::OutletOpen,
    &outlet_goes_nowhere::OutletGoesNowhere,
    &point_not_served::PointNotServed,
    &line_splits_unmetered::LineSplitsUnmetered,
    &sections_too_few::SectionsTooFew,
    &sections_too_many::SectionsTooMany,
    &section_does_not_fit::SectionDoesNotFit,
    &divider_too_fast::DividerTooFast,
    &back_pressure_difference::BackPressureDifference,
    &no_cycle_switch::NoCycleSwitch,
    &event_gives_no_full_cycle::EventGivesNoFullCycle,
    // Pressure and time.
    &viscosity_unknown::ViscosityUnknown,
    &stall_below_start::StallBelowStart,
    &stall_below_moving::StallBelowMoving,
    &stall_margin_thin::StallMarginThin,
    &line_underrated::LineUnderrated,
    &hose_out_of_temperature::HoseOutOfTemperature,
    &tube_without_rating::TubeWithoutRating,
    &residual_pressure::ResidualPressure,
    &event_longer_than_allowed::EventLongerThanAllowed,
    &time_out_too_short::TimeOutTooShort,
    &pause_shorter_than_event::PauseShorterThanEvent,
    // Protection.
    &disc_missing::DiscMissing,
    &disc_wears_out::DiscWearsOut,
    &disc_too_strong::DiscTooStrong,
    &disc_window_shut::DiscWindowShut,
    &disc_margin_thin::DiscMarginThin,
    &disc_for_other_lubricant::DiscForOtherLubricant,
    &disc_not_for_liquid::DiscNotForLiquid,
    &disc_holder_mismatch::DiscHolderMismatch,
    &relief_path_too_tight::ReliefPathTooTight,
    &relief_behind_shut_off::ReliefBehindShutOff,
    &pressure_stays_after_burst::PressureStaysAfterBurst,
    &supplied_disc_must_come_out::SuppliedDiscMustComeOut,
    &indicator_cannot_move::IndicatorCannotMove,
    &source_safe::SourceSafe,
    &regulator_not_protection::RegulatorNotProtection,
    // Package.
    &valve_wrong_for_drive::ValveWrongForDrive,
    &valve_throttles::ValveThrottles,
    &idle_side_plugged::IdleSidePlugged,
    &breather_plugged::BreatherPlugged,
    &vent_plugged::VentPlugged,
    &exhaust_plugged::ExhaustPlugged,
    &pressure_port_open::PressurePortOpen,
    &port_leads_nowhere::PortLeadsNowhere,
    &port_undecided::PortUndecided,
    &one_way_part_reversed::OneWayPartReversed,
    &gauge_range::GaugeRange,
    &gauge_underrated::GaugeUnderrated,
    &pump_temperature::PumpTemperature,
    &pump_lubricant::PumpLubricant,
    &pump_underrated::PumpUnderrated,
    &regulator_above_supply::RegulatorAboveSupply,
    &regulator_out_of_range::RegulatorOutOfRange,
    &supply_missing::SupplyMissing,
    &air_dew_point::AirDewPoint,
    &voltage_mismatch::VoltageMismatch,
    &controller_inputs::ControllerInputs,
    &inlet_starves::InletStarves,
    &inlet_line_never_moves::InletLineNeverMoves,
    &follower_missing::FollowerMissing,
    &refill_too_short::RefillTooShort,
    &reservoir_too_large::ReservoirTooLarge,
    &reserve_too_short::ReserveTooShort,
    &spare_discs::SpareDiscs,
    // Joints.
    &joint_missing::JointMissing,
    &joint_without_fitting::JointWithoutFitting,
    &joint_mismatch::JointMismatch,
    &tube_in_wrong_fitting::TubeInWrongFitting,
    &two_thread_families::TwoThreadFamilies,
    &thread_unknown::ThreadUnknown,
    &DESIGNER_DISAGREES,
];

/// A season in a sentence.
fn season_word(season: Season) -> Message {
    match season {
        Season::Cold => message!("check-season-cold"),
        Season::Normal => message!("check-season-normal"),
        Season::Hot => message!("check-season-hot"),
    }
}

/// A side of a divider in a sentence.
fn side_word(side: Side) -> Message {
    match side {
        Side::Left => message!("check-side-left"),
        Side::Right => message!("check-side-right"),
    }
}

/// The parts of the package that carry ports.
fn hosts(design: &Design) -> impl Iterator<Item = &Arc<Part>> {
    let package = &design.package;
    bodies(design).chain(package.holder.as_ref())
}

/// The large parts of the package, which are bolted and piped to each other.
fn bodies(design: &Design) -> impl Iterator<Item = &Arc<Part>> {
    let package = &design.package;
    let always = [&package.block, &package.pump, &package.reservoir];
    always.into_iter().chain(package.valve.as_ref()).chain(package.regulator.as_ref())
}

/// Whether a part is one of those that carry ports.
fn is_host(design: &Design, part: &Part) -> bool {
    hosts(design).any(|host| host.id == part.id)
}

/// Whether a part is one of the large ones.
fn is_body(design: &Design, part: &Part) -> bool {
    bodies(design).any(|body| body.id == part.id)
}

/// What would turn a need above the stall: the air setting, or the pressure of an electric pump, at which both are equal.
fn turned_by_air(draft: Draft, facts: &Facts<'_>, need: Pressure, stall: Pressure) -> Draft {
    let air = crate::source::working_air(facts.design);
    let driven = facts.views.pump.as_ref().is_some_and(|pump| pump.drive.is_air());
    if !need.is_finite() || stall <= Pressure::ZERO {
        draft
    } else if driven {
        draft.turns(message!("check-turns-air-above", air = air * (need / stall)))
    } else {
        draft.turns(message!("check-turns-stall-above", stall = need))
    }
}

/// What would turn a working pressure above a limit: the highest air setting, on a step of the regulator, or the limit itself. What
/// the pump then still has for the worst path is said in the same breath: a lower setting can turn one finding into another.
fn turned_down(draft: Draft, facts: &Facts<'_>, limit: Pressure, working: Pressure) -> Draft {
    let setting = facts.design.package.air_setting.filter(|_| working > Pressure::ZERO);
    let driven = facts.views.pump.as_ref().is_some_and(|pump| pump.drive.is_air());
    let Some(setting) = setting.filter(|_| driven) else {
        return draft.turns(message!("check-turns-working-below", working = limit));
    };
    let exact = setting * (limit / working);
    let air = match &facts.views.regulator {
        Some(regulator) if regulator.step > Pressure::ZERO => {
            regulator.step * libm::floor(exact / regulator.step + 1e-9)
        }
        _ => exact,
    };
    draft.turns(match left_at(facts, air) {
        None => message!("check-turns-air-below", air = air),
        Some((need, stall)) => {
            let share = facts.design.conditions.practice.stall_use.get();
            let said = if need > stall {
                "check-turns-air-below-lacking"
            } else if need > stall * (share.fraction() * (1.0 + 1e-9)) {
                "check-turns-air-below-thin"
            } else {
                "check-turns-air-below-enough"
            };
            Message::new(said).with("air", air).with("stall", stall).with("need", need).with("share", share)
        }
    })
}

/// The highest need, and the stall at another air setting.
fn left_at(facts: &Facts<'_>, air: Pressure) -> Option<(Pressure, Pressure)> {
    let (_, _, need) = facts.highest(|path| path.rested.max(path.moving))?;
    let lowest = facts.design.conditions.air.as_ref()?.lowest.get();
    Some((need, crate::source::stall(facts.views.pump.as_ref()?, air.min(lowest))))
}

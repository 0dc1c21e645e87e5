//! The stroke of an air motor: what pressure drives it, how long it takes, and what a blocked breather does.

use oilway_units::{
    AbsolutePressure, Area, Conductance, Flow, Force, Length, Pressure, Ratio, Temperature, Time, Volume,
};

use super::force::piston_area;
use super::{REFERENCE_PRESSURE, REFERENCE_TEMPERATURE, conductance_flow};
use crate::{Range, formula};

formula! {
    /// Air pressure in the motor that just drives the stroke against the load.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::driving_pressure;
    /// use oilway_units::{AbsolutePressure, Force, Length, Pressure};
    ///
    /// let driving = driving_pressure(
    ///     Pressure::from_bar(150.0), Length::from_millimetres(16.0), Length::from_millimetres(100.0),
    ///     Force::from_newtons(120.0), AbsolutePressure::from_bar(1.013),
    /// );
    /// assert_eq!(format!("{:.3}", driving.bar()), "5.006");
    /// ```
    DRIVING_PRESSURE = "air/driving-pressure",
    title: "Air pressure that drives the stroke against the load",
    equation: "p_d = (p_L π d²/4 + F) / (π D²/4) + p_a",
    validity: "Single-acting, the other side breathes freely; quasi-steady, no inertia. Friction holds that of the seals and the spring at the end of the stroke.",
    sources: [
        "own-derivation", "force balance of the moving piston", Own
    ],
    fn driving_pressure(
        load: Pressure, "p_L", "pressure of the lubricant", Range::NotNegative;
        plunger: Length, "d", "diameter of the plunger in the lubricant", Range::Positive;
        air_piston: Length, "D", "diameter of the air piston", Range::Positive;
        friction: Force, "F", "friction and spring", Range::NotNegative;
        atmosphere: AbsolutePressure, "p_a", "pressure of the surroundings, absolute", Range::NotNegative;
    ) -> AbsolutePressure, "p_d", "pressure in the motor while it moves, absolute" {
        let force = load * piston_area(plunger) + friction;
        atmosphere.plus(force / piston_area(air_piston))
    }
}

formula! {
    /// Time that the pressing stroke takes.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::stroke_time;
    /// use oilway_units::{AbsolutePressure, Conductance, Ratio, Volume};
    ///
    /// let time = stroke_time(
    ///     Volume::from_litres(0.62832), AbsolutePressure::from_bar(5.0058), AbsolutePressure::from_bar(6.513),
    ///     Conductance::from_litres_per_second_bar(0.62524), Ratio::from_fraction(0.2),
    /// )
    /// .unwrap();
    /// assert_eq!(format!("{:.2}", time.seconds()), "1.10");
    /// ```
    STROKE_TIME = "air/stroke-time",
    title: "Time of the pressing stroke",
    equation: "t = V p_d / (q p0),  q = C p_s ψ(p_d/p_s) of air/choked-flow at 20 °C",
    validity: "Quasi-steady: no inertia, no heat, the chamber at the driving pressure; expect 10 to 20 %. Where the driving pressure is not below the supply the pump stalls and there is no answer. The lubricant side and the exhaust may be slower.",
    sources: [
        "own-derivation", "volume swept at the driving pressure", Own;
        "iso-6358", "part 1, flow-rate characteristics", SecondHand
    ],
    fn stroke_time(
        swept: Volume, "V", "volume swept by the air piston", Range::NotNegative;
        driving: AbsolutePressure, "p_d", "pressure in the motor while it moves, absolute", Range::Positive;
        supply: AbsolutePressure, "p_s", "supply pressure, absolute", Range::Positive;
        conductance: Conductance, "C", "sonic conductance of the path", Range::Positive;
        critical_ratio: Ratio, "b", "ratio of pressures below which the flow is choked", Range::Between(0.0, 0.99);
    ) -> Option<Time>, "t", "time of the stroke" {
        let reference = Temperature::from_kelvin(REFERENCE_TEMPERATURE);
        let flow = conductance_flow(conductance, supply, driving, critical_ratio, reference);
        if flow <= Flow::ZERO {
            return None;
        }
        let free = swept * (driving.pascals() / REFERENCE_PRESSURE);
        Some(free / flow)
    }
}

formula! {
    /// Pressure of the air trapped behind a piston whose breather is blocked.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::trapped_air_pressure;
    /// use oilway_units::{AbsolutePressure, Area, Length, Volume};
    ///
    /// let trapped = trapped_air_pressure(
    ///     Area::from_square_millimetres(3117.2), Length::from_millimetres(50.0), Length::from_millimetres(50.0),
    ///     Volume::from_cubic_centimetres(20.0), AbsolutePressure::from_bar(1.013),
    /// );
    /// assert_eq!(format!("{:.1}", trapped.bar()), "8.9");
    /// ```
    TRAPPED_AIR = "air/trapped",
    title: "Air trapped behind a piston with a blocked breather",
    equation: "p = p_a (A s + V_d) / (A (s − x) + V_d),  x at most s",
    validity: "Isothermal, nothing leaks: the slow case. The pump stalls short where this pressure balances the driving air. Keep breathers clean, never painted over.",
    sources: [
        "own-derivation", "Boyle's law", Own
    ],
    fn trapped_air_pressure(
        area: Area, "A", "area of the piston on the trapped side", Range::Positive;
        stroke: Length, "s", "full stroke", Range::Positive;
        moved: Length, "x", "way gone", Range::NotNegative;
        dead: Volume, "V_d", "dead volume behind the piston", Range::Positive;
        atmosphere: AbsolutePressure, "p_a", "pressure at the start, absolute", Range::NotNegative;
    ) -> AbsolutePressure, "p", "pressure behind the piston, absolute" {
        let (whole, left) = (area * stroke + dead, area * (stroke - moved.min(stroke)) + dead);
        AbsolutePressure::from_pascals(atmosphere.pascals() * (whole / left))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn time(driving: f64, supply: f64) -> Option<f64> {
        stroke_time(
            Volume::from_litres(1.0),
            AbsolutePressure::from_bar(driving),
            AbsolutePressure::from_bar(supply),
            Conductance::from_litres_per_second_bar(1.0),
            Ratio::from_fraction(0.3),
        )
        .map(Time::seconds)
    }

    #[test]
    fn a_pump_that_needs_its_whole_supply_stalls() {
        assert_eq!(time(6.0, 6.0), None);
        assert_eq!(time(7.0, 6.0), None);
        assert!(time(5.999, 6.0).is_some());
    }

    #[test]
    fn loads_near_stall_slow_the_stroke_three_six_and_nine_times() {
        // 50, 80 and 90 % of stall against an almost unloaded stroke at 1.3 bar, supply 6 bar absolute: about 3, 6, 9 times.
        let easy = time(1.3, 6.0).unwrap();
        for (share_of_stall, about) in [(0.5, 3.0), (0.8, 6.0), (0.9, 9.0)] {
            let driving = 1.013 + share_of_stall * (6.0 - 1.013);
            let times = time(driving, 6.0).unwrap() / easy;
            assert!((times / about - 1.0).abs() < 0.02, "{share_of_stall} {times}");
        }
    }

    #[test]
    fn a_choked_stroke_takes_the_air_that_it_sweeps() {
        assert!((time(1.8, 6.0).unwrap() - 1.8 / 6.0).abs() < 1e-14);
    }

    #[test]
    fn the_driving_pressure_balances_the_stall() {
        // Second route: at the stall pressure of the force balance the driving pressure is the supply.
        let (d, big) = (Length::from_millimetres(12.0), Length::from_millimetres(80.0));
        let (spring, friction) = (Force::from_newtons(250.0), Force::from_newtons(80.0));
        let air = Pressure::from_bar(5.0);
        let load = super::super::stall_by_force(big, d, air, spring, friction);
        let atmosphere = AbsolutePressure::from_bar(0.9);
        let driving = driving_pressure(load, d, big, spring + friction, atmosphere);
        assert!((driving.above(atmosphere) / air - 1.0).abs() < 1e-13);
    }

    #[test]
    fn a_piston_that_has_not_moved_has_the_atmosphere_behind_it_and_none_goes_past_its_stroke() {
        let behind = |x: f64| {
            trapped_air_pressure(
                Area::from_square_centimetres(31.0),
                Length::from_millimetres(50.0),
                Length::from_millimetres(x),
                Volume::from_cubic_centimetres(20.0),
                AbsolutePressure::from_bar(1.0),
            )
            .bar()
        };
        assert_eq!(behind(0.0), 1.0);
        assert_eq!(behind(50.0), behind(80.0));
        assert!((behind(50.0) - (155.0 + 20.0) / 20.0).abs() < 1e-12);
    }
}

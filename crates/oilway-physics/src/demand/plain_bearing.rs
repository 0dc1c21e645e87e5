//! Bushes, pins and other plain bearings: renew the film, fill the gap.

use core::f64::consts::PI;

use oilway_units::{Flow, Length, Time, Volume};

use crate::{Range, formula};

formula! {
    /// The rate that renews a film over the whole bore of a plain bearing once in every period.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::film_renewal_bearing;
    /// use oilway_units::{Length, Time};
    ///
    /// // Bush of 60 x 60 mm, oil: 0.025 mm each hour.
    /// let rate = film_renewal_bearing(
    ///     Length::from_millimetres(60.0), Length::from_millimetres(60.0), Length::from_millimetres(0.025),
    ///     Time::from_hours(1.0),
    /// );
    /// assert_eq!(format!("{:.3}", rate.cubic_centimetres_per_hour()), "0.283");
    /// ```
    FILM_RENEWAL_BEARING = "demand/film-bearing",
    title: "Rate that renews the film of a plain bearing",
    equation: "q = π · d · L · h / τ",
    validity: "Bushes, pins and slow or oscillating plain bearings with total-loss feed. Customary are h = 0.025 mm and τ = 1 h with oil, 4 h with grease, times 1 to 4 for dirt, water and heat: practice, no source. Never more than the side flow of a full film is of use: see demand/bearing-side-flow.",
    sources: ["common-practice", "film-renewal rule", CommonPractice],
    fn film_renewal_bearing(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        length: Length, "L", "length of the bearing", Range::Positive;
        film: Length, "h", "thickness of the film to renew", Range::NotNegative;
        period: Time, "τ", "time in which it is renewed", Range::Positive;
    ) -> Flow, "q", "mean rate" {
        let volume = PI * bore.metres() * length.metres() * film.metres();
        Flow::from_cubic_metres_per_second(volume / period.seconds())
    }
}

formula! {
    /// The clearance on the diameter that a plain bearing has if nobody knows better.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::default_clearance;
    /// use oilway_units::Length;
    ///
    /// let clearance = default_clearance(Length::from_millimetres(60.0));
    /// assert_eq!(format!("{:.3}", clearance.millimetres()), "0.111");
    /// ```
    DEFAULT_CLEARANCE = "demand/clearance-default",
    title: "Customary clearance of a plain bearing, on the diameter",
    equation: "cd = 0.051 mm + 0.001 · d",
    validity: "Where the drawing does not say. Taken as the clearance on the diameter: the radial clearance of demand/gap-volume and demand/bearing-side-flow is half of it.",
    sources: ["mil-hdbk-1164", "Table 17", Seen],
    fn default_clearance(
        bore: Length, "d", "bore of the bearing", Range::NotNegative;
    ) -> Length, "cd", "clearance on the diameter" {
        Length::from_millimetres(0.051) + bore * 0.001
    }
}

formula! {
    /// The volume of the clearance of a plain bearing: its first charge, or a purge after washing.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::gap_volume;
    /// use oilway_units::Length;
    ///
    /// let mm = Length::from_millimetres;
    /// assert_eq!(format!("{:.3}", gap_volume(mm(60.0), mm(60.0), mm(0.055)).cubic_centimetres()), "0.622");
    /// ```
    GAP_VOLUME = "demand/gap-volume",
    title: "Volume of the clearance of a plain bearing",
    equation: "V = π · d · L · c",
    validity: "c is the radial clearance. Grooves and pockets come on top.",
    sources: ["own-derivation", "geometry of a narrow gap", Own],
    fn gap_volume(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        length: Length, "L", "length of the bearing", Range::Positive;
        clearance: Length, "c", "radial clearance", Range::NotNegative;
    ) -> Volume, "V", "volume of the gap" {
        Volume::from_cubic_metres(PI * bore.metres() * length.metres() * clearance.metres())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn renewing_a_film_as_thick_as_the_gap_changes_the_whole_gap() {
        let rate = film_renewal_bearing(mm(40.0), mm(30.0), mm(0.05), Time::from_hours(3.0));
        let gap = gap_volume(mm(40.0), mm(30.0), mm(0.05));
        assert!(((gap / rate).hours() - 3.0).abs() < 1e-12);
    }

    #[test]
    fn the_narrow_gap_is_the_ring_between_shaft_and_bore() {
        // Second route: the exact ring; the narrow-gap form leaves out c/d.
        let (d, c): (f64, f64) = (60.0, 0.055);
        let ring = PI / 4.0 * ((d + c) * (d + c) - (d - c) * (d - c)) * 60.0 / 1000.0;
        assert!((gap_volume(mm(d), mm(60.0), mm(c)).cubic_centimetres() / ring - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_pin_of_no_size_keeps_the_fixed_part_of_the_clearance() {
        assert_eq!(default_clearance(Length::ZERO), mm(0.051));
    }
}

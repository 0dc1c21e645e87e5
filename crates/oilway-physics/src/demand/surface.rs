//! Slideways, gibs and other sliding faces.

use oilway_units::{Area, Flow, Length, Time, Volume};

use crate::{Range, formula};

formula! {
    /// The rate that renews a film over a sliding face once in every period.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::film_renewal_surface;
    /// use oilway_units::{Area, Length, Time};
    ///
    /// let rate = film_renewal_surface(
    ///     Area::from_square_millimetres(36_000.0), Length::from_millimetres(0.025), Time::from_hours(1.0),
    /// );
    /// assert_eq!(format!("{:.2}", rate.cubic_centimetres_per_hour()), "0.90");
    /// ```
    FILM_RENEWAL_SURFACE = "demand/film-surface",
    title: "Rate that renews the film of a sliding face",
    equation: "q = A · h / τ",
    validity: "A is the largest contact surface of each guide face; count every face, flat, flank of a vee and gib. Customary are h = 0.025 mm and τ = 1 h with oil, 4 h with fluid grease: practice, no source.",
    sources: ["common-practice", "film-renewal rule", CommonPractice],
    fn film_renewal_surface(
        area: Area, "A", "largest contact surface", Range::Positive;
        film: Length, "h", "thickness of the film to renew", Range::NotNegative;
        period: Time, "τ", "time in which it is renewed", Range::Positive;
    ) -> Flow, "q", "mean rate" {
        Flow::from_cubic_metres_per_second(area.square_metres() * film.metres() / period.seconds())
    }
}

formula! {
    /// What a wiper or a washing coolant takes off a guide at every double stroke.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::stroke_film;
    /// use oilway_units::Length;
    ///
    /// let lost = stroke_film(
    ///     Length::from_millimetres(60.0), Length::from_millimetres(400.0), Length::from_micrometres(0.5),
    /// );
    /// assert_eq!(format!("{:.1}", lost.cubic_millimetres()), "12.0");
    /// ```
    STROKE_FILM = "demand/stroke-film",
    title: "Film lost from a guide at every double stroke",
    equation: "v = b · s · h",
    validity: "A cross-check where the uncovered length is wiped or washed. The film lost is 0.1 to 1 µm, a guess without a source: not for acceptance.",
    sources: ["own-derivation", "geometry; the thickness lost has no source", Own],
    fn stroke_film(
        width: Length, "b", "width of the guide across the motion", Range::Positive;
        stroke: Length, "s", "length that is uncovered", Range::NotNegative;
        film: Length, "h", "thickness lost at each double stroke", Range::NotNegative;
    ) -> Volume, "v", "volume lost at each double stroke" {
        Volume::from_cubic_metres(width.metres() * stroke.metres() * film.metres())
    }
}

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use super::*;
    use crate::demand::film_renewal_bearing;

    #[test]
    fn the_bore_of_a_bush_rolled_out_flat_asks_for_the_same() {
        let (d, l) = (Length::from_millimetres(45.0), Length::from_millimetres(38.0));
        let (film, period) = (Length::from_millimetres(0.025), Time::from_hours(4.0));
        let flat = film_renewal_surface(d * PI * l, film, period);
        assert!((flat / film_renewal_bearing(d, l, film, period) - 1.0).abs() < 1e-14);
    }

    #[test]
    fn a_guide_that_is_never_uncovered_loses_nothing() {
        let mm = Length::from_millimetres;
        assert_eq!(stroke_film(mm(60.0), Length::ZERO, mm(0.001)), Volume::ZERO);
        assert!(stroke_film(mm(60.0), mm(1.0), mm(0.001)) > Volume::ZERO);
    }
}

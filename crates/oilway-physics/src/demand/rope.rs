//! Wire ropes: the film of a dressing.

use core::f64::consts::PI;

use oilway_units::{Length, Ratio, VolumePerLength};

use crate::{Range, formula};

formula! {
    /// The dressing for each length of a wire rope.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::rope_film;
    /// use oilway_units::{Length, Ratio};
    ///
    /// let film = rope_film(Length::from_millimetres(20.0), Length::from_millimetres(0.1), Ratio::from_fraction(1.2));
    /// assert_eq!(format!("{:.2}", film.cubic_centimetres_per_metre()), "7.54");
    /// ```
    ROPE_FILM = "demand/rope-film",
    title: "Dressing for each length of a wire rope",
    equation: "V' = π · d · t · fs",
    validity: "t is about 0.1 mm for a solvent dressing that leaves a soft film; fs about 1.2 for the outline of the strands. When to renew it is found by inspection: as soon as the last coat has deteriorated. Never dress a rope that drags through soil.",
    sources: [
        "neale-1995", "C12, film of 0.1 mm", Seen;
        "navedtra-14081", "renewal by inspection", Seen;
        "common-practice", "factor for the strands", CommonPractice
    ],
    fn rope_film(
        diameter: Length, "d", "diameter of the rope", Range::Positive;
        film: Length, "t", "thickness of the film", Range::NotNegative;
        strand_factor: Ratio, "fs", "outline of the strands over the circle", Range::Positive;
    ) -> VolumePerLength, "V'", "dressing for each length" {
        let around = PI * diameter.metres() * strand_factor.fraction();
        VolumePerLength::from_cubic_metres_per_metre(around * film.metres())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::gap_volume;

    #[test]
    fn a_smooth_rope_is_a_narrow_gap_filled_from_outside() {
        let (d, t) = (Length::from_millimetres(16.0), Length::from_millimetres(0.1));
        let metre = rope_film(d, t, Ratio::from_fraction(1.0)) * Length::from_metres(1.0);
        assert!((metre / gap_volume(d, Length::from_metres(1.0), t) - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_rope_without_film_takes_nothing() {
        let rope = rope_film(Length::from_millimetres(16.0), Length::ZERO, Ratio::from_fraction(1.2));
        assert_eq!(rope, VolumePerLength::ZERO);
    }
}
